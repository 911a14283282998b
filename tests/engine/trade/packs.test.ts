import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packCount } from '../../../extension/engine/trade/packs.ts';

describe('packCount', () => {
  test('the packs hold the need, and one fewer would not', () => {
    const need = fc.integer({ min: 1, max: 10_000 });
    fc.assert(
      fc.property(need, fc.integer({ min: 1, max: 500 }), (wanted, pack) => {
        const count = packCount(wanted / 10, pack / 10, 0);
        expect(count * pack).toBeGreaterThanOrEqual(wanted);
        expect((count - 1) * pack).toBeLessThan(wanted);
      }),
    );
  });

  test('two quarts serve 2.003 where a pack may give 1 % more', () => {
    expect(packCount(2.003, 1, 0)).toBe(3);
    expect(packCount(2.003, 1, 0.01)).toBe(2);
    expect(packCount(2.03, 1, 0.01)).toBe(3);
  });
});

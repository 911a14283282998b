import { describe, expect, test } from 'vitest';
import { inRange, rangeProblem } from '../../../extension/engine/trade/range.ts';
import { length } from '../../../extension/engine/units/dimension.ts';

describe('inRange', () => {
  test.each([
    ['positive', [1, 1e-9], [0, -1, NaN]],
    ['not-negative', [0, 1], [-1e-9, NaN]],
    ['share', [0.01, 1, 0.1 + 0.2 + 0.7], [0, 1.01, -1]],
    ['tilt', [0, 1.5], [-0.1, Math.PI / 2, 2]],
    ['count', [1, 2, 0.3 / 0.1], [0, 1.5, -1]],
    ['count-or-none', [0, 3], [0.5, -1]],
    ['any', [-5, 0, 5], [NaN, Infinity]],
    ['unchecked', [NaN, 1], []],
  ] as const)('%s', (range, inside, outside) => {
    for (const value of inside) expect([value, inRange(value, range)]).toEqual([value, true]);
    for (const value of outside) expect([value, inRange(value, range)]).toEqual([value, false]);
  });
});

describe('rangeProblem', () => {
  test('the refusal names function, argument and value', () => {
    const show = (base: number) => `${String(base)} mm`;
    const of = { functionName: 'RING.LOW', name: 'depth', value: -3, dimension: length, show };
    expect(rangeProblem(of, 'not-negative')?.message).toBe(
      'RING.LOW: depth is -3 mm; it cannot be less than nothing.',
    );
    expect(rangeProblem({ ...of, value: 3 }, 'not-negative')).toBeUndefined();
  });
});

import { describe, expect, test } from 'vitest';
import { below, chanceFrom } from '../../../extension/engine/cutting/chance.ts';

function drawn(seed: number, count: number): readonly number[] {
  const chance = chanceFrom(seed);
  return Array.from({ length: count }, () => chance());
}

describe('chanceFrom', () => {
  test('the same seed gives the same numbers, another seed others', () => {
    expect(drawn(7, 20)).toEqual(drawn(7, 20));
    expect(drawn(7, 20)).not.toEqual(drawn(8, 20));
  });

  test('numbers fill the room from 0 to 1 evenly', () => {
    const numbers = drawn(1, 10_000);
    expect(Math.min(...numbers)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...numbers)).toBeLessThan(1);
    // The mean of 10,000 even draws strays by 0.003; six times that is no accident.
    expect(numbers.reduce((sum, one) => sum + one, 0) / numbers.length).toBeCloseTo(0.5, 1);
  });
});

describe('below', () => {
  test('gives whole numbers under the end, each of them sooner or later', () => {
    const chance = chanceFrom(3);
    const seen = new Set(Array.from({ length: 200 }, () => below(chance, 6)));
    expect([...seen].sort()).toEqual([0, 1, 2, 3, 4, 5]);
  });
});

import { describe, expect, test } from 'vitest';
import { inRange, ranged, rangeProblem } from '../../../extension/engine/trade/range.ts';
import { length } from '../../../extension/engine/units/dimension.ts';

describe('inRange', () => {
  test.each([
    ['positive', [1, 1e-9], [0, -1, NaN]],
    ['not-negative', [0, 1], [-1e-9, NaN]],
    ['share', [0.01, 1, 0.1 + 0.2 + 0.7], [0, 1.01, -1]],
    ['tilt', [0, 1.5], [-0.1, Math.PI / 2, 2]],
    ['count', [1, 2, 0.3 / 0.1], [0, 1.5, -1]],
    ['count-or-none', [0, 3], [0.5, -1]],
    ['catalyst', [0.005, 0.02, 0.04], [0.0049, 0.041, 0]],
    ['margin', [0, 0.99], [-0.01, 1, 1.5]],
    ['glass-share', [0.3], [0, 1]],
    ['shop', [0, 21, 60], [-1, 61]],
    ['faces', [1, 2], [0, 1.5, 3]],
    ['units', [1, 100_000], [0, 100_001, 2.5]],
    ['positive', [Infinity], [-Infinity]],
    ['any', [-5, 0, 5], [NaN, Infinity]],
    ['unchecked', [NaN, 1], []],
  ] as const)('%s', (range, inside, outside) => {
    for (const value of inside) expect([value, inRange(value, range)]).toEqual([value, true]);
    for (const value of outside) expect([value, inRange(value, range)]).toEqual([value, false]);
  });
});

describe('ranged', () => {
  test('the catalogue lists a range, and nothing where all values will do', () => {
    expect(ranged('share')).toEqual({ range: { above: 0, most: 1, share: true } });
    expect(ranged('any')).toEqual({});
    expect(ranged('unchecked')).toEqual({});
  });
});

describe('rangeProblem', () => {
  test('a share is told as a percentage, a limit with its unit', () => {
    const show = (base: number, _: unknown, unit = 'mm') => `${String(base)} ${unit}`;
    const of = { functionName: 'F', name: 'percent', value: 2, dimension: length, show };
    expect(rangeProblem(of, 'share')?.message).toContain('percent is 2 %');
    expect(rangeProblem({ ...of, value: 70 }, 'shop')?.message).toContain('from 0 mm to 60 mm');
    expect(rangeProblem({ ...of, value: NaN }, 'any')?.message).toContain('is not a number');
    expect(rangeProblem({ ...of, value: 1e6 }, 'units')?.code).toBe('units-too-many');
    expect(rangeProblem({ ...of, value: 0.5 }, 'units')?.code).toBe('argument-not-a-count');
  });

  test('the refusal names function, argument and value', () => {
    const show = (base: number) => `${String(base)} mm`;
    const of = { functionName: 'RING.LOW', name: 'depth', value: -3, dimension: length, show };
    expect(rangeProblem(of, 'not-negative')?.message).toBe(
      'RING.LOW: depth is -3 mm; it cannot be less than nothing.',
    );
    expect(rangeProblem({ ...of, value: 3 }, 'not-negative')).toBeUndefined();
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { StripsInstance } from '../../../../extension/engine/cutting/instance.ts';
import { layStrips } from '../../../../extension/engine/cutting/strips/lay-strips.ts';
import { stripFaults } from '../../../helpers/cut-checker.ts';

const anyInstance = fc.record({
  kind: fc.constant('strips' as const),
  effort: fc.constant('live' as const),
  kerf: fc.constantFrom(0, 3),
  trim: fc.constantFrom(0, 5),
  stocks: fc.constantFrom(
    [{ id: 'long', length: 2440, width: 0, price: 12 }],
    [
      { id: 'long', length: 2440, width: 0, price: 12 },
      { id: 'short', length: 914, width: 0, price: 4, limit: 3 },
    ],
  ),
  parts: fc
    .array(
      fc.record({
        length: fc.integer({ min: 30, max: 2500 }),
        count: fc.integer({ min: 1, max: 9 }),
      }),
      { minLength: 1, maxLength: 7 },
    )
    .map((parts) => parts.map((part, index) => ({ ...part, width: 0, id: `p${index}` }))),
});

/** Fewest strips by trying every way, for a handful of pieces. */
function fewest(room: number, lengths: readonly number[]): number {
  const bins: number[] = [];
  let best = lengths.length;
  const place = (index: number): void => {
    if (bins.length >= best) return;
    const length = lengths[index];
    if (length === undefined) {
      best = bins.length;
      return;
    }
    for (let bin = 0; bin < bins.length; bin++) {
      if ((bins[bin] ?? 0) + length > room) continue;
      bins[bin] = (bins[bin] ?? 0) + length;
      place(index + 1);
      bins[bin] = (bins[bin] ?? 0) - length;
    }
    bins.push(length);
    place(index + 1);
    bins.pop();
  };
  place(0);
  return best;
}

describe('layStrips', () => {
  test('every cutting can be sawn: pieces, kerf, limits and price hold', () => {
    fc.assert(
      fc.property(anyInstance, (instance) => {
        expect(stripFaults(instance, layStrips(instance))).toEqual([]);
      }),
      { numRuns: 80 },
    );
  });

  test('no cutting of a few pieces takes fewer strips', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 5, max: 70 }), { minLength: 1, maxLength: 9 }),
        (lengths) => {
          const parts = lengths.map((length, index) => ({
            id: `p${index}`,
            length,
            width: 0,
            count: 1,
          }));
          const stocks = [{ id: 's', length: 100, width: 0, price: 1 }];
          const answer = layStrips({ kind: 'strips', stocks, parts });
          expect(answer.count).toBe(fewest(100, lengths));
          expect(answer.bound).toBeLessThanOrEqual(answer.count);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('the textbook order of 219 pieces takes 73 strips of 5,600, and not fewer', () => {
    // Wikipedia, "Cutting stock problem": 73 rolls, waste 0.401 %.
    const order = [
      ...[1380, 22, 1520, 25, 1560, 12, 1710, 14, 1820, 18, 1880, 18, 1930, 20],
      ...[2000, 10, 2050, 12, 2100, 14, 2140, 16, 2150, 18, 2200, 20],
    ];
    const parts = order.flatMap((length, index) =>
      index % 2 === 1
        ? []
        : [{ id: String(length), length, width: 0, count: order[index + 1] ?? 0 }],
    );
    const instance: StripsInstance = {
      kind: 'strips',
      stocks: [{ id: 'roll', length: 5600, width: 0, price: 1 }],
      parts,
    };
    const answer = layStrips(instance);
    expect([answer.count, answer.bound, answer.proven]).toEqual([73, 73, true]);
    expect(1 - answer.utilisation).toBeCloseTo(0.00401, 5);
    expect(stripFaults(instance, answer)).toEqual([]);
  });

  test('with joints a ring longer than a strip is put together from two', () => {
    const stocks = [{ id: 'board', length: 1220, width: 0, price: 9 }];
    const parts = [{ id: 'ring', length: 1500, width: 0, count: 3 }];
    const apart = layStrips({ kind: 'strips', stocks, parts });
    expect(apart.unplaced).toEqual([{ part: 'ring', count: 3 }]);
    const joints = { lap: 25, least: 150 };
    const joined = layStrips({ kind: 'strips', stocks, parts, joints });
    // 3 × 1,500 and three laps of 25 are 4,575 mm: four strips of 1,220.
    expect([joined.count, joined.bound]).toEqual([4, 4]);
    for (const { pieces } of joined.patterns) {
      for (const { length } of pieces) expect(length).toBeGreaterThanOrEqual(150);
    }
    const total = joined.patterns.flatMap(({ pieces }) => pieces);
    const laps = total.length - 3;
    const sum = total.reduce((all, { length }) => all + length, 0);
    expect(sum).toBeCloseTo(3 * 1500 + laps * 25, 6);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RectanglesInstance } from '../../../../extension/engine/cutting/instance.ts';
import { layRectangles } from '../../../../extension/engine/cutting/rectangles/lay-rectangles.ts';
import { comesApart, rectangleFaults } from '../../../helpers/cut-checker.ts';

const board = { id: 'board', length: 1220, width: 610, price: 20 };

const anyInstance = fc.record({
  kind: fc.constant('rectangles' as const),
  method: fc.constantFrom('guillotine' as const, 'free' as const),
  kerf: fc.constantFrom(0, 3.2),
  trim: fc.constantFrom(0, 6),
  effort: fc.constant('live' as const),
  stocks: fc.constantFrom(
    [board],
    [board, { id: 'half', length: 610, width: 610, price: 11 }],
    [board, { id: 'offcut', length: 500, width: 300, price: 0, limit: 2 }],
  ),
  parts: fc
    .array(
      fc.record({
        length: fc.integer({ min: 20, max: 700 }),
        width: fc.integer({ min: 20, max: 560 }),
        count: fc.integer({ min: 1, max: 5 }),
        rotations: fc.constantFrom([0], [0, 180], [90], [0, 90, 180, 270]),
      }),
      { minLength: 1, maxLength: 6 },
    )
    .map((parts) => parts.map((part, index) => ({ ...part, id: `p${index}` }))),
});

function strips(count: number): RectanglesInstance {
  const parts = [{ id: 'strip', length: 2440, width: 100, count, rotations: [0] }];
  const sheet = { id: 'sheet', length: 2440, width: 1220, price: 40 };
  return { kind: 'rectangles', kerf: 3, stocks: [sheet], parts };
}

describe('layRectangles', () => {
  test('every layout can be cut: sizes, turns, kerf, trim, limits and price hold', () => {
    fc.assert(
      fc.property(anyInstance, (instance) => {
        const answer = layRectangles(instance);
        expect(rectangleFaults(instance, answer)).toEqual([]);
        if (instance.method === 'guillotine') {
          answer.sheets.forEach((_, index) => {
            expect(comesApart(answer.placements.filter((one) => one.index === index))).toBe(true);
          });
        }
      }),
      { numRuns: 60 },
    );
  });

  test('a sheet 1,220 mm wide gives 11 strips of 100 mm with 3 mm of kerf, not 12', () => {
    // 11 × 100 + 10 × 3 = 1,130 mm; 12 × 100 + 11 × 3 = 1,233 mm.
    expect(layRectangles(strips(11)).count).toBe(1);
    const twelve = layRectangles(strips(12));
    expect(twelve.count).toBe(2);
    expect(twelve.bound).toBe(2);
  });

  test('an offcut that is owned is used before a sheet is bought', () => {
    const instance: RectanglesInstance = {
      kind: 'rectangles',
      stocks: [board, { id: 'offcut', length: 400, width: 300, price: 0, limit: 1 }],
      parts: [{ id: 'baffle', length: 190, width: 190, count: 2 }],
    };
    const answer = layRectangles(instance);
    expect(answer.sheets.map(({ stock }) => stock)).toEqual(['offcut']);
    expect(answer.price).toBe(0);
  });

  test('a half sheet is bought where it does and costs less', () => {
    const instance: RectanglesInstance = {
      kind: 'rectangles',
      stocks: [board, { id: 'half', length: 610, width: 610, price: 11 }],
      parts: [{ id: 'base', length: 600, width: 300, count: 5 }],
    };
    const answer = layRectangles(instance);
    // Two on a half, four on a whole sheet: five take one of each, 31.
    expect(answer.price).toBe(31);
    expect(answer.proven).toBe(true);
  });

  test('with nap no part is turned, and one too large for every sheet is told', () => {
    const instance: RectanglesInstance = {
      kind: 'rectangles',
      stocks: [board],
      parts: [{ id: 'tall', length: 300, width: 700, count: 2, rotations: [0] }],
    };
    expect(layRectangles(instance).unplaced).toEqual([{ part: 'tall', count: 2 }]);
  });

  test('the saw sequence frees every part: each cut lies within the sheet', () => {
    const instance: RectanglesInstance = {
      kind: 'rectangles',
      kerf: 3,
      trim: 5,
      stocks: [board],
      parts: [{ id: 'base', length: 300, width: 200, count: 6, rotations: [0] }],
    };
    const { cuts, count } = layRectangles(instance);
    expect(count).toBe(1);
    expect(cuts.length).toBeGreaterThan(3);
    for (const cut of cuts) {
      expect(cut.at).toBeGreaterThan(0);
      expect(cut.at).toBeLessThan(cut.way === 'across' ? board.length : board.width);
    }
  });

  test('the same instance gives the same layout, another seed may not', () => {
    const parts = Array.from({ length: 20 }, (_, index) => ({
      id: `p${index}`,
      length: 100 + ((index * 37) % 260),
      width: 80 + ((index * 53) % 190),
      count: 2,
    }));
    const instance: RectanglesInstance = {
      kind: 'rectangles',
      effort: 'live',
      stocks: [board],
      parts,
    };
    expect(JSON.stringify(layRectangles(instance))).toBe(JSON.stringify(layRectangles(instance)));
  });
});

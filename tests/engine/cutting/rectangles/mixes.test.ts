import { describe, expect, test } from 'vitest';
import { layRectangles } from '../../../../extension/engine/cutting/rectangles/lay-rectangles.ts';
import { openMixes } from '../../../../extension/engine/cutting/rectangles/mixes.ts';
import type { Piece, SheetStock } from '../../../../extension/engine/cutting/rectangles/sheet.ts';
import { rectangleFaults } from '../../../helpers/cut-checker.ts';
import { pricedInstance } from '../../../helpers/cut-sets.ts';

function stock(index: number, side: number, price: number, limit = Infinity): SheetStock {
  return { index, length: side, width: side, area: side * side, price, limit };
}

function squares(count: number, side: number): Piece[] {
  return Array.from({ length: count }, (_, index) => ({
    index,
    ...{ length: side, width: side, area: side * side, turns: false },
  }));
}

describe('openMixes', () => {
  const large = stock(0, 1000, 10);
  const small = stock(1, 700, 6);

  test('two squares of 600 have the area of one sheet of 1,000, yet no mix of one sheet is offered', () => {
    const mixes = openMixes(squares(2, 600), [large, small]);
    expect(mixes.below(12)).toEqual({ found: [], all: true });
    expect(mixes.leastPrice(12)).toBe(12);
    expect(mixes.leastPrice(20)).toBe(12);
  });

  test('of two mixes the one with more room comes first', () => {
    const [first] = openMixes(squares(4, 300), [large, small]).below(13).found;
    // 940² = 883,600 mm² are more than 2 × 640² = 819,200 mm².
    expect(first?.sheets.map(({ index }) => index)).toEqual([0]);
    expect(first?.price).toBe(10);
  });

  test('no more is taken of an offcut than there is', () => {
    const offcut = stock(1, 700, 0, 1);
    const mixes = openMixes(squares(3, 600), [large, offcut]);
    expect(mixes.below(20).found).toEqual([]);
    expect(mixes.leastPrice(21)).toBe(20);
  });
});

describe('layRectangles on priced stocks', () => {
  test.each([
    [2, 20],
    [4, 40],
    [6, 20],
  ])(
    'class %i of %i pieces: can be cut, and costs no less than the least possible',
    (kind, pieces) => {
      for (const method of ['free', 'guillotine'] as const) {
        const instance = { ...pricedInstance(kind, pieces, 1), method, effort: 'live' as const };
        const answer = layRectangles(instance);
        expect(rectangleFaults(instance, answer)).toEqual([]);
        expect(answer.priceBound).toBeGreaterThan(0);
        expect(answer.price).toBeGreaterThanOrEqual(answer.priceBound);
      }
    },
  );
});

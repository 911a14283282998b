import { describe, expect, test } from 'vitest';
import type { Piece, Sheet } from '../../../../extension/engine/cutting/rectangles/sheet.ts';
import {
  change,
  costOf,
  leftOf,
  stateOf,
  unevenOf,
} from '../../../../extension/engine/cutting/rectangles/state.ts';

const stock = { index: 0, length: 1220, width: 610, area: 1220 * 610, price: 20, limit: Infinity };

function filled(share: number): Sheet {
  return { stock, used: Math.round(stock.area * share), count: 1 };
}

function piece(length: number, width: number): Piece {
  return { index: 0, length, width, area: length * width, turns: false };
}

function stateWith(shares: readonly number[], left: readonly Piece[] = []) {
  return stateOf({ sheets: shares.map(filled), left, price: 0 });
}

function costs(state: ReturnType<typeof stateWith>): number {
  return costOf(state, leftOf(state.left), stock.area);
}

describe('change', () => {
  test('sheets that came about step by step cost what they cost at once, to the last digit', () => {
    const state = stateWith([0.1, 0.7, 0.3]);
    for (const share of [0.83, 0.12, 0.77, 0.31, 0.9]) {
      for (const at of [0, 1, 2]) {
        const before = state.sheets[at];
        const after = filled(share / (at + 1));
        const uneven = state.uneven - unevenOf(before ?? after) + unevenOf(after);
        change(state, { at: [at], sheets: [after], left: [], uneven });
      }
    }
    const afresh = stateOf({ sheets: state.sheets, left: [], price: 0 });
    expect(costs(state)).toBe(costs(afresh));
  });
});

describe('costOf', () => {
  test('one full and one half-empty sheet are worth more than two three-quarters full', () => {
    expect(costs(stateWith([1, 0.5]))).toBeLessThan(costs(stateWith([0.75, 0.75])));
  });

  test('one large piece left over costs less than two small ones of the same area', () => {
    const large = stateWith([0.5], [piece(400, 300)]);
    const small = stateWith([0.5], [piece(400, 150), piece(400, 150)]);
    expect(costs(large)).toBeLessThan(costs(small));
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clampSpot,
  contains,
  extendTo,
  isSingle,
  nextInRange,
  rectangleOf,
  selectAll,
  selectColumns,
  selectRows,
  selectSpot,
} from '../../../webview/grid/selection.ts';

const bounds = { rows: 10, columns: 5 };
const at = (row: number, column: number): { row: number; column: number } => ({ row, column });

describe('extendTo', () => {
  test('Shift keeps the active cell and moves the other corner', () => {
    const selection = extendTo(selectSpot(at(4, 2)), at(2, 3));
    expect(selection.active).toEqual(at(4, 2));
    expect(rectangleOf(selection)).toEqual({ top: 2, bottom: 4, left: 2, right: 3 });
    expect(isSingle(selection)).toBe(false);
  });
});

describe('selectRows', () => {
  test('the row is selected whole while typing still goes to the active cell', () => {
    const selection = selectRows(selectSpot(at(3, 2)), bounds);
    expect(rectangleOf(selection)).toEqual({ top: 3, bottom: 3, left: 0, right: 4 });
    expect(selection.active).toEqual(at(3, 2));
    expect(rectangleOf(extendTo(selection, at(5, 4)))).toMatchObject({
      left: 0,
      right: 4,
      bottom: 5,
    });
  });
});

describe('selectColumns', () => {
  test('the column is selected from the first row to the last', () => {
    expect(rectangleOf(selectColumns(selectSpot(at(3, 2)), bounds))).toEqual({
      top: 0,
      bottom: 9,
      left: 2,
      right: 2,
    });
  });
});

describe('selectAll', () => {
  test('every cell is selected', () => {
    const rectangle = rectangleOf(selectAll(selectSpot(at(3, 2)), bounds));
    expect(contains(rectangle, at(0, 0)) && contains(rectangle, at(9, 4))).toBe(true);
  });
});

describe('nextInRange', () => {
  test('Enter goes down a range and on to the top of its next column', () => {
    const range = { active: at(3, 1), from: at(2, 1), to: at(3, 2) };
    expect(nextInRange(range, 'columns', 1).active).toEqual(at(2, 2));
  });

  test('as many steps as there are cells come back to the first', () => {
    const spot = fc.record({ row: fc.nat(6), column: fc.nat(4) });
    const along = fc.constantFrom('rows' as const, 'columns' as const);
    fc.assert(
      fc.property(spot, spot, along, (from, to, way) => {
        const start = { active: from, from, to };
        const { top, bottom, left, right } = rectangleOf(start);
        const cells = (bottom - top + 1) * (right - left + 1);
        let now = start;
        const seen = new Set<string>();
        for (let step = 0; step < cells; step += 1) {
          now = { ...start, ...nextInRange(now, way, 1) };
          seen.add(`${String(now.active.row)}/${String(now.active.column)}`);
        }
        expect(now.active).toEqual(from);
        expect(seen.size).toBe(cells);
      }),
    );
  });
});

describe('clampSpot', () => {
  test('a spot beyond the sheet becomes the nearest in it', () => {
    expect(clampSpot(at(99, -1), bounds)).toEqual(at(9, 0));
  });
});

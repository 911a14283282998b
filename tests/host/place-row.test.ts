import { describe, expect, test } from 'vitest';
import { placeEdits } from '../../extension/host/place-row.ts';
import { placedSnapshot } from '../helpers/placed-job.ts';

const inch = 25.4;
const ring = { table: 'part', id: 'ring', occurrence: 0 };

function edits(x: number, y: number) {
  return placeEdits(ring, { x, y }, placedSnapshot());
}

describe('placeEdits', () => {
  test('a place is written to the nearest sixteenth of an inch', () => {
    expect(edits(2.07 * inch, -1.03 * inch)).toEqual([
      { kind: 'set-cell', row: ring, column: 'at_x', text: '2 1/16 in' },
      { kind: 'set-cell', row: ring, column: 'at_y', text: '-1 in' },
    ]);
  });

  test('a cell that keeps its value is not written', () => {
    expect(edits(-4.01 * inch, 2 * inch)).toEqual([
      { kind: 'set-cell', row: ring, column: 'at_y', text: '2 in' },
    ]);
    expect(edits(-4 * inch, inch)).toEqual([]);
  });

  test('a ring that did not say where it stands does so even at the zero', () => {
    const snapshot = placedSnapshot({ unplaced: true });
    expect(placeEdits(ring, { x: 0, y: 0 }, snapshot)).toEqual([
      { kind: 'set-cell', row: ring, column: 'at_x', text: '0 in' },
      { kind: 'set-cell', row: ring, column: 'at_y', text: '0 in' },
    ]);
  });

  test('a row that is gone, or a place that is none, is refused', () => {
    const snapshot = placedSnapshot();
    expect(placeEdits({ ...ring, id: 'old' }, { x: 0, y: 0 }, snapshot)).toContain(
      'no part called',
    );
    expect(placeEdits(ring, { x: NaN, y: 0 }, snapshot)).toContain('cannot be put there');
  });

  test('a row placed by a formula stays, and it is said which cell to change', () => {
    const more =
      '\n[[part]]\nid = "wire"\nname = "Wire"\nkind = "hole"\non = "base"\nshape = "circle(1 in)"\nat_x = "=ring.at_x + 5in"\nat_y = "0 in"\n';
    const wire = { ...ring, id: 'wire' };
    expect(placeEdits(wire, { x: 0, y: 0 }, placedSnapshot({ more }))).toBe(
      'wire is placed by a formula: change at_x in its cell.',
    );
  });
});

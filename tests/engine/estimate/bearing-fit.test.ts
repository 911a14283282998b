import { describe, expect, test } from 'vitest';
import { bearingFits } from '../../../extension/engine/estimate/bearing-fit.ts';
import { jobWith, row } from '../../helpers/priced-job.ts';

const inch = 25.4;

// The demo book: a rebating bit of 1 3/8 in, a flush bit of 1/2 in.
const ring = row('part', 'ring', { kind: 'ring', material: 'panelboard_3', size: '8 in' });

function board(id: string, kind: string, on: string, shape: string): string {
  return row('part', id, { kind, on, shape });
}

function fitsOf(...rows: readonly string[]) {
  return bearingFits(jobWith({}, ring, ...rows)).map((fit) => ({
    id: fit.row.id,
    follows: fit.follows?.id,
    bit: fit.bit / inch,
    bearing: fit.bearing / inch,
    gap: fit.gap / inch,
    near: fit.near && { bearing: fit.near.bearing / inch, gap: fit.near.gap / inch },
  }));
}

describe('bearingFits', () => {
  test('a grille 1/8 in smaller all round runs along its baffle with a 1 1/8 in bearing on a 1 3/8 in bit (“Cut perfect rabbets”, WOOD magazine)', () => {
    const [fit, ...more] = fitsOf(
      board('baffle', 'baffle', 'ring', 'circle(7 3/4 in)'),
      board('grille', 'grille', 'baffle', 'circle(7 1/2 in)'),
    );
    expect(more).toEqual([]);
    expect(fit).toMatchObject({ id: 'grille', follows: 'baffle', near: undefined });
    expect(fit?.bit).toBeCloseTo(1.375, 9);
    expect(fit?.bearing).toBeCloseTo(1.125, 9);
    expect(fit?.gap).toBeCloseTo(0.125, 9);
  });

  test('a bearing 1/8 in smaller than the bit leaves 1/16 in on each side (common practice, no source)', () => {
    const [fit] = fitsOf(
      board('baffle', 'baffle', 'ring', 'circle(7 3/4 in)'),
      board('grille', 'grille', 'baffle', 'circle(7 5/8 in)'),
    );
    expect(fit?.bearing).toBeCloseTo(1.25, 9);
  });

  test('a bearing that no set has comes with the next smaller one and the gap that it leaves', () => {
    const [fit] = fitsOf(
      board('baffle', 'baffle', 'ring', 'circle(7 3/4 in)'),
      board('grille', 'grille', 'baffle', 'circle(7 9/16 in)'),
    );
    expect(fit?.bearing).toBeCloseTo(1.1875, 9);
    expect(fit?.near?.bearing).toBeCloseTo(1.125, 9);
    expect(fit?.near?.gap).toBeCloseTo(0.125, 9);
  });

  test('a baffle that comes out again runs along the mouth of its ring; one that fills it is cut with the jig', () => {
    // The mouth of an 8 in ring of 1/8 in board is 7 3/4 in across.
    const fits = fitsOf(
      board('out', 'baffle', 'ring', 'circle(7 5/8 in)'),
      board('in', 'baffle', 'ring', 'circle(7 3/4 in)'),
    );
    expect(fits.map(({ id, follows }) => [id, follows])).toEqual([['out', 'ring']]);
    expect(fits[0]?.bearing).toBeCloseTo(1.25, 1);
  });

  test('a board whose gap differs from side to side follows its own template with the flush bit', () => {
    const fits = fitsOf(
      board('baffle', 'baffle', 'ring', 'rect(9 in, 7 in)'),
      board('grille', 'grille', 'baffle', 'rect(8 3/4 in, 6 in)'),
    );
    expect(fits).toMatchObject([
      { id: 'baffle', follows: undefined, bit: 0.5, bearing: 0.5, gap: 0 },
      { id: 'grille', follows: undefined, bit: 0.5, bearing: 0.5, gap: 0 },
    ]);
  });

  test('cloth, strips and a board without an outline are routed by nothing', () => {
    expect(fitsOf(row('part', 'skin', { kind: 'skin', on: 'ring' }))).toEqual([]);
  });

  test('a shop with a smaller bit needs a smaller bearing', () => {
    const bit = row('constant', 'rebate_bit', { value: '1 1/4 in', source: 'test' });
    const [fit] = fitsOf(
      bit,
      board('baffle', 'baffle', 'ring', 'circle(7 3/4 in)'),
      board('grille', 'grille', 'baffle', 'circle(7 1/2 in)'),
    );
    expect(fit?.bearing).toBeCloseTo(1, 9);
  });
});

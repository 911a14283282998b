import { dualsFor, type Dual } from './duals.ts';
import type { Piece, SheetStock } from './sheet.ts';

/** A sheet as far as a bound goes. */
type Size = Pick<SheetStock, 'length' | 'width'>;

/**
 * Number of sheets of one size that no layout can do with fewer than: the best of dual feasible
 * functions on both sides (S. P. Fekete and J. Schepers, "A general framework for bounds for
 * higher-dimensional orthogonal packing problems", 2004). A piece that may be turned counts as the
 * lesser of its two ways.
 */
export function sheetBound(pieces: readonly Piece[], stock: Size): number {
  const along = pieces.flatMap(({ length, width, turns }) =>
    turns ? [length / stock.length, width / stock.length] : [length / stock.length],
  );
  const across = pieces.flatMap(({ length, width, turns }) =>
    turns ? [width / stock.width, length / stock.width] : [width / stock.width],
  );
  const groups = sameSizes(pieces, stock);
  const columns = dualsFor(along).map((dual) => valuesOf(dual, groups, 'along'));
  const rows = dualsFor(across).map((dual) => valuesOf(dual, groups, 'across'));
  let best = 0;
  for (const column of columns)
    for (const row of rows) best = Math.max(best, total(groups, column, row));
  return Math.ceil(best - 1e-6);
}

interface Group {
  readonly along: number;
  readonly across: number;
  /** The same when it is turned; Infinity where it cannot lie so. */
  readonly turnedAlong: number;
  readonly turnedAcross: number;
  count: number;
}

function sameSizes(pieces: readonly Piece[], stock: Size): readonly Group[] {
  const groups = new Map<string, Group>();
  for (const { length, width, turns } of pieces) {
    const key = `${length}×${width}×${String(turns)}`;
    const known = groups.get(key);
    if (known !== undefined) {
      known.count += 1;
      continue;
    }
    const lies = length <= stock.length && width <= stock.width;
    const liesTurned = turns && width <= stock.length && length <= stock.width;
    groups.set(key, {
      along: lies ? length / stock.length : Infinity,
      across: lies ? width / stock.width : Infinity,
      turnedAlong: liesTurned ? width / stock.length : Infinity,
      turnedAcross: liesTurned ? length / stock.width : Infinity,
      count: 1,
    });
  }
  return [...groups.values()];
}

interface Values {
  readonly straight: readonly number[];
  readonly turned: readonly number[];
}

function valuesOf(dual: Dual, groups: readonly Group[], side: 'along' | 'across'): Values {
  const of = (x: number): number => (x === Infinity ? Infinity : dual(x));
  return side === 'along'
    ? {
        straight: groups.map(({ along }) => of(along)),
        turned: groups.map(({ turnedAlong }) => of(turnedAlong)),
      }
    : {
        straight: groups.map(({ across }) => of(across)),
        turned: groups.map(({ turnedAcross }) => of(turnedAcross)),
      };
}

function total(groups: readonly Group[], column: Values, row: Values): number {
  let sum = 0;
  for (let at = 0; at < groups.length; at++) {
    const straight = product(column.straight[at], row.straight[at]);
    const turned = product(column.turned[at], row.turned[at]);
    const least = Math.min(straight, turned);
    if (least !== Infinity) sum += least * (groups[at]?.count ?? 0);
  }
  return sum;
}

function product(a: number | undefined, b: number | undefined): number {
  return a === undefined || b === undefined || a === Infinity || b === Infinity ? Infinity : a * b;
}

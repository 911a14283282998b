import { dualsFor, type Dual } from './duals.ts';
import { grownWays, waysOf, type Way } from './grown.ts';
import type { Piece, SheetStock } from './sheet.ts';

/** A sheet as far as a bound goes. */
type Size = Pick<SheetStock, 'length' | 'width'>;

/**
 * Number of sheets of one size that no layout can do with fewer than: the best of dual feasible
 * functions on both sides (S. P. Fekete and J. Schepers, "A general framework for bounds for
 * higher-dimensional orthogonal packing problems", 2004), of the pieces as they are. A piece that may
 * be turned counts as the lesser of its two ways.
 */
export function plainSheetBound(pieces: readonly Piece[], stock: Size): number {
  return boundOf(
    pieces.map((piece) => waysOf(piece, stock)),
    stock,
  );
}

/** The same or a higher one, of the pieces also grown by what always stays empty beside them. */
export function sheetBound(pieces: readonly Piece[], stock: Size): number {
  const own = pieces.map((piece) => waysOf(piece, stock));
  const grown = grownWays(pieces, stock);
  const grew = grown.some((ways, at) =>
    ways.some(({ along, across }, way) => {
      const before = own[at]?.[way];
      return along !== before?.along || across !== before.across;
    }),
  );
  return Math.max(boundOf(own, stock), grew ? boundOf(grown, stock) : 0);
}

function boundOf(ways: readonly (readonly Way[])[], stock: Size): number {
  const groups = sameSizes(ways, stock);
  const along = groups.flatMap((group) => group.ways.map((way) => way.along));
  const across = groups.flatMap((group) => group.ways.map((way) => way.across));
  const columns = dualsFor(along).map((dual) => valuesOf(dual, groups, 'along'));
  const rows = dualsFor(across).map((dual) => valuesOf(dual, groups, 'across'));
  let best = 0;
  for (const column of columns)
    for (const row of rows) best = Math.max(best, total(groups, column, row));
  return Math.ceil(best - 1e-6);
}

/** Pieces that lie in the same ways; sizes as shares of the sheet's. */
interface Group {
  readonly ways: readonly Way[];
  count: number;
}

function sameSizes(pieces: readonly (readonly Way[])[], stock: Size): readonly Group[] {
  const groups = new Map<string, Group>();
  for (const ways of pieces) {
    const key = ways.map(({ along, across }) => `${along}×${across}`).join(' ');
    const known = groups.get(key);
    if (known !== undefined) {
      known.count += 1;
      continue;
    }
    const shares = ways.map((way) => ({
      along: way.along / stock.length,
      across: way.across / stock.width,
    }));
    groups.set(key, { ways: shares, count: 1 });
  }
  return [...groups.values()];
}

/** What a dual makes of one side of each group, in each of its ways. */
type Values = readonly (readonly number[])[];

function valuesOf(dual: Dual, groups: readonly Group[], side: keyof Way): Values {
  return groups.map(({ ways }) => ways.map((way) => dual(way[side])));
}

function total(groups: readonly Group[], column: Values, row: Values): number {
  let sum = 0;
  for (let at = 0; at < groups.length; at++) {
    const along = column[at];
    const across = row[at];
    let least = Infinity;
    for (let way = 0; way < (along?.length ?? 0); way++) {
      least = Math.min(least, (along?.[way] ?? 0) * (across?.[way] ?? 0));
    }
    if (least !== Infinity) sum += least * (groups[at]?.count ?? 0);
  }
  return sum;
}

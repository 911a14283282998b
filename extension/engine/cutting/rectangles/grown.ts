import type { Piece, SheetStock } from './sheet.ts';

/** A way a piece may lie, by what it takes of the sheet. */
export interface Way {
  readonly along: number;
  readonly across: number;
}

type Side = keyof Way;
type Grown = Record<Side, number>;

// Beyond so many different sums, or so many steps for all pieces, the rest stays as it is: the bound
// is true all the same.
const mostSums = 1_000;
const mostSteps = 400_000;

/**
 * The ways in which each piece may lie on a sheet, each side grown by what always stays empty beside
 * it: where the sizes of no other pieces add up to all of the room beside a piece, the pieces before
 * and behind it can be moved apart until it has that much more. One piece grows after another, on the
 * sizes the others have by then; what lies on a sheet before does so afterwards (M. A. Boschetti,
 * E. Hadjiconstantinou and A. Mingozzi, "New upper bounds for the two-dimensional orthogonal
 * non-guillotine cutting stock problem", 2002).
 */
export function grownWays(
  pieces: readonly Piece[],
  stock: Pick<SheetStock, 'length' | 'width'>,
): readonly (readonly Way[])[] {
  const ways = pieces.map((piece) => waysOf(piece, stock));
  const work = { left: mostSteps };
  grow(ways, { side: 'along', sheet: stock.length, work });
  grow(ways, { side: 'across', sheet: stock.width, work });
  return ways;
}

/** The ways in which a piece may lie on a sheet as it is: none, one or two. */
export function waysOf(
  { length, width, turns }: Piece,
  stock: Pick<SheetStock, 'length' | 'width'>,
): Grown[] {
  const all = [{ along: length, across: width }];
  if (turns) all.push({ along: width, across: length });
  return all.filter(({ along, across }) => along <= stock.length && across <= stock.width);
}

interface Growth {
  readonly side: Side;
  /** The sheet's own length or width. */
  readonly sheet: number;
  readonly work: { left: number };
}

function grow(ways: readonly Grown[][], growth: Growth): void {
  const { side, sheet } = growth;
  const largest = ways.map((own) => Math.max(0, ...own.map((way) => way[side])));
  const order = ways.map((_, at) => at);
  order.sort((a, b) => (largest[b] ?? 0) - (largest[a] ?? 0) || a - b);
  for (const at of order) {
    for (const way of ways[at] ?? []) {
      way[side] = sheet - fullest(ways, at, { ...growth, sheet: sheet - way[side] });
    }
  }
}

/** Different sums of sizes, in the order in which they were come by. */
interface Sums {
  readonly known: Set<number>;
  readonly list: number[];
}

/** The most of a room that the sides of other pieces add up to. */
function fullest(
  ways: readonly (readonly Way[])[],
  but: number,
  { side, sheet: room, work }: Growth,
): number {
  const sums: Sums = { known: new Set([0]), list: [0] };
  let best = 0;
  for (let at = 0; at < ways.length && best < room; at++) {
    if (at === but) continue;
    const before = sums.list.length;
    for (const { [side]: size } of ways[at] ?? []) {
      if (size > room) continue;
      work.left -= before;
      best = Math.max(best, added(sums, before, { size, room }));
    }
    if (sums.list.length > mostSums || work.left < 0) return room;
  }
  return best;
}

/** Adds each of the first so many sums with a size more, and gives the most of those in the room. */
function added(
  { known, list }: Sums,
  count: number,
  { size, room }: { readonly size: number; readonly room: number },
): number {
  let most = 0;
  for (let at = 0; at < count; at++) {
    const sum = (list[at] ?? 0) + size;
    if (sum > room) continue;
    if (sum > most) most = sum;
    if (known.has(sum)) continue;
    known.add(sum);
    list.push(sum);
  }
  return most;
}

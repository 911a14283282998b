import type { Size } from './sizes.ts';

/** Pieces still to be cut: how many of each size, by its index. */
export type Pool = readonly number[];

interface Fill {
  readonly sizes: readonly Size[];
  readonly pool: Pool;
  readonly values: readonly number[];
  readonly taken: number[];
  /** Highest value for its length of this size and those after it. */
  readonly rates: readonly number[];
  best: number;
  bestTaken: readonly number[];
  nodes: number;
  readonly enough: number;
}

/**
 * The pieces of a pool that come to the highest value on a strip: depth first, the best value for its
 * length first, so that the bound closes early. After `nodes` tries the best so far is taken.
 *
 * @param values worth of one piece of each size, by index; its own length to fill the strip best
 */
export function bestFill(
  room: number,
  pieces: {
    readonly sizes: readonly Size[];
    readonly pool: Pool;
    readonly values: readonly number[];
  },
  more: { readonly nodes: number; readonly enough: number },
): { readonly taken: readonly number[]; readonly value: number; readonly exact: boolean } {
  const { pool, values } = pieces;
  const sizes = pieces.sizes.filter(
    ({ index, length }) => (pool[index] ?? 0) > 0 && (values[index] ?? 0) > 0 && length <= room,
  );
  const rates = sizes.map(({ index, length }) => (values[index] ?? 0) / length);
  for (let at = rates.length - 2; at >= 0; at--) {
    rates[at] = Math.max(rates[at] ?? 0, rates[at + 1] ?? 0);
  }
  const fill: Fill = {
    sizes,
    pool,
    values,
    rates,
    taken: pool.map(() => 0),
    best: -1,
    bestTaken: pool.map(() => 0),
    nodes: more.nodes,
    enough: more.enough,
  };
  look(fill, 0, { room, value: 0 });
  return { taken: fill.bestTaken, value: Math.max(0, fill.best), exact: fill.nodes > 0 };
}

function look(
  fill: Fill,
  at: number,
  state: { readonly room: number; readonly value: number },
): void {
  fill.nodes -= 1;
  const { room, value } = state;
  if (value > fill.best + 1e-9) {
    fill.best = value;
    fill.bestTaken = [...fill.taken];
  }
  const size = fill.sizes[at];
  if (size === undefined || fill.nodes < 0 || fill.best >= fill.enough) return;
  if (value + room * (fill.rates[at] ?? 0) <= fill.best + 1e-9) return;
  const { index, length } = size;
  const most = Math.min(fill.pool[index] ?? 0, Math.floor(room / length));
  for (let count = most; count >= 0; count--) {
    fill.taken[index] = count;
    look(fill, at + 1, {
      room: room - count * length,
      value: value + count * (fill.values[index] ?? 0),
    });
    if (fill.nodes < 0 || fill.best >= fill.enough) break;
  }
  fill.taken[index] = 0;
}

import { below, type Chance } from '../chance.ts';
import type { Report } from '../instance.ts';
import { bestFill } from './fill.ts';
import type { Mixture } from './patterns.ts';
import { lengthOn, type Size, type Strip, type StripStock } from './sizes.ts';

export interface StripSearch {
  readonly sizes: readonly Size[];
  readonly stocks: readonly StripStock[];
  readonly bound: number;
  readonly budget: number;
  readonly chance: Chance;
  readonly report: Report | undefined;
}

export interface Bundle {
  readonly strips: readonly Strip[];
  /** Pieces that found no strip, by the size's index. */
  readonly left: readonly number[];
  readonly price: number;
}

const fillNodes = 3000;

function minus(pool: readonly number[], taken: readonly number[]): number[] {
  return pool.map((count, index) => count - (taken[index] ?? 0));
}

function priceOf(strips: readonly Strip[]): number {
  return strips.reduce((sum, { stock }) => sum + stock.price, 0);
}

function isEmpty(pool: readonly number[]): boolean {
  return pool.every((count) => count === 0);
}

/** One strip after another, each of the stock and with the pieces on which least money is wasted. */
export function filledOneByOne(
  search: Pick<StripSearch, 'sizes' | 'stocks'>,
  begun: readonly Strip[],
  pool: readonly number[],
): Bundle {
  const { sizes, stocks } = search;
  const strips = [...begun];
  const opened = stocks.map((stock) => begun.filter((strip) => strip.stock === stock).length);
  const values = lengthsOf(sizes);
  let left = pool;
  while (!isEmpty(left)) {
    let best: { stock: StripStock; taken: readonly number[]; worth: number } | undefined;
    for (const stock of stocks) {
      if ((opened[stock.index] ?? 0) >= stock.limit) continue;
      const { taken, value } = largestFirst(stock.length, { sizes, pool: left, values });
      if (value === 0) continue;
      const worth = stock.price > 0 ? value / stock.price : 1e12 + value;
      if (best === undefined || worth > best.worth) best = { stock, taken, worth };
    }
    if (best === undefined) break;
    const { stock, taken } = best;
    strips.push({ stock, counts: taken });
    opened[stock.index] = (opened[stock.index] ?? 0) + 1;
    left = minus(left, taken);
  }
  return { strips, left, price: priceOf(strips) };
}

function lengthsOf(sizes: readonly Size[]): number[] {
  const values: number[] = [];
  for (const { index, length } of sizes) values[index] = length;
  return values;
}

// The longest piece goes on first: it is the hardest to place later.
function largestFirst(
  room: number,
  pieces: {
    readonly sizes: readonly Size[];
    readonly pool: readonly number[];
    readonly values: readonly number[];
  },
): { readonly taken: readonly number[]; readonly value: number } {
  const longest = pieces.sizes.find(
    ({ index, length }) => (pieces.pool[index] ?? 0) > 0 && length <= room,
  );
  if (longest === undefined) return { taken: [], value: 0 };
  const pool = [...pieces.pool];
  pool[longest.index] = (pool[longest.index] ?? 0) - 1;
  const rest = room - longest.length;
  const found = bestFill(rest, { ...pieces, pool }, { nodes: fillNodes, enough: rest });
  const taken = [...found.taken];
  taken[longest.index] = (taken[longest.index] ?? 0) + 1;
  return { taken, value: found.value + longest.length };
}

/** Whole strips of a mixture rounded down, and the rest filled one by one. */
export function rounded(
  search: StripSearch,
  mixture: Mixture,
  keep: (share: number) => boolean,
): Bundle {
  const strips: Strip[] = [];
  let pool: readonly number[] = search.sizes.map(({ count }) => count);
  const opened = search.stocks.map(() => 0);
  const open = (stock: StripStock, counts: readonly number[]): void => {
    const useful = counts.map((count, index) => Math.min(count, pool[index] ?? 0));
    if ((opened[stock.index] ?? 0) >= stock.limit || isEmpty(useful)) return;
    strips.push({ stock, counts: useful });
    opened[stock.index] = (opened[stock.index] ?? 0) + 1;
    pool = minus(pool, useful);
  };
  const ways = [...mixture.patterns].sort((a, b) => b.times - a.times);
  for (const { pattern, times } of ways) {
    for (let time = 0; time < Math.floor(times + 1e-6); time++) open(pattern.stock, pattern.counts);
  }
  for (const { pattern, times } of ways) {
    const share = times - Math.floor(times + 1e-6);
    const whole = pattern.counts.every((count, index) => count <= (pool[index] ?? 0));
    if (whole && keep(share)) open(pattern.stock, pattern.counts);
  }
  return filledOneByOne(search, strips, pool);
}

const memory = 100;

/**
 * Betters strips of one stock towards one strip fewer: a few strips are emptied and filled again as
 * fully as they go, under late acceptance, until nothing is left over or the work is spent.
 */
export function fewerStrips(search: StripSearch, start: Bundle): Bundle {
  let best = start;
  let done = 0;
  let told = 0;
  const spend = (work: number): boolean => {
    done += work;
    if (done - told > search.budget / 20) {
      told = done;
      search.report?.(done / search.budget);
    }
    return done < search.budget;
  };
  while (best.price > search.bound && best.strips.length > 1 && done < search.budget) {
    const found = oneFewer(search, best, spend);
    if (found === undefined) break;
    best = found;
  }
  return best;
}

function oneFewer(
  search: StripSearch,
  from: Bundle,
  spend: (work: number) => boolean,
): Bundle | undefined {
  const { sizes, chance } = search;
  let strips = [...from.strips].sort(
    (a, b) => lengthOn(a.counts, sizes) - lengthOn(b.counts, sizes),
  );
  const gone = strips.shift();
  let left: readonly number[] = from.left.map((count, index) => count + (gone?.counts[index] ?? 0));
  let cost = lengthOn(left, sizes);
  const late = Array.from({ length: memory }, () => cost);
  for (let step = 0; spend(20); step++) {
    const picked = new Set<number>();
    for (let times = 1 + below(chance, 3); times > 0; times--)
      picked.add(below(chance, strips.length));
    const again = refilled(search, { strips, left, picked: [...picked] });
    if (!spend(again.work)) return undefined;
    if (isEmpty(again.left)) return { ...again, price: priceOf(again.strips) };
    const next = lengthOn(again.left, sizes) * (0.999 + 0.002 * chance());
    const slot = step % memory;
    if (next <= cost || next <= (late[slot] ?? 0)) ({ strips, left } = again);
    if (next <= cost || next <= (late[slot] ?? 0)) cost = next;
    late[slot] = cost;
  }
  return undefined;
}

function refilled(
  { sizes, chance }: StripSearch,
  from: {
    readonly strips: readonly Strip[];
    readonly left: readonly number[];
    readonly picked: readonly number[];
  },
): { strips: Strip[]; left: readonly number[]; work: number } {
  const strips = [...from.strips];
  let pool = from.left;
  for (const at of from.picked) {
    const counts = strips[at]?.counts ?? [];
    pool = pool.map((count, index) => count + (counts[index] ?? 0));
  }
  // Values are the lengths, moved a little by chance so that ties fall differently each time.
  const values = lengthsOf(sizes).map((length) => length * (1 + 0.02 * chance()));
  const order =
    chance() < 0.5
      ? sizes
      : [...sizes].sort(
          (a, b) => (values[b.index] ?? 0) / b.length - (values[a.index] ?? 0) / a.length,
        );
  let work = 0;
  for (const at of from.picked) {
    const strip = strips[at];
    if (strip === undefined) continue;
    const pieces = { sizes: order, pool, values };
    const fill =
      chance() < 0.6
        ? largestFirst(strip.stock.length, pieces)
        : bestFill(strip.stock.length, pieces, { nodes: 300, enough: strip.stock.length * 1.02 });
    work += 60;
    strips[at] = { stock: strip.stock, counts: fill.taken };
    pool = minus(pool, fill.taken);
  }
  return { strips, left: pool, work };
}

import { priceOf, type PackOnOffer } from './cheapest-packs.ts';

/** A pack of a line of an order. */
export interface OrderOffer extends PackOnOffer {
  /** Packs of it that the line takes at least, whatever they hold. */
  readonly floor?: number;
}

/** What one line of an order needs, and the packs that it may be bought in. */
export interface OrderLine {
  /** In the measure of what the packs hold; 0 where the floors alone say what is needed. */
  readonly need: number;
  readonly offers: readonly OrderOffer[];
}

/** Every total that a line can be bought for. */
export interface CostTable {
  /** The most that is bought for exactly this total; below 0 where no packs come to it. */
  readonly amounts: Float64Array;
  /** Packs of each offer in that, by total, in the order of the offers. */
  readonly counts: readonly { readonly offer: OrderOffer; readonly at: Int32Array }[];
}

// What no packs come to.
const none = -Infinity;

/** A run of numbers of packs that have one price. */
interface Tier {
  readonly first: number;
  /** Infinity where there is no end of them. */
  readonly last: number;
  readonly price: number;
}

function tiersOf(offer: OrderOffer, need: number): readonly Tier[] {
  const { price, limit = Infinity, least = 0, floor = 0, breaks = [] } = offer;
  const begin = Math.max(1, least, floor);
  const starts = [...new Set([1, ...breaks.map(({ from }) => from)])].sort((a, b) => a - b);
  return starts.flatMap((start, index): readonly Tier[] => {
    const first = Math.max(begin, start);
    const own = breaks.filter(({ from }) => from <= start).map((one) => one.price);
    const each = Math.min(price, ...own);
    const next = (starts[index + 1] ?? Infinity) - 1;
    // What costs nothing is taken as often as it is of use.
    const use = each === 0 ? Math.max(first, Math.ceil(need / offer.holds)) : Infinity;
    const last = Math.min(limit, next, use);
    return last >= first ? [{ first, last, price: each }] : [];
  });
}

/** The totals up to `budget` that a line's packs come to, and the most they hold for each. */
export function costsOf(line: OrderLine, budget: number): CostTable {
  let amounts = new Float64Array(budget + 1).fill(none);
  amounts[0] = 0;
  const counts = line.offers
    .filter(({ holds }) => holds > 0)
    .map((offer) => {
      const next =
        (offer.floor ?? 0) > 0 ? new Float64Array(budget + 1).fill(none) : amounts.slice();
      const at = new Int32Array(budget + 1);
      for (const tier of tiersOf(offer, line.need)) {
        addTier({ before: amounts, next, at }, tier, offer.holds);
      }
      amounts = next;
      return { offer, at };
    });
  return { amounts, counts };
}

interface Layer {
  readonly before: Float64Array;
  readonly next: Float64Array;
  readonly at: Int32Array;
}

function addTier(layer: Layer, tier: Tier, holds: number): void {
  if (tier.last === Infinity) addEndless(layer, tier, holds);
  else
    for (let count = tier.first; count <= tier.last; count++)
      addCount(layer, count, { tier, holds });
}

function addCount(
  { before, next, at }: Layer,
  count: number,
  { tier, holds }: { readonly tier: Tier; readonly holds: number },
): void {
  const price = count * tier.price;
  for (let cost = before.length - 1; cost >= price; cost--) {
    const under = before[cost - price] ?? none;
    if (under + count * holds <= (next[cost] ?? none)) continue;
    next[cost] = under + count * holds;
    at[cost] = count;
  }
}

// One more pack of the same price: what comes to a total is what came to it without that pack.
function addEndless({ before, next, at }: Layer, { first, price }: Tier, holds: number): void {
  const most = new Float64Array(before.length).fill(none);
  const taken = new Int32Array(before.length);
  for (let cost = first * price; cost < before.length; cost++) {
    const begun = (before[cost - first * price] ?? none) + first * holds;
    const more = (most[cost - price] ?? none) + holds;
    most[cost] = Math.max(begun, more);
    taken[cost] = more > begun ? (taken[cost - price] ?? 0) + 1 : first;
    if ((most[cost] ?? none) <= (next[cost] ?? none)) continue;
    next[cost] = most[cost] ?? none;
    at[cost] = taken[cost] ?? 0;
  }
}

/** The packs that hold the most for exactly this total. */
export function packsAt(
  { counts }: CostTable,
  total: number,
): readonly { readonly id: string; readonly count: number }[] {
  let rest = total;
  const found: { id: string; count: number }[] = [];
  for (const { offer, at } of [...counts].reverse()) {
    const count = at[rest] ?? 0;
    if (count === 0) continue;
    found.unshift({ id: offer.id, count });
    rest -= priceOf(offer, count);
  }
  return found;
}

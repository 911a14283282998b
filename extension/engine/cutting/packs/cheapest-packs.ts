/** A pack that may be bought: what it holds, in the measure the need is given in, and its price. */
export interface PackOnOffer {
  readonly id: string;
  readonly holds: number;
  /** Of one pack, in whole minor units of money. */
  readonly price: number;
  /** Packs on the shelf or in the shop; left out where there is no end to them. */
  readonly limit?: number;
  /** Price of one pack from a number of packs on. */
  readonly breaks?: readonly { readonly from: number; readonly price: number }[];
  /** Fewest packs that are sold at a time; 0 or 1 for any number. */
  readonly least?: number;
}

export interface PacksChosen {
  readonly packs: readonly { readonly id: string; readonly count: number }[];
  readonly cost: number;
  /** What the packs hold together. */
  readonly amount: number;
}

// Amounts come from unit conversions; a millionth of a per mille more than a pack holds is no need.
const sameShare = 1e-9;

interface Search {
  readonly offers: readonly PackOnOffer[];
  /** Lowest price of what one holds, of this offer and of those after it. */
  readonly rates: readonly number[];
  /** Every total price is a multiple of this. */
  readonly priceStep: number;
  readonly counts: number[];
  best: { cost: number; counts: readonly number[] } | undefined;
}

/** The price of so many packs, after quantity breaks. */
export function priceOf(offer: PackOnOffer, count: number): number {
  let price = offer.price;
  for (const one of offer.breaks ?? []) if (count >= one.from) price = Math.min(price, one.price);
  return price * count;
}

/** So many packs or more, whichever cost least: as many as are sold at once, or as have a lower price. */
export function cheapestCount(offer: PackOnOffer, count: number): number {
  if (count === 0) return 0;
  const sold = Math.max(count, offer.least ?? 0);
  const more = (offer.breaks ?? []).map(({ from }) => from).filter((from) => from > sold);
  return more
    .filter((from) => from <= (offer.limit ?? Infinity))
    .reduce((best, from) => (priceOf(offer, from) < priceOf(offer, best) ? from : best), sold);
}

function lowestPrice({ price, breaks = [] }: PackOnOffer): number {
  return breaks.reduce((least, one) => Math.min(least, one.price), price);
}

/**
 * The packs of least total price that hold `need`, or all but the share `slack` of it. Exact: every
 * combination that could be cheaper is looked at. Of equally dear ones the larger packs are taken.
 *
 * `need` and `holds` are in one measure; prices are in minor units.
 *
 * @returns undefined where the offers together do not hold the need
 */
export function fewestMoney(
  need: number,
  offers: readonly PackOnOffer[],
  slack: number,
): PacksChosen | undefined {
  const useful = offers.filter((offer) => offer.holds > 0 && (offer.limit ?? 1) > 0).sort(byValue);
  if (useful.length === 0) return undefined;
  const rates = useful.map((_, index) =>
    Math.min(...useful.slice(index).map((offer) => lowestPrice(offer) / offer.holds)),
  );
  const prices = useful.flatMap(({ price, breaks = [] }) => [
    price,
    ...breaks.map((one) => one.price),
  ]);
  const search: Search = {
    offers: useful,
    rates,
    priceStep: prices.every((price) => Number.isInteger(price))
      ? prices.reduce(commonDivisor, 0)
      : 0,
    counts: useful.map(() => 0),
    best: undefined,
  };
  look(search, 0, { rest: need * (1 - slack - sameShare), cost: 0 });
  const { best } = search;
  if (best === undefined) return undefined;
  const packs = useful.map(({ id }, index) => ({ id, count: best.counts[index] ?? 0 }));
  return {
    packs: packs.filter(({ count }) => count > 0),
    cost: best.cost,
    amount: useful.reduce((sum, { holds }, index) => sum + holds * (best.counts[index] ?? 0), 0),
  };
}

function byValue(a: PackOnOffer, b: PackOnOffer): number {
  return lowestPrice(a) * b.holds - lowestPrice(b) * a.holds || b.holds - a.holds;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

interface Point {
  readonly rest: number;
  readonly cost: number;
}

// Offers are ordered by price for what they hold, so the rest costs at least what it would cost in
// the next offer, rounded up to a possible total. Fewer of the best offer never lower that bound.
function look(search: Search, index: number, at: Point): void {
  const { offers, counts } = search;
  const offer = offers[index];
  if (at.rest <= 0 && at.cost < (search.best?.cost ?? Infinity)) {
    search.best = { cost: at.cost, counts: [...counts] };
  }
  if (at.rest <= 0 || offer === undefined || !couldBeat(search, index, at)) return;
  const steady = isSteady(offer);
  const most = mostOf(offer, at.rest);
  for (let count = most; count >= 0; count = nextFewer(offer, count)) {
    const then = { rest: at.rest - count * offer.holds, cost: at.cost + priceOf(offer, count) };
    if (steady && count < most && !couldBeat(search, index + 1, then)) break;
    counts[index] = count;
    look(search, index + 1, then);
  }
  counts[index] = 0;
}

// Fewer of the best offer never lower what the rest must cost at least, but for quantity breaks.
function isSteady({ breaks, least = 0 }: PackOnOffer): boolean {
  return breaks === undefined && least <= 1;
}

/** The next number of packs worth trying, going down: below the least that is sold, none. */
function nextFewer({ least = 0 }: PackOnOffer, count: number): number {
  return count > 0 && count <= least ? 0 : count - 1;
}

function mostOf(offer: PackOnOffer, rest: number): number {
  const breaks = (offer.breaks ?? []).map(({ from }) => from);
  const wanted = Math.max(1, Math.ceil(rest / offer.holds), offer.least ?? 0, ...breaks);
  const most = Math.min(wanted, offer.limit ?? Infinity);
  return most < (offer.least ?? 0) ? 0 : most;
}

function couldBeat(search: Search, index: number, at: Point): boolean {
  if (at.rest > 0 && index >= search.offers.length) return false;
  if (search.best === undefined) return true;
  const least = at.cost + Math.max(0, at.rest) * (search.rates[index] ?? 0);
  const step = search.priceStep;
  const possible = step > 0 ? Math.ceil(least / step - sameShare) * step : least;
  return possible < search.best.cost;
}

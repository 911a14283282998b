import type { Minor } from './bill.ts';

/** A pack that may be bought: what it holds, in the measure the need is given in, and its price. */
export interface Offer {
  readonly id: string;
  readonly holds: number;
  readonly price: Minor;
}

/** Goods sold by the step: cloth by the quarter yard, wire by the foot. */
export interface StepOffer {
  readonly id: string;
  readonly step: number;
  /** Minor units of money for one unit of the measure; not rounded. */
  readonly rate: number;
  /** The smallest amount sold; 0 where there is none. */
  readonly least: number;
}

export interface PackChoice {
  readonly packs: readonly { readonly id: string; readonly count: number }[];
  readonly cost: Minor;
  /** What the packs hold together. */
  readonly amount: number;
}

// Amounts come from unit conversions; a millionth of a per mille more than a pack holds is no need.
const sameShare = 1e-9;

interface Search {
  readonly offers: readonly Offer[];
  /** Every total price is a multiple of this. */
  readonly priceStep: number;
  readonly counts: number[];
  best: { cost: number; counts: readonly number[] } | undefined;
}

/**
 * The packs of least total price that hold `need`, or all but the share `slack` of it. Exact: every
 * combination that could be cheaper is looked at. Of equally dear ones the larger packs are taken.
 *
 * `need` and `holds` are in one measure (mm³, mm, pieces); prices are in minor units.
 *
 * @returns undefined where no offer holds anything
 * @example cheapestPacks(5, [quart, gallon], 0) // one gallon and one quart
 */
export function cheapestPacks(
  need: number,
  offers: readonly Offer[],
  slack: number,
): PackChoice | undefined {
  const useful = offers.filter((offer) => offer.holds > 0).sort(byValue);
  if (useful.length === 0) return undefined;
  const search: Search = {
    offers: useful,
    priceStep: useful.map((offer) => offer.price).reduce(commonDivisor, 0),
    counts: useful.map(() => 0),
    best: undefined,
  };
  look(search, 0, { rest: need * (1 - slack - sameShare), cost: 0 });
  const counts = search.best?.counts ?? [];
  const packs = useful.map(({ id }, index) => ({ id, count: counts[index] ?? 0 }));
  return {
    packs: packs.filter(({ count }) => count > 0),
    cost: search.best?.cost ?? 0,
    amount: useful.reduce((sum, { holds }, index) => sum + holds * (counts[index] ?? 0), 0),
  };
}

function byValue(a: Offer, b: Offer): number {
  return a.price * b.holds - b.price * a.holds || b.holds - a.holds;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

// Offers are ordered by price for what they hold, so the rest costs at least what it would cost in
// the next offer, rounded up to a possible total. Fewer of the best offer never lower that bound.
function look(search: Search, index: number, at: { rest: number; cost: number }): void {
  const { offers, counts } = search;
  const offer = offers[index];
  if (at.rest <= 0) {
    if (search.best === undefined || at.cost < search.best.cost) {
      search.best = { cost: at.cost, counts: [...counts] };
    }
    return;
  }
  if (offer === undefined || !couldBeat(search, at, offer)) return;
  const next = offers[index + 1];
  const most = Math.ceil(at.rest / offer.holds);
  for (let count = most; count >= 0; count--) {
    const then = { rest: at.rest - count * offer.holds, cost: at.cost + count * offer.price };
    if (count < most && (next === undefined || !couldBeat(search, then, next))) break;
    counts[index] = count;
    look(search, index + 1, then);
  }
  counts[index] = 0;
}

function couldBeat(
  search: Search,
  at: { readonly rest: number; readonly cost: number },
  offer: Offer,
): boolean {
  if (search.best === undefined) return true;
  const least = at.cost + (Math.max(0, at.rest) * offer.price) / offer.holds;
  const step = search.priceStep;
  const possible = step > 0 ? Math.ceil(least / step - sameShare) * step : least;
  return possible < search.best.cost;
}

/**
 * What is bought of goods sold by the step: the need rounded up to whole steps, at least `least`.
 * The price is rounded once, for the whole amount.
 */
export function wholeSteps(need: number, offer: StepOffer, slack: number): PackChoice {
  const wanted = Math.max(need * (1 - slack - sameShare), need > 0 ? offer.least : 0);
  const count = Math.max(0, Math.ceil(wanted / offer.step - sameShare));
  const amount = count * offer.step;
  return {
    packs: count > 0 ? [{ id: offer.id, count }] : [],
    cost: Math.round(amount * offer.rate),
    amount,
  };
}

// Under this share to spare a person should know before cutting or mixing (common practice, no source).
const nearlyShort = 0.03;

/**
 * "tight, 0.1 % short" or "tight, 1.4 % to spare" where what is bought hardly exceeds the need;
 * undefined where there is enough.
 */
export function tightness(need: number, amount: number): string | undefined {
  if (need <= 0) return undefined;
  const spare = (amount - need) / need;
  if (spare >= nearlyShort) return undefined;
  if (Math.abs(spare) < 0.0005) return 'tight, nothing to spare';
  const share = (Math.abs(spare) * 100).toFixed(1);
  return spare < 0 ? `tight, ${share} % short` : `tight, ${share} % to spare`;
}

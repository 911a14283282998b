import {
  cheapestCount,
  fewestMoney,
  priceOf,
  type PackOnOffer,
} from '../cutting/packs/cheapest-packs.ts';
import type { Minor } from './bill.ts';

/** A pack that may be bought: what it holds, in the measure the need is given in, and its price. */
export type Offer = PackOnOffer;

export { cheapestCount, priceOf };

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

/**
 * The packs of least total price that hold `need`, or all but the share `slack` of it. Exact: every
 * combination that could be cheaper is looked at; limits and least numbers hold. Of equally dear ones
 * the larger packs are taken.
 *
 * `need` and `holds` are in one measure (mm³, mm, pieces); prices are in minor units.
 *
 * @returns undefined where no offer holds anything, or all together too little
 * @example cheapestPacks(5, [quart, gallon], 0) // one gallon and one quart
 */
export function cheapestPacks(
  need: number,
  offers: readonly Offer[],
  slack: number,
): PackChoice | undefined {
  return fewestMoney(need, offers, slack);
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

import type { CutAnswer, PackOffer, PacksInstance } from '../instance.ts';
import { fewestMoney, type PackOnOffer, type PacksChosen } from './cheapest-packs.ts';
import { leastOrder } from './least-order.ts';

/**
 * In how many parts money is counted, so that all amounts of an instance are whole: 1, 10, 100 or 1000;
 * undefined where none of these do.
 */
export function centsIn({ packs, minimum = 0 }: PacksInstance): number | undefined {
  const amounts = packs.flatMap(({ price, breaks = [] }) => [price, ...breaks.map((b) => b.price)]);
  return [1, 10, 100, 1000].find((parts) =>
    [minimum, ...amounts].every((one) => isWhole(one * parts)),
  );
}

// 24.99 × 100 is a millionth of a millionth beside 2499.
function isWhole(amount: number): boolean {
  return Math.abs(amount - Math.round(amount)) < 1e-6;
}

/** The cheapest packs that come to the minimum as well. */
function raised(
  { need, offers }: { readonly need: number; readonly offers: readonly PackOnOffer[] },
  minimum: number,
  cents: number,
): PacksChosen | undefined {
  const whole = (money: number): number => Math.round(money * cents);
  const counted = offers.map((offer) => ({
    ...offer,
    price: whole(offer.price),
    ...(offer.breaks && {
      breaks: offer.breaks.map(({ from, price }) => ({ from, price: whole(price) })),
    }),
  }));
  const order = leastOrder([{ need, offers: counted }], whole(minimum));
  const [line] = order?.lines ?? [];
  if (line === undefined) return undefined;
  const holds = new Map(offers.map((offer) => [offer.id, offer.holds]));
  const amount = line.packs.reduce((sum, { id, count }) => sum + count * (holds.get(id) ?? 0), 0);
  return { packs: line.packs, cost: line.cost / cents, amount };
}

function offerOf({ id, size, price, limit, breaks, least }: PackOffer, index: number): PackOnOffer {
  return {
    id: id ?? String(index + 1),
    holds: size,
    price,
    ...(limit === undefined ? {} : { limit }),
    ...(breaks === undefined ? {} : { breaks }),
    ...(least === undefined ? {} : { least }),
  };
}

/**
 * The packs of least price that hold a need, exactly, and come to the minimum where there is one;
 * prices in minor units of money or any other.
 */
export function choosePacks(instance: PacksInstance): CutAnswer {
  const { need, packs, minimum = 0 } = instance;
  const offers = packs.map(offerOf);
  const cheapest = fewestMoney(need, offers, 0);
  if (cheapest === undefined) return answerOf(need, undefined, 'need');
  if (cheapest.cost >= minimum) return answerOf(need, cheapest, '');
  return answerOf(need, raised({ need, offers }, minimum, centsIn(instance) ?? 1), 'minimum');
}

function answerOf(need: number, chosen: PacksChosen | undefined, lacks: string): CutAnswer {
  const { packs, cost, amount } = chosen ?? { packs: [], cost: 0, amount: 0 };
  const count = packs.reduce((sum, one) => sum + one.count, 0);
  return {
    kind: 'packs',
    count,
    price: cost,
    bound: count,
    priceBound: cost,
    proven: chosen !== undefined,
    utilisation: amount === 0 ? 0 : need / amount,
    sheets: [],
    placements: [],
    patterns: packs.map(({ id, count: times }) => ({ stock: id, times, pieces: [], left: 0 })),
    cuts: [],
    unplaced: chosen === undefined ? [{ part: lacks, count: 1 }] : [],
  };
}

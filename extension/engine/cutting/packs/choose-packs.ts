import type { CutAnswer, PacksInstance } from '../instance.ts';
import { fewestMoney } from './cheapest-packs.ts';

/** The packs of least price that hold a need, exactly; prices in minor units of money or any other. */
export function choosePacks({ need, packs }: PacksInstance): CutAnswer {
  const offers = packs.map(({ id, size, price, limit, breaks, least }, index) => ({
    id: id ?? String(index + 1),
    holds: size,
    price,
    ...(limit === undefined ? {} : { limit }),
    ...(breaks === undefined ? {} : { breaks }),
    ...(least === undefined ? {} : { least }),
  }));
  const chosen = fewestMoney(need, offers, 0);
  const count = chosen?.packs.reduce((sum, one) => sum + one.count, 0) ?? 0;
  return {
    kind: 'packs',
    count,
    price: chosen?.cost ?? 0,
    bound: count,
    priceBound: chosen?.cost ?? 0,
    proven: chosen !== undefined,
    utilisation: chosen === undefined || chosen.amount === 0 ? 0 : need / chosen.amount,
    sheets: [],
    placements: [],
    patterns: (chosen?.packs ?? []).map(({ id, count: times }) => ({
      stock: id,
      times,
      pieces: [],
      left: 0,
    })),
    cuts: [],
    unplaced: chosen === undefined ? [{ part: 'need', count: 1 }] : [],
  };
}

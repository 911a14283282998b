import type { Chance } from '../chance.ts';
import { Filling, type Work } from './fill.ts';
import { copied, noPlaces, reachOf, type Bay, type Ground, type Places } from './ground.ts';
import { Loosening } from './loosen.ts';
import { itemOrders } from './orders.ts';

export interface RollSearch {
  readonly ground: Ground;
  /** Width of the roll in cells. */
  readonly rows: number;
  /** Columns that no layout does with fewer than. */
  readonly bound: number;
  readonly budget: number;
  readonly chance: Chance;
  readonly work: Work;
}

export interface RollFound {
  readonly places: Places;
  readonly columns: number;
}

function wholeLength(ground: Ground): number {
  return ground.ways.reduce((sum, ways) => {
    const columns = ways.map((form) => ground.forms[form]?.columns ?? 0);
    return sum + Math.max(0, ...columns);
  }, 0);
}

function filled(search: RollSearch, order: readonly number[]): RollFound {
  const { ground, rows, work } = search;
  const bay: Bay = { stock: 0, start: 0, columns: wholeLength(ground), rows };
  const places = noPlaces(ground.ways.length);
  const filling = new Filling(ground, places, work);
  for (const item of order) filling.lay(item, 0, bay);
  return { places, columns: reachOf(places, ground, 0, 0) };
}

/**
 * The shortest piece of a roll found for outlines: bottom-left fill in several orders, then the piece
 * made shorter step by step while overlaps can be loosened.
 */
export function packRoll(search: RollSearch): RollFound {
  const { ground, work, budget } = search;
  let best: RollFound | undefined;
  for (const order of itemOrders(ground)) {
    if (best !== undefined && work.done > budget / 3) break;
    const found = filled(search, order);
    work.report?.(work.done / budget);
    if (best === undefined || found.columns < best.columns) best = found;
  }
  return shortened(search, best ?? { places: noPlaces(0), columns: 0 });
}

function shortened(search: RollSearch, start: RollFound): RollFound {
  const { ground, rows, bound, budget, work, chance } = search;
  let best = start;
  let share = 0.025;
  while (work.done < budget && best.columns > bound) {
    const columns = best.columns - Math.max(1, Math.round(best.columns * share));
    const bays: readonly Bay[] = [{ stock: 0, start: 0, columns, rows }];
    const places = copied(best.places);
    if (!pulledIn(places, ground, columns)) return best;
    const loosening = new Loosening(ground, bays, places, { chance, work });
    if (loosening.settle(budget, 1)) best = { places, columns: reachOf(places, ground, 0, 0) };
    else share /= 2;
  }
  return best;
}

/** Brings what lies beyond the end back to it; false where a part is longer than the piece. */
function pulledIn(places: Places, ground: Ground, columns: number): boolean {
  for (let item = 0; item < places.x.length; item++) {
    const last = columns - (ground.forms[places.form[item] ?? 0]?.columns ?? 0);
    if (last < 0) return false;
    if ((places.x[item] ?? 0) > last) places.x[item] = last;
  }
  return true;
}

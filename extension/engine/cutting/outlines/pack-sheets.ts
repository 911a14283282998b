import { below, type Chance } from '../chance.ts';
import { intAt } from './cells.ts';
import type { Work } from './fill.ts';
import { bayPitch, filledSheets, type Opened, type SheetKind } from './fill-sheets.ts';
import { copied, type Bay, type Ground, type Places } from './ground.ts';
import { Loosening } from './loosen.ts';
import { itemOrders } from './orders.ts';

export interface SheetSearch {
  readonly ground: Ground;
  readonly kinds: readonly SheetKind[];
  /** No layout costs less. */
  readonly bound: number;
  readonly budget: number;
  readonly chance: Chance;
  readonly work: Work;
}

/**
 * The cheapest sheets found for outlines: bottom-left fill in several orders, then one sheet emptied at
 * a time and its parts brought onto the others, while overlaps can be loosened.
 */
export function packSheets(search: SheetSearch): Opened {
  let best = bestFilling(search);
  const { bound, budget, work } = search;
  while (best.left.length === 0 && best.bays.length > 1 && best.price > bound) {
    const fewer = work.done < budget ? oneFewer(search, best) : undefined;
    if (fewer === undefined) break;
    best = fewer;
  }
  return best;
}

function bestFilling({ ground, kinds, bound, budget, work }: SheetSearch): Opened {
  const [first = [], ...others] = itemOrders(ground);
  let best = filledSheets(ground, kinds, first, work);
  for (const order of others) {
    if (work.done > budget / 3 || isEnough(best, bound)) break;
    work.report?.(work.done / budget);
    const found = filledSheets(ground, kinds, order, work);
    if (isBetter(found, best)) best = found;
  }
  return best;
}

function isEnough({ left, price }: Opened, bound: number): boolean {
  return left.length === 0 && price <= bound;
}

function isBetter(a: Opened, b: Opened): boolean {
  if (a.left.length !== b.left.length) return a.left.length < b.left.length;
  return a.price < b.price || (a.price === b.price && a.bays.length < b.bays.length);
}

function usedOn({ areas }: Ground, places: Places, bay: number): number {
  let sum = 0;
  for (let item = 0; item < places.x.length; item++) {
    if (places.bay[item] === bay) sum += areas[item] ?? 0;
  }
  return sum;
}

/** Without the sheet that costs most for what lies on it, where the others have room at all. */
function oneFewer(search: SheetSearch, from: Opened): Opened | undefined {
  const { ground, kinds, chance, work, budget } = search;
  const price = (bay: Bay): number => kinds.find(({ stock }) => stock === bay.stock)?.price ?? 0;
  const rate = from.bays.map((bay, at) => price(bay) / (usedOn(ground, from.places, at) + 1));
  const gone = rate.indexOf(Math.max(...rate));
  const pitch = bayPitch(ground, kinds);
  const bays = from.bays
    .filter((_, at) => at !== gone)
    .map((bay, at) => ({ ...bay, start: at * pitch }));
  const places = moved(search, from, { gone, bays, pitch });
  if (places === undefined) return undefined;
  const area = ground.areas.reduce((sum, one) => sum + one, 0);
  const cells = bays.reduce((sum, { columns, rows }) => sum + columns * rows, 0);
  const cellArea = cellAreaOf(ground);
  if (area > cells * cellArea) return undefined;
  const loosening = new Loosening(ground, bays, places, { chance, work });
  if (!loosening.settle(budget, 8)) return undefined;
  const total = bays.reduce((sum, bay) => sum + price(bay), 0);
  return { places, bays, left: [], price: total };
}

interface Others {
  readonly gone: number;
  readonly bays: readonly Bay[];
  readonly pitch: number;
}

/** What lay on the sheet that goes, scattered over the others; undefined where a part is too large. */
function moved(
  { ground, chance }: SheetSearch,
  from: Opened,
  { gone, bays, pitch }: Others,
): Places | undefined {
  const places = copied(from.places);
  for (let item = 0; item < places.x.length; item++) {
    const bay = intAt(places.bay, item);
    const to = bay === gone ? below(chance, bays.length) : bay - (bay > gone ? 1 : 0);
    const form = ground.forms[intAt(places.form, item)];
    const of = bays[to];
    if (form === undefined || of === undefined) return undefined;
    if (form.columns > of.columns || form.rows > of.rows) return undefined;
    const x = intAt(places.x, item) - bay * pitch;
    places.x[item] = of.start + Math.min(x, of.columns - form.columns);
    places.y[item] = Math.min(intAt(places.y, item), of.rows - form.rows);
    places.bay[item] = to;
  }
  return places;
}

/** Area of a cell, mm², from the form with the most rows. */
function cellAreaOf({ forms }: Ground): number {
  const [form] = forms;
  if (form === undefined) return 1;
  return (form.width / Math.max(1, form.fineRows)) ** 2 * 9;
}

import { outlineBudgetOf } from '../budgets.ts';
import { chanceFrom } from '../chance.ts';
import type { CutAnswer, OutlinesInstance, Placement, Report } from '../instance.ts';
import { fewestMoney } from '../packs/cheapest-packs.ts';
import { unplacedParts } from '../unplaced.ts';
import type { Opened, SheetKind } from './fill-sheets.ts';
import { lyingIn, outlinePlacement } from './lay-roll.ts';
import { packSheets } from './pack-sheets.ts';
import { loopsArea, partLoops } from './part-loops.ts';
import { prepared, type Prepared } from './prepare.ts';
import { slideTogether } from './slide.ts';

/** Cells across the shorter side of the smallest sheet, at most so many along any. */
const across = 240;
const mostAlong = 700;

function cellOf({ stocks, parts, effort }: OutlinesInstance): number {
  const shorter = Math.min(...stocks.map(({ length, width }) => Math.min(length, width)));
  const longer = Math.max(...stocks.map(({ length, width }) => Math.max(length, width)));
  // With many kinds of parts a coarser grid keeps their maps small.
  const fewer = (parts.length > 30 ? 1.6 : 1) * (effort === 'live' || effort === 'quick' ? 2.5 : 1);
  return Math.max(shorter / across, longer / mostAlong) * fewer;
}

function kindsOf(instance: OutlinesInstance, cell: number): readonly SheetKind[] {
  const { stocks, kerf = 0, trim = 0 } = instance;
  const unpriced = stocks.every(({ price }) => price === 0);
  const cells = (mm: number): number => Math.floor((mm - 2 * trim + kerf) / cell + 1e-9);
  return stocks.map(({ length, width, price, limit }, stock) => ({
    stock,
    columns: cells(length),
    rows: cells(width),
    price: unpriced ? 1 : price,
    limit: limit ?? Infinity,
  }));
}

function boundsOf(instance: OutlinesInstance, area: number): { count: number; price: number } {
  const { stocks, trim = 0 } = instance;
  const unpriced = stocks.every(({ price }) => price === 0);
  const holds = stocks.map(({ length, width }) => (length - 2 * trim) * (width - 2 * trim));
  const offers = stocks.map(({ id, price, limit }, at) => ({
    id,
    holds: holds[at] ?? 0,
    price: unpriced ? 1 : price,
    ...(limit === undefined ? {} : { limit }),
  }));
  const count = Math.ceil(area / Math.max(1, ...holds) - 1e-9);
  return { count, price: fewestMoney(area, offers, 0)?.cost ?? 0 };
}

function areaOf({ parts }: OutlinesInstance): number {
  return parts.reduce((sum, part) => sum + part.count * loopsArea(partLoops(part)), 0);
}

/** What no layout is below, by the area of the parts. */
export function leastOfOutlines(instance: OutlinesInstance): {
  readonly count: number;
  readonly price: number;
} {
  return boundsOf(instance, areaOf(instance));
}

/**
 * Lays outlines on sheets at least price: rasters of the parts, maps of where two may not lie, filling
 * from the bottom left (small parts land in openings of large ones), overlaps loosened to do with fewer
 * sheets, and parts slid together by their exact outlines at the end.
 */
export function layOutlines(instance: OutlinesInstance, report?: Report): CutAnswer {
  const { parts, kerf = 0, effort, seed } = instance;
  const cell = cellOf(instance);
  const ready = prepared(parts, kerf, cell);
  const kinds = kindsOf(instance, cell);
  const bounds = leastOfOutlines(instance);
  const opened = packSheets({
    ground: ready.ground,
    kinds,
    bound: bounds.price,
    budget: outlineBudgetOf(effort),
    chance: chanceFrom(seed ?? 1),
    work: { done: 0, report },
  });
  return answerOf(instance, { ready, opened, cell, bounds });
}

interface Found {
  readonly ready: Prepared;
  readonly opened: Opened;
  readonly cell: number;
  readonly bounds: { readonly count: number; readonly price: number };
}

function answerOf(instance: OutlinesInstance, { ready, opened, cell, bounds }: Found): CutAnswer {
  const { stocks, kerf = 0, trim = 0 } = instance;
  const placements: Placement[] = [];
  const sheets = opened.bays.map((bay, index) => {
    const stock = stocks[bay.stock];
    const { items, lying } = lyingIn(ready, opened.places, { index, start: bay.start, cell });
    slideTogether(lying, { x: 0, y: 0 });
    let used = 0;
    items.forEach((item, at) => {
      const form = opened.places.form[item] ?? 0;
      const place = { form, x: lying[at]?.x ?? 0, y: lying[at]?.y ?? 0 };
      const on = { stock: stock?.id ?? '', index, kerf, trim, before: trim };
      placements.push(outlinePlacement(ready, item, place, on));
      const part = ready.parts[item];
      if (part !== undefined) used += loopsArea(partLoops(part));
    });
    const area = (stock?.length ?? 0) * (stock?.width ?? 0);
    return { stock: stock?.id ?? '', utilisation: used / Math.max(1, area), used, area };
  });
  const price = opened.bays.reduce((sum, { stock }) => sum + (stocks[stock]?.price ?? 0), 0);
  const unplaced = unplacedParts(opened.left.flatMap((item) => ready.parts[item] ?? []));
  const area = sheets.reduce((sum, sheet) => sum + sheet.area, 0);
  const used = sheets.reduce((sum, sheet) => sum + sheet.used, 0);
  const unpriced = stocks.every((stock) => stock.price === 0);
  const met = unpriced ? sheets.length <= bounds.count : price <= bounds.price;
  return {
    kind: 'outlines',
    count: sheets.length,
    price,
    bound: bounds.count,
    priceBound: unpriced ? 0 : bounds.price,
    proven: unplaced.length === 0 && met,
    utilisation: area > 0 ? used / area : 0,
    sheets: sheets.map(({ stock, utilisation }) => ({ stock, utilisation })),
    placements,
    patterns: [],
    cuts: [],
    unplaced,
  };
}

import { Filling, type Work } from './fill.ts';
import { copied, noPlaces, type Bay, type Ground, type Places } from './ground.ts';

/** Sheets of one stock on the grid. */
export interface SheetKind {
  readonly stock: number;
  readonly columns: number;
  readonly rows: number;
  readonly price: number;
  readonly limit: number;
}

/** Sheets opened with what lies on them; bays lie behind each other, too far apart to meet. */
export interface Opened {
  readonly places: Places;
  readonly bays: readonly Bay[];
  readonly left: readonly number[];
  readonly price: number;
}

/** Columns from one bay's start to the next one's. */
export function bayPitch(ground: Ground, kinds: readonly SheetKind[]): number {
  const longest = Math.max(...kinds.map(({ columns }) => columns));
  return longest + Math.max(1, ...ground.forms.map(({ columns }) => columns));
}

/**
 * Opens sheet after sheet, each time of the stock on which what is left costs least for its area, and
 * fills it from the bottom left.
 */
export function filledSheets(
  ground: Ground,
  kinds: readonly SheetKind[],
  order: readonly number[],
  work: Work,
): Opened {
  const pitch = bayPitch(ground, kinds);
  let places = noPlaces(ground.ways.length);
  const bays: Bay[] = [];
  const opened = kinds.map(() => 0);
  let left = order;
  let price = 0;
  while (left.length > 0) {
    let best: { places: Places; bay: Bay; left: number[]; worth: number; kind: number } | undefined;
    kinds.forEach((kind, at) => {
      if ((opened[at] ?? 0) >= kind.limit) return;
      const { stock, columns, rows } = kind;
      const bay: Bay = { stock, start: bays.length * pitch, columns, rows };
      const tried = copied(places);
      const filling = new Filling(ground, tried, work);
      const rest = left.filter((item) => !filling.lay(item, bays.length, bay));
      const used = left
        .filter((item) => !rest.includes(item))
        .reduce((sum, item) => sum + (ground.areas[item] ?? 0), 0);
      const worth = kind.price > 0 ? used / kind.price : used * 1e9;
      if (used > 0 && (best === undefined || worth > best.worth)) {
        best = { places: tried, bay, left: rest, worth, kind: at };
      }
    });
    if (best === undefined) break;
    places = best.places;
    bays.push(best.bay);
    opened[best.kind] = (opened[best.kind] ?? 0) + 1;
    price += kinds[best.kind]?.price ?? 0;
    left = best.left;
  }
  return { places, bays, left, price };
}

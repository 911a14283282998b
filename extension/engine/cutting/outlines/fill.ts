import type { Report } from '../instance.ts';
import { blockedAt, intAt } from './cells.ts';
import type { Bay, Ground, Places } from './ground.ts';

/** Counts pairs and columns looked at. */
export interface Work {
  done: number;
  /** Hears what share of the budget is spent. */
  readonly report?: Report | undefined;
}

interface Spot {
  readonly form: number;
  readonly x: number;
  readonly y: number;
  readonly end: number;
}

/**
 * Bottom-left fill: items one after another, each as near the start of its bay as it fits, then as low.
 * A hole is free ground like any other, so that small parts land in openings of large ones.
 */
export class Filling {
  readonly #ground: Ground;
  readonly #places: Places;
  readonly #work: Work;
  /** Items of each bay. */
  readonly #laid: number[][] = [];
  /** Column before which a form finds no place in a bay any more. */
  readonly #starts: Int32Array[] = [];
  #marks = new Uint8Array(0);

  constructor(ground: Ground, places: Places, work: Work) {
    this.#ground = ground;
    this.#places = places;
    this.#work = work;
  }

  /** Lays an item in a bay; false where it has no place there. */
  lay(item: number, bay: number, of: Bay): boolean {
    const laid = (this.#laid[bay] ??= []);
    this.#starts[bay] ??= new Int32Array(this.#ground.forms.length);
    const best = this.#best(item, bay, of);
    if (best === undefined) return false;
    this.#places.x[item] = best.x;
    this.#places.y[item] = best.y;
    this.#places.form[item] = best.form;
    this.#places.bay[item] = bay;
    laid.push(item);
    return true;
  }

  #best(item: number, bay: number, of: Bay): Spot | undefined {
    let best: Spot | undefined;
    for (const form of this.#ground.ways[item] ?? []) {
      const spot = this.#spot(form, bay, of, best?.end ?? Infinity);
      const lower = best === undefined || (spot !== undefined && spot.y < best.y);
      if (spot !== undefined && (lower || spot.end < (best?.end ?? Infinity))) best = spot;
    }
    return best;
  }

  #spot(form: number, bay: number, of: Bay, end: number): Spot | undefined {
    const own = this.#ground.forms[form];
    const starts = this.#starts[bay];
    if (own === undefined || starts === undefined) return undefined;
    const last = Math.min(of.columns, end) - own.columns;
    const highest = of.rows - own.rows;
    if (highest < 0) return undefined;
    for (let column = starts[form] ?? 0; column <= last; column++) {
      const y = this.#lowest(form, bay, of.start + column, highest);
      if (y >= 0) {
        starts[form] = column;
        return { form, x: of.start + column, y, end: column + own.columns };
      }
      // Placing more parts never frees a column again, but a tighter end is not the bay's.
      if (end === Infinity) starts[form] = column + 1;
    }
    return undefined;
  }

  #lowest(form: number, bay: number, x: number, highest: number): number {
    if (this.#marks.length <= highest) this.#marks = new Uint8Array(highest + 1);
    const marks = this.#marks;
    marks.fill(0, 0, highest + 1);
    for (const item of this.#laid[bay] ?? []) this.#mark(item, form, x, highest);
    const free = marks.indexOf(0);
    return free >= 0 && free <= highest ? free : -1;
  }

  /** Marks the rows that an item keeps a form from, in the column at `x`. */
  #mark(item: number, form: number, x: number, highest: number): void {
    const { x: xs, y: ys, form: forms } = this.#places;
    const { columns, rows, blocked } = this.#ground.noFits;
    const of = intAt(forms, item);
    const column = x - intAt(xs, item) + intAt(columns, form);
    if (column < 0 || column > intAt(columns, of) + intAt(columns, form)) return;
    this.#work.done += 1;
    const map = of <= form ? blocked(of, form) : blocked(form, of);
    const ny = intAt(rows, of) + intAt(rows, form) + 1;
    const low = intAt(ys, item) - intAt(rows, form);
    const from = Math.max(0, -low);
    const to = Math.min(ny, highest + 1 - low);
    const way = of <= form ? 1 : -1;
    let step = of <= form ? column * ny + from : map.length - 1 - column * ny - from;
    for (let at = low + from; at < low + to; at++, step += way) {
      if (blockedAt(map, step) !== 0) this.#marks[at] = 1;
    }
  }
}

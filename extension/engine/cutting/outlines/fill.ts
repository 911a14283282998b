import type { Bay, Ground, Places } from './ground.ts';

/** Counts pairs and columns looked at. */
export interface Work {
  done: number;
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
    this.#laid[bay] ??= [];
    this.#starts[bay] ??= new Int32Array(this.#ground.forms.length);
    let best: Spot | undefined;
    for (const form of this.#ground.ways[item] ?? []) {
      const spot = this.#spot(form, bay, of, best?.end ?? Infinity);
      if (spot === undefined) continue;
      if (best === undefined || spot.end < best.end || (spot.end === best.end && spot.y < best.y)) {
        best = spot;
      }
    }
    if (best === undefined) return false;
    this.#places.x[item] = best.x;
    this.#places.y[item] = best.y;
    this.#places.form[item] = best.form;
    this.#places.bay[item] = bay;
    this.#laid[bay].push(item);
    return true;
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
    const { x: xs, y: ys, form: forms } = this.#places;
    for (const item of this.#laid[bay] ?? []) {
      const map = this.#ground.noFit(forms[item] ?? 0, form);
      const step = x - (xs[item] ?? 0) - map.minX;
      if (step < 0 || step >= map.nx) continue;
      this.#work.done += 1;
      const low = (ys[item] ?? 0) + map.minY;
      const from = Math.max(0, -low);
      const to = Math.min(map.ny, highest + 1 - low);
      const base = step * map.ny;
      for (let at = from; at < to; at++) if (map.depth[base + at] !== 0) marks[low + at] = 1;
    }
    const free = marks.indexOf(0);
    return free >= 0 && free <= highest ? free : -1;
  }
}

import { depthAt, intAt, weightAt } from './cells.ts';
import type { Work } from './fill.ts';
import type { Ground, Places } from './ground.ts';
import { depthOf } from './no-fit.ts';

/** A place that an item may take. */
export interface Spot {
  form: number;
  x: number;
  y: number;
}

/**
 * How deep the items of a layout overlap, and what that weighs: pairs that keep overlapping weigh more
 * and more.
 */
export class Overlaps {
  readonly #ground: Ground;
  readonly #places: Places;
  readonly #count: number;
  readonly #work: Work;
  readonly #weights: Float64Array;
  /** As last measured: of each pair, the lower item's row. */
  readonly #depths: Uint16Array;
  readonly #isOverlapping: Uint8Array;
  #total = 0;
  #deepest = 1;

  constructor(ground: Ground, places: Places, work: Work) {
    this.#ground = ground;
    this.#places = places;
    this.#work = work;
    this.#count = places.x.length;
    this.#weights = new Float64Array(this.#count * this.#count).fill(1);
    this.#depths = new Uint16Array(this.#count * this.#count);
    this.#isOverlapping = new Uint8Array(this.#count);
  }

  /** Depths of all overlaps together, as last measured. */
  get total(): number {
    return this.#total;
  }

  /** Items that overlapped another when it was last measured. */
  overlapping(): number[] {
    const found: number[] = [];
    for (let item = 0; item < this.#count; item++) {
      if (this.#isOverlapping[item] === 1) found.push(item);
    }
    this.#work.done += (this.#count * this.#count) / 80;
    return found;
  }

  /** Measures how deep each pair overlaps where it lies. */
  measure(): void {
    const count = this.#count;
    this.#isOverlapping.fill(0);
    this.#total = 0;
    this.#deepest = 1;
    for (let a = 0; a < count; a++) {
      for (let b = a + 1; b < count; b++) {
        const depth = this.#depth(a, b);
        this.#depths[a * count + b] = depth;
        if (depth === 0) continue;
        this.#isOverlapping[a] = 1;
        this.#isOverlapping[b] = 1;
        this.#total += depth;
        if (depth > this.#deepest) this.#deepest = depth;
      }
    }
  }

  #depth(a: number, b: number): number {
    const { x, y, form } = this.#places;
    const { columns, rows, deep } = this.#ground.noFits;
    const [one, other] = [intAt(form, a), intAt(form, b)];
    const left = intAt(columns, other);
    const dx = intAt(x, b) - intAt(x, a) + left;
    if (dx < 0 || dx > intAt(columns, one) + left) return 0;
    const low = intAt(rows, other);
    const dy = intAt(y, b) - intAt(y, a) + low;
    const high = intAt(rows, one) + low;
    if (dy < 0 || dy > high) return 0;
    return depthOf(deep, one, other, dx * (high + 1) + dy);
  }

  /** What the overlaps of an item at a place weigh; where that is `limit` or more, it is not counted on. */
  costAt(item: number, spot: Spot, limit: number): number {
    const { x: xs, y: ys, form: forms } = this.#places;
    const { columns, rows, deep } = this.#ground.noFits;
    const row = item * this.#count;
    const left = intAt(columns, spot.form);
    const low = intAt(rows, spot.form);
    const x = spot.x + left;
    const y = spot.y + low;
    let sum = 0;
    for (let other = 0; other < this.#count; other++) {
      const dx = x - intAt(xs, other);
      const dy = y - intAt(ys, other);
      if (dx < 0 || dy < 0 || other === item) continue;
      const form = intAt(forms, other);
      const high = intAt(rows, form) + low;
      if (dy > high || dx > intAt(columns, form) + left) continue;
      const at = dx * (high + 1) + dy;
      const depth = depthOf(deep, form, spot.form, at);
      if (depth === 0) continue;
      sum += depth * weightAt(this.#weights, row + other);
      if (sum >= limit) break;
    }
    this.#work.done += 1 + this.#count / 80;
    return sum;
  }

  /** Measures, and lets pairs that overlap weigh more and the others less. */
  reweigh(): void {
    this.measure();
    const count = this.#count;
    for (let a = 0; a < count; a++) {
      for (let b = a + 1; b < count; b++) {
        const depth = depthAt(this.#depths, a * count + b);
        const old = weightAt(this.#weights, a * count + b);
        if (depth === 0 && old === 1) continue;
        const fresh =
          depth > 0 ? old * (1.05 + (0.25 * depth) / this.#deepest) : Math.max(1, old * 0.985);
        this.#weights[a * count + b] = fresh;
        this.#weights[b * count + a] = fresh;
      }
    }
    this.#work.done += (count * count) / 80;
  }
}

import { below, type Chance } from '../chance.ts';
import { depthAt, intAt, weightAt } from './cells.ts';
import type { Work } from './fill.ts';
import type { Bay, Ground, Places } from './ground.ts';

/** Passes without progress after which a layout is stirred. */
const patience = 100;

interface Move {
  form: number;
  x: number;
  y: number;
  bay: number;
  cost: number;
}

/**
 * Moves items that overlap until none does: each to where its overlaps weigh least, while pairs that
 * keep overlapping weigh more and more (guided local search). Items stay within their bays.
 */
export class Loosening {
  readonly #ground: Ground;
  readonly #bays: readonly Bay[];
  readonly #places: Places;
  readonly #weights: Float64Array;
  readonly #count: number;
  readonly #chance: Chance;
  readonly #work: Work;

  constructor(
    ground: Ground,
    bays: readonly Bay[],
    places: Places,
    how: { readonly chance: Chance; readonly work: Work },
  ) {
    this.#ground = ground;
    this.#bays = bays;
    this.#places = places;
    this.#count = places.x.length;
    this.#weights = new Float64Array(this.#count * this.#count).fill(1);
    this.#chance = how.chance;
    this.#work = how.work;
  }

  /** Works until nothing overlaps (true) or the budget is spent (false). */
  settle(budget: number, stirs: number): boolean {
    let best = Infinity;
    let stale = 0;
    let stirred = 0;
    while (this.#work.done < budget) {
      this.#work.report?.(this.#work.done / budget);
      const overlapping = this.#overlapping();
      if (overlapping.length === 0) return true;
      const before = this.#total();
      if (before < best * 0.99) [best, stale] = [before, 0];
      else stale += 1;
      if (stale > patience) {
        if (stirred >= stirs) return false;
        this.#stir();
        stirred += 1;
        [best, stale] = [Infinity, 0];
      }
      for (const item of shuffled(overlapping, this.#chance)) this.#relocate(item);
      this.#reweigh();
    }
    return this.#overlapping().length === 0;
  }

  #depth(a: number, b: number): number {
    const { x, y, form } = this.#places;
    const map = this.#ground.noFits.deep(form[a] ?? 0, form[b] ?? 0);
    const dx = (x[b] ?? 0) - (x[a] ?? 0) - map.minX;
    if (dx < 0 || dx >= map.nx) return 0;
    const dy = (y[b] ?? 0) - (y[a] ?? 0) - map.minY;
    if (dy < 0 || dy >= map.ny) return 0;
    return map.depth[dx * map.ny + dy] ?? 0;
  }

  #overlapping(): number[] {
    const found: number[] = [];
    for (let a = 0; a < this.#count; a++) {
      for (let b = 0; b < this.#count; b++) {
        if (a === b || this.#depth(a, b) === 0) continue;
        found.push(a);
        break;
      }
    }
    this.#work.done += (this.#count * this.#count) / 80;
    return found;
  }

  #total(): number {
    let sum = 0;
    for (let a = 0; a < this.#count; a++) {
      for (let b = a + 1; b < this.#count; b++) sum += this.#depth(a, b);
    }
    return sum;
  }

  #cost(item: number, form: number, at: { x: number; y: number }, limit: number): number {
    const { x: xs, y: ys, form: forms } = this.#places;
    const weights = this.#weights;
    const row = item * this.#count;
    let sum = 0;
    for (let other = 0; other < this.#count; other++) {
      if (other === item) continue;
      const map = this.#ground.noFits.deep(intAt(forms, other), form);
      const dx = at.x - intAt(xs, other) - map.minX;
      if (dx < 0 || dx >= map.nx) continue;
      const dy = at.y - intAt(ys, other) - map.minY;
      if (dy < 0 || dy >= map.ny) continue;
      const depth = depthAt(map.depth, dx * map.ny + dy);
      if (depth === 0) continue;
      sum += depth * weightAt(weights, row + other);
      if (sum >= limit) break;
    }
    this.#work.done += 1 + this.#count / 80;
    return sum;
  }

  #relocate(item: number): void {
    const { x, y, form, bay } = this.#places;
    const start = { x: intAt(x, item), y: intAt(y, item), form: intAt(form, item) };
    const cost = this.#cost(item, start.form, start, Infinity);
    if (cost === 0) return;
    let best: Move = { ...start, bay: intAt(bay, item), cost };
    for (const move of [{ ...best }, ...this.#candidates(item)]) {
      this.#descend(item, move);
      if (move.cost < best.cost) best = move;
      if (best.cost === 0) break;
    }
    x[item] = best.x;
    y[item] = best.y;
    form[item] = best.form;
    bay[item] = best.bay;
  }

  /** The three best of some places anywhere and some near by. */
  #candidates(item: number): readonly Move[] {
    const tried: Move[] = [];
    for (let times = 0; times < 36; times++) {
      const move = times < 24 ? this.#anywhere(item) : this.#nearby(item);
      if (move === undefined) continue;
      const limit = tried[2]?.cost ?? Infinity;
      move.cost = this.#cost(item, move.form, move, limit);
      if (move.cost >= limit) continue;
      tried.push(move);
      tried.sort((a, b) => a.cost - b.cost);
      if (tried.length > 3) tried.pop();
    }
    return tried;
  }

  #anywhere(item: number): Move | undefined {
    const ways = this.#ground.ways[item] ?? [];
    const form = ways[below(this.#chance, ways.length)] ?? 0;
    const bay = below(this.#chance, this.#bays.length);
    const room = this.#room(form, bay);
    if (room === undefined) return undefined;
    const x = room.start + below(this.#chance, room.columns + 1);
    const y = below(this.#chance, room.rows + 1);
    return { form, x, y, bay, cost: Infinity };
  }

  #nearby(item: number): Move | undefined {
    const { x, y, form, bay } = this.#places;
    const ways = this.#ground.ways[item] ?? [];
    const own =
      this.#chance() < 0.7 ? (form[item] ?? 0) : (ways[below(this.#chance, ways.length)] ?? 0);
    const at = bay[item] ?? 0;
    const room = this.#room(own, at);
    const shape = this.#ground.forms[own];
    if (room === undefined || shape === undefined) return undefined;
    const spread = (size: number): number => Math.round((this.#chance() - 0.5) * size);
    return {
      form: own,
      x: within((x[item] ?? 0) + spread(shape.columns), room.start, room.start + room.columns),
      y: within((y[item] ?? 0) + spread(shape.rows), 0, room.rows),
      bay: at,
      cost: Infinity,
    };
  }

  #room(form: number, bay: number): { start: number; columns: number; rows: number } | undefined {
    const [own, of] = [this.#ground.forms[form], this.#bays[bay]];
    if (own === undefined || of === undefined) return undefined;
    const columns = of.columns - own.columns;
    const rows = of.rows - own.rows;
    return columns < 0 || rows < 0 ? undefined : { start: of.start, columns, rows };
  }

  #descend(item: number, move: Move): void {
    const room = this.#room(move.form, move.bay);
    if (room === undefined) return;
    let step = 8;
    while (step >= 1 && move.cost > 0) {
      let moved = false;
      for (const [sx, sy] of around) {
        const x = within(move.x + sx * step, room.start, room.start + room.columns);
        const y = within(move.y + sy * step, 0, room.rows);
        if (x === move.x && y === move.y) continue;
        const cost = this.#cost(item, move.form, { x, y }, move.cost);
        if (cost >= move.cost) continue;
        move.x = x;
        move.y = y;
        move.cost = cost;
        moved = true;
        break;
      }
      if (!moved) step >>= 1;
    }
  }

  #reweigh(): void {
    const count = this.#count;
    let most = 1;
    for (let a = 0; a < count; a++) {
      for (let b = a + 1; b < count; b++) most = Math.max(most, this.#depth(a, b));
    }
    for (let a = 0; a < count; a++) {
      for (let b = a + 1; b < count; b++) {
        const depth = this.#depth(a, b);
        const old = this.#weights[a * count + b] ?? 1;
        const fresh = depth > 0 ? old * (1.05 + (0.25 * depth) / most) : Math.max(1, old * 0.985);
        this.#weights[a * count + b] = fresh;
        this.#weights[b * count + a] = fresh;
      }
    }
    this.#work.done += (count * count) / 80;
  }

  /** Swaps two large items, or scatters a few. */
  #stir(): void {
    const { x, y, form, bay } = this.#places;
    const put = (item: number, move: Move | undefined): void => {
      if (move === undefined) return;
      x[item] = move.x;
      y[item] = move.y;
      form[item] = move.form;
      bay[item] = move.bay;
    };
    if (this.#chance() < 0.6) {
      const [a, b] = [this.#large(), this.#large()];
      const at = (item: number): { x: number; y: number; bay: number } => ({
        x: x[item] ?? 0,
        y: y[item] ?? 0,
        bay: bay[item] ?? 0,
      });
      const [one, other] = [at(a), at(b)];
      put(a, this.#fitted(form[a] ?? 0, other));
      put(b, this.#fitted(form[b] ?? 0, one));
      return;
    }
    for (let item = 0; item < this.#count; item++) {
      if (this.#chance() < 0.15) put(item, this.#anywhere(item));
    }
  }

  #large(): number {
    const { areas } = this.#ground;
    const picks = Array.from({ length: 3 }, () => below(this.#chance, this.#count));
    return picks.reduce((best, item) => ((areas[item] ?? 0) > (areas[best] ?? 0) ? item : best));
  }

  #fitted(form: number, at: { x: number; y: number; bay: number }): Move | undefined {
    const room = this.#room(form, at.bay);
    if (room === undefined) return undefined;
    const x = within(at.x, room.start, room.start + room.columns);
    return { form, x, y: within(at.y, 0, room.rows), bay: at.bay, cost: Infinity };
  }
}

const around: readonly (readonly [number, number])[] = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
];

function within(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, value));
}

function shuffled(list: readonly number[], chance: Chance): number[] {
  const mixed = [...list];
  for (let at = mixed.length - 1; at > 0; at--) {
    const other = below(chance, at + 1);
    const [a, b] = [mixed[at], mixed[other]];
    if (a === undefined || b === undefined) continue;
    mixed[at] = b;
    mixed[other] = a;
  }
  return mixed;
}

import { below, type Chance } from '../chance.ts';
import { intAt } from './cells.ts';
import type { Work } from './fill.ts';
import type { Bay, Ground, Places } from './ground.ts';
import { Overlaps, type Spot } from './overlaps.ts';

/** Passes without progress after which a layout is stirred. */
const patience = 100;

interface Move extends Spot {
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
  readonly #overlaps: Overlaps;
  readonly #count: number;
  readonly #chance: Chance;
  readonly #work: Work;
  /** Of the form and bay asked for last: kept, since it is asked for at every place tried. */
  readonly #room = { start: 0, columns: 0, rows: 0 };

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
    this.#overlaps = new Overlaps(ground, places, how.work);
    this.#chance = how.chance;
    this.#work = how.work;
  }

  /** Works until nothing overlaps (true) or the budget is spent (false). */
  settle(budget: number, stirs: number): boolean {
    let best = Infinity;
    let stale = 0;
    let stirred = 0;
    this.#overlaps.measure();
    while (this.#work.done < budget) {
      this.#work.report?.(this.#work.done / budget);
      const overlapping = this.#overlaps.overlapping();
      if (overlapping.length === 0) return true;
      const before = this.#overlaps.total;
      if (before < best * 0.99) [best, stale] = [before, 0];
      else stale += 1;
      if (stale > patience) {
        if (stirred >= stirs) return false;
        this.#stir();
        stirred += 1;
        [best, stale] = [Infinity, 0];
      }
      for (const item of shuffled(overlapping, this.#chance)) this.#relocate(item);
      this.#overlaps.reweigh();
    }
    return this.#overlaps.overlapping().length === 0;
  }

  #relocate(item: number): void {
    const { x, y, form, bay } = this.#places;
    const start = {
      ...{ form: intAt(form, item), x: intAt(x, item), y: intAt(y, item) },
      ...{ bay: intAt(bay, item), cost: Infinity },
    };
    start.cost = this.#overlaps.costAt(item, start, Infinity);
    if (start.cost === 0) return;
    let best: Move = start;
    for (const move of [{ ...start }, ...this.#candidates(item)]) {
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
    const move: Move = { form: 0, x: 0, y: 0, bay: 0, cost: Infinity };
    for (let times = 0; times < 36; times++) {
      if (!(times < 24 ? this.#anywhere(item, move) : this.#nearby(item, move))) continue;
      const limit = tried[2]?.cost ?? Infinity;
      move.cost = this.#overlaps.costAt(item, move, limit);
      if (move.cost >= limit) continue;
      let at = tried.length;
      while (at > 0 && (tried[at - 1]?.cost ?? 0) > move.cost) at -= 1;
      tried.splice(at, 0, { ...move });
      if (tried.length > 3) tried.pop();
    }
    return tried;
  }

  /** Moves to any place of any bay; false where the form drawn is too large for the bay drawn. */
  #anywhere(item: number, move: Move): boolean {
    const ways = this.#ground.ways[item] ?? [];
    move.form = ways[below(this.#chance, ways.length)] ?? 0;
    move.bay = below(this.#chance, this.#bays.length);
    if (!this.#measureRoom(move)) return false;
    move.x = this.#room.start + below(this.#chance, this.#room.columns + 1);
    move.y = below(this.#chance, this.#room.rows + 1);
    return true;
  }

  #nearby(item: number, move: Move): boolean {
    const { x, y, form, bay } = this.#places;
    const ways = this.#ground.ways[item] ?? [];
    move.form =
      this.#chance() < 0.7 ? intAt(form, item) : (ways[below(this.#chance, ways.length)] ?? 0);
    move.bay = intAt(bay, item);
    const shape = this.#ground.forms[move.form];
    if (!this.#measureRoom(move) || shape === undefined) return false;
    const { start, columns, rows } = this.#room;
    const stepX = Math.round((this.#chance() - 0.5) * shape.columns);
    const stepY = Math.round((this.#chance() - 0.5) * shape.rows);
    move.x = within(intAt(x, item) + stepX, start, start + columns);
    move.y = within(intAt(y, item) + stepY, 0, rows);
    return true;
  }

  /** The room for a form's corner in a bay, put into `#room`; false where there is none. */
  #measureRoom({ form, bay }: Move): boolean {
    const own = this.#ground.forms[form];
    const of = this.#bays[bay];
    if (own === undefined || of === undefined) return false;
    this.#room.start = of.start;
    this.#room.columns = of.columns - own.columns;
    this.#room.rows = of.rows - own.rows;
    return this.#room.columns >= 0 && this.#room.rows >= 0;
  }

  #descend(item: number, move: Move): void {
    if (!this.#measureRoom(move)) return;
    const { start, columns, rows } = this.#room;
    const trial: Spot = { form: move.form, x: 0, y: 0 };
    let step = 8;
    while (step >= 1 && move.cost > 0) {
      let moved = false;
      for (let way = 0; way < around.length && !moved; way += 2) {
        trial.x = within(move.x + (around[way] ?? 0) * step, start, start + columns);
        trial.y = within(move.y + (around[way + 1] ?? 0) * step, 0, rows);
        if (trial.x === move.x && trial.y === move.y) continue;
        const cost = this.#overlaps.costAt(item, trial, move.cost);
        if (cost >= move.cost) continue;
        move.x = trial.x;
        move.y = trial.y;
        move.cost = cost;
        moved = true;
      }
      if (!moved) step >>= 1;
    }
  }

  /** Swaps two large items, or scatters a few. */
  #stir(): void {
    const { x, y, form, bay } = this.#places;
    const put = (item: number, move: Move): void => {
      x[item] = move.x;
      y[item] = move.y;
      form[item] = move.form;
      bay[item] = move.bay;
    };
    if (this.#chance() < 0.6) {
      const [a, b] = [this.#large(), this.#large()];
      const at = (item: number): Move => ({
        ...{ form: intAt(form, item), x: intAt(x, item), y: intAt(y, item) },
        ...{ bay: intAt(bay, item), cost: Infinity },
      });
      const [one, other] = [at(a), at(b)];
      [one.form, other.form] = [other.form, one.form];
      if (this.#fit(other)) put(a, other);
      if (this.#fit(one)) put(b, one);
      return;
    }
    const anywhere = { form: 0, x: 0, y: 0, bay: 0, cost: Infinity };
    for (let item = 0; item < this.#count; item++) {
      if (this.#chance() < 0.15 && this.#anywhere(item, anywhere)) put(item, anywhere);
    }
  }

  #large(): number {
    const { areas } = this.#ground;
    const picks = Array.from({ length: 3 }, () => below(this.#chance, this.#count));
    return picks.reduce((best, item) => ((areas[item] ?? 0) > (areas[best] ?? 0) ? item : best));
  }

  /** Moves a place into its bay; false where the form is too large for it. */
  #fit(move: Move): boolean {
    if (!this.#measureRoom(move)) return false;
    const { start, columns, rows } = this.#room;
    move.x = within(move.x, start, start + columns);
    move.y = within(move.y, 0, rows);
    return true;
  }
}

// Steps along and across, in turn.
const around: readonly number[] = [1, 0, -1, 0, 0, 1, 0, -1, 1, 1, 1, -1, -1, 1, -1, -1];

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

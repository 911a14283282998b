import { below, type Chance } from '../chance.ts';
import { filled, laidOn, ordered, orderCount, type Table, type Work } from './greedy.ts';
import type { Mix, Mixes } from './mixes.ts';
import type { Cutting, Piece, Sheet, SheetStock, Spot } from './sheet.ts';
import { change, costOf, leftOf, stateOf, unevenOf, type Change, type State } from './state.ts';

export interface SearchInput<Own extends Sheet, Place extends Spot> {
  readonly cutting: Cutting<Own, Place>;
  readonly stocks: readonly SheetStock[];
  readonly pieces: readonly Piece[];
  /** No layout can cost less. */
  readonly bound: number;
  /** Places that may be looked at. */
  readonly budget: number;
  readonly chance: Chance;
  readonly report?: (share: number) => void;
  /** Where there are several stocks to choose from. */
  readonly mixes?: Mixes;
}

/** The cheapest of many ways to lay pieces out one after another. */
export function bestGreedy<Own extends Sheet, Place extends Spot>(
  input: SearchInput<Own, Place>,
  work: Work,
): Table<Own> {
  const { cutting, stocks, pieces, bound, budget } = input;
  let best: Table<Own> | undefined;
  for (let rule = 0; rule < cutting.rules; rule++) {
    for (let order = 0; order < orderCount; order++) {
      if (best !== undefined && (work.done > budget / 3 || isEnough(best, bound))) return best;
      const table = filled(cutting, stocks, ordered(pieces, order), { rule, work });
      if (best === undefined || isBetter(table, best)) best = table;
    }
  }
  return best ?? { sheets: [], left: pieces, price: 0 };
}

function isEnough(table: Table<Sheet>, bound: number): boolean {
  return table.left.length === 0 && table.price <= bound;
}

function isBetter(a: Table<Sheet>, b: Table<Sheet>): boolean {
  if (a.left.length !== b.left.length) return a.left.length < b.left.length;
  if (a.price !== b.price) return a.price < b.price;
  return a.sheets.length < b.sheets.length;
}

// How many of the last states a new one is measured against.
const memory = 200;

/**
 * Ruin and recreate towards a goal: a table that must cost less than the best one has pieces left;
 * sheets are emptied in part and laid anew, until none is left or the work is spent. A state is taken
 * on if it is no worse than the present one or the one `memory` steps ago (late acceptance).
 */
export function improved<Own extends Sheet, Place extends Spot>(
  input: SearchInput<Own, Place>,
  start: Table<Own>,
  work: Work,
): Table<Own> {
  const { bound, budget, chance, mixes } = input;
  let best = start;
  if (start.left.length > 0) return start;
  while (best.price > bound && work.done < budget) {
    const goal = { below: best.price, work, chance, end: budget };
    const found = (mixes && byMixes(input, mixes, goal)) ?? towards(input, lightened(best), goal);
    if (found === undefined) break;
    best = found;
  }
  return best;
}

// Mixes tried for one goal, and the share of the work left that each may take. Where only one mix can
// do, all of the work goes to it.
const mostMixes = 4;
const shareOfMix = 0.2;

/** The pieces on one of the roomiest mixes of stocks that cost less than the goal. */
function byMixes<Own extends Sheet, Place extends Spot>(
  input: SearchInput<Own, Place>,
  mixes: Mixes,
  goal: Goal,
): Table<Own> | undefined {
  const { work } = goal;
  const { found, all } = mixes.below(goal.below);
  const share = all && found.length === 1 ? 1 : shareOfMix;
  for (const mix of found.slice(0, mostMixes)) {
    const laid = onMix(input, mix, work);
    if (laid.left.length === 0) return laid;
    const end = work.done + share * (input.budget - work.done);
    const better = towards(input, { ...laid, off: undefined }, { ...goal, end });
    if (better !== undefined) return better;
  }
  return undefined;
}

/** The pieces on the sheets of a mix, by the order and rule that leave least of them. */
function onMix<Own extends Sheet, Place extends Spot>(
  { cutting, pieces }: SearchInput<Own, Place>,
  { sheets, price }: Mix,
  work: Work,
): Table<Own> {
  let best: Table<Own> | undefined;
  let least = Infinity;
  for (let rule = 0; rule < cutting.rules; rule++) {
    for (let order = 0; order < orderCount && least > 0; order++) {
      const laid = laidOn(cutting, sheets.map(cutting.open), ordered(pieces, order), {
        rule,
        work,
      });
      const left = laid.left.reduce((sum, { area }) => sum + area, 0);
      if (left < least) [best, least] = [{ ...laid, price }, left];
    }
  }
  return best ?? { sheets: [], left: pieces, price };
}

/** The table without its sheet that costs most for what lies on it. */
function lightened<Own extends Sheet>({
  sheets,
  left,
  price,
}: Table<Own>): Table<Own> & {
  readonly off: Own | undefined;
} {
  let worst: Own | undefined;
  let value = -Infinity;
  for (const sheet of sheets) {
    const own = sheet.stock.price > 0 ? sheet.stock.price / (sheet.used + 1) : -1;
    if (own > value) [worst, value] = [sheet, own];
  }
  return {
    sheets: sheets.filter((sheet) => sheet !== worst),
    left,
    price: price - (worst?.stock.price ?? 0),
    off: worst,
  };
}

interface Goal {
  readonly below: number;
  readonly work: Work;
  readonly chance: Chance;
  /** Work after which it is given up. */
  readonly end: number;
}

function towards<Own extends Sheet, Place extends Spot>(
  input: SearchInput<Own, Place>,
  from: Table<Own> & { readonly off: Own | undefined },
  goal: Goal,
): Table<Own> | undefined {
  const { cutting, stocks, pieces, budget } = input;
  const { work, chance, end } = goal;
  const put = piecesOn(cutting, from.off);
  let now = stateOf({ ...from, left: [...from.left, ...put] });
  const mean = stocks.reduce((sum, { area }) => sum + area, 0) / Math.max(1, stocks.length);
  let cost = costOf(now, leftOf(now.left), mean);
  const late: number[] = Array.from({ length: memory }, () => cost);
  const mixed = stocks.length > 1 && end === budget;
  const start = work.done;
  const reports = Math.max(1, Math.floor((budget - start) / 20));
  let told = start;
  for (let step = 0; work.done < end; step++) {
    const base = mixed && chance() < 0.08 ? stateOf(otherSheets(input, now, goal)) : now;
    const next = recreated(input, base, goal);
    const nextCost = costOf(base, leftOf(next.left), mean, next.uneven);
    const slot = step % memory;
    if (next.left.length === 0) return change(base, next);
    if (nextCost <= Math.max(cost, late[slot] ?? 0)) {
      now = change(base, next);
      cost = nextCost;
    }
    late[slot] = cost;
    if (input.report !== undefined && work.done - told > reports) {
      told = work.done;
      input.report(work.done / budget);
    }
  }
  return pieces.length === 0 ? now : undefined;
}

// What a step takes beside the places it looks at, in places.
const perStep = 12;

function recreated<Own extends Sheet, Place extends Spot>(
  { cutting }: SearchInput<Own, Place>,
  now: State<Own>,
  { work, chance }: Goal,
): Change<Own> {
  const at: number[] = [];
  for (let times = 1 + below(chance, 3); times > 0 && now.sheets.length > 0; times--) {
    const pick = below(chance, now.sheets.length);
    if (!at.includes(pick)) at.push(pick);
  }
  work.done += perStep;
  const left = now.left.slice();
  const opened: Own[] = [];
  let uneven = now.uneven;
  for (const index of at) {
    const sheet = now.sheets[index];
    if (sheet === undefined) continue;
    uneven -= unevenOf(sheet);
    const ruined = cutting.ruin(sheet, chance);
    work.done += ruined.work;
    for (const piece of ruined.off) left.push(piece);
    opened.push(ruined.sheet);
  }
  const order = ordered(left, below(chance, orderCount), { chance, share: 0.3 * chance() });
  const rule = below(chance, cutting.rules);
  const laid = laidOn(cutting, opened, order, { rule, work, skips: chance });
  for (const sheet of laid.sheets) uneven += unevenOf(sheet);
  return { at, sheets: laid.sheets, left: laid.left, uneven };
}

/** Takes one sheet away, brings one more, or one of another stock in place of one: within the goal. */
function otherSheets<Own extends Sheet, Place extends Spot>(
  { cutting, stocks }: SearchInput<Own, Place>,
  now: Table<Own>,
  goal: Goal,
): Table<Own> {
  const { chance } = goal;
  const way = below(chance, 3);
  let { sheets, price } = now;
  const left = [...now.left];
  const out = way === 1 ? undefined : sheets[below(chance, sheets.length)];
  if (out !== undefined) {
    sheets = sheets.filter((sheet) => sheet !== out);
    price -= out.stock.price;
    left.push(...piecesOn(cutting, out));
  }
  if (way > 0) {
    const possible = stocks.filter(
      (stock) =>
        price + stock.price < goal.below &&
        sheets.filter((sheet) => sheet.stock === stock).length < stock.limit,
    );
    const stock = possible[below(chance, possible.length)];
    if (stock !== undefined) {
      sheets = [...sheets, cutting.open(stock)];
      price += stock.price;
    }
  }
  const last = sheets.slice(-1);
  const order = ordered(left, below(chance, orderCount), { chance, share: 0.2 });
  const laid = laidOn(cutting, last, order, {
    rule: below(chance, cutting.rules),
    work: goal.work,
  });
  return { sheets: [...sheets.slice(0, -1), ...laid.sheets], left: laid.left, price };
}

function piecesOn<Own extends Sheet, Place extends Spot>(
  cutting: Cutting<Own, Place>,
  sheet: Own | undefined,
): readonly Piece[] {
  return sheet === undefined ? [] : cutting.lying(sheet).map(({ piece }) => piece);
}

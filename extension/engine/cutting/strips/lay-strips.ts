import { budgetOf } from '../budgets.ts';
import { chanceFrom } from '../chance.ts';
import type { CutAnswer, CutPattern, Part, Report, StripsInstance } from '../instance.ts';
import { unplacedParts } from '../unplaced.ts';
import { joinedStrips } from './joined-strips.ts';
import { leastMixture } from './patterns.ts';
import { fewerStrips, filledOneByOne, rounded, type Bundle, type StripSearch } from './search.ts';
import { lengthOn, type Size, type Strip, type StripStock } from './sizes.ts';

const fine = 1000;

interface Lengths {
  readonly sizes: readonly Size[];
  /** Parts of each size, one entry a piece. */
  readonly parts: readonly (readonly Part[])[];
  readonly unfit: readonly Part[];
}

function lengthsOf({ parts, kerf = 0 }: StripsInstance, stocks: readonly StripStock[]): Lengths {
  const longest = Math.max(
    0,
    ...stocks.filter(({ limit }) => limit > 0).map(({ length }) => length),
  );
  const groups = new Map<number, Part[]>();
  const unfit: Part[] = [];
  for (const part of parts) {
    const length = Math.round((part.length + kerf) * fine);
    for (let count = 0; count < part.count; count++) {
      if (length > longest) unfit.push(part);
      else groups.set(length, [...(groups.get(length) ?? []), part]);
    }
  }
  const sorted = [...groups].sort(([a], [b]) => b - a);
  return {
    sizes: sorted.map(([length, own], index) => ({ index, length, count: own.length })),
    parts: sorted.map(([, own]) => own),
    unfit,
  };
}

function stocksOf({ stocks, kerf = 0, trim = 0 }: StripsInstance): readonly StripStock[] {
  const unpriced = stocks.every(({ price }) => price === 0);
  return stocks
    .map((stock, index) => ({
      index,
      length: Math.round((stock.length - 2 * trim + kerf) * fine),
      price: unpriced ? 1 : stock.price,
      limit: stock.limit ?? Infinity,
    }))
    .filter(({ length }) => length > 0);
}

/**
 * Cuts lengths from strips at least price: strips filled one by one, the least-price mixture of ways
 * to cut rounded down, and ruin and recreate towards one strip fewer. Where the mixture's bound is
 * met, no cutting is cheaper. With joints, parts longer than what is left are put together.
 */
export function layStrips(instance: StripsInstance, report?: Report): CutAnswer {
  const stocks = stocksOf(instance);
  const lengths = lengthsOf(instance, stocks);
  const whole = wholeParts(instance, { stocks, lengths, report });
  if (instance.joints === undefined) return whole;
  const joined = joinedStrips(instance, instance.joints);
  if (joined === undefined) return whole;
  const worse = whole.unplaced.length > 0 || joined.price < whole.price;
  return worse ? joined : { ...whole, bound: joined.bound, priceBound: joined.priceBound };
}

interface Given {
  readonly stocks: readonly StripStock[];
  readonly lengths: Lengths;
  readonly report: Report | undefined;
}

function wholeParts(instance: StripsInstance, { stocks, lengths, report }: Given): CutAnswer {
  const { sizes } = lengths;
  const total = sizes.reduce((sum, { length, count }) => sum + length * count, 0);
  const prices = stocks.map(({ price }) => price);
  const step = prices.every((price) => Number.isInteger(price)) ? prices.reduce(divisor, 0) : 0;
  const up = (price: number): number => (step > 0 ? Math.ceil(price / step - 1e-6) * step : price);
  const cheapest = Math.min(...stocks.map(({ price, length }) => price / length));
  let bound = sizes.length === 0 ? 0 : up(total * cheapest);
  const search: StripSearch = {
    sizes,
    stocks,
    bound,
    budget: budgetOf(instance.effort) / 3,
    chance: chanceFrom(instance.seed ?? 1),
    report,
  };
  let best = filledOneByOne(
    search,
    [],
    sizes.map(({ count }) => count),
  );
  const single = stocks.length === 1 && stocks.every(({ limit }) => limit === Infinity);
  if (single && best.price > bound) {
    const begun = { ...search, budget: search.budget / 8, report: shareOf(report, 0, 0.06) };
    best = fewerStrips(begun, best);
  }
  const patient =
    instance.effort === undefined || instance.effort === 'refine' || instance.effort === 'long';
  if (best.price > bound && patient) {
    const mixed = mixedWays(search, best, { single, up });
    best = mixed.best;
    bound = mixed.bound;
  }
  return answerOf(instance, { lengths, best, bound });
}

/** Roundings of the least-price mixture, bettered; and the bound that the mixture proves. */
function mixedWays(
  search: StripSearch,
  start: Bundle,
  { single, up }: { readonly single: boolean; readonly up: (price: number) => number },
): { readonly best: Bundle; readonly bound: number } {
  const { sizes, stocks } = search;
  const mixture = leastMixture(sizes, stocks, 40 + 12 * sizes.length);
  const bound = Math.max(search.bound, up(mixture.bound - 1e-6));
  const again = { ...search, bound };
  let best = start;
  for (const least of roundings) {
    best = better(
      best,
      rounded(again, mixture, (share) => share >= least),
    );
  }
  if (!single) return { best, bound };
  best = better(
    best,
    fewerStrips(
      { ...again, report: shareOf(search.report, 0.06, 0.53) },
      rounded(again, mixture, () => false),
    ),
  );
  const last = { ...again, report: shareOf(search.report, 0.53, 1) };
  return { best: fewerStrips(last, best), bound };
}

/** Tells the share of one of several searches as a share of the whole. */
function shareOf(report: Report | undefined, from: number, to: number): Report | undefined {
  return (
    report &&
    ((share) => {
      report(from + (to - from) * Math.min(1, share));
    })
  );
}

// Ways of the mixture are also taken for the part of a strip that is at least this share.
const roundings = [2, 0.5, 0.3, 0.7, 0];

function better(a: Bundle, b: Bundle): Bundle {
  const left = (bundle: Bundle): number => bundle.left.reduce((sum, count) => sum + count, 0);
  if (left(a) !== left(b)) return left(a) < left(b) ? a : b;
  return b.price < a.price ? b : a;
}

function divisor(a: number, b: number): number {
  return b === 0 ? a : divisor(b, a % b);
}

function answerOf(
  instance: StripsInstance,
  {
    lengths,
    best,
    bound,
  }: { readonly lengths: Lengths; readonly best: Bundle; readonly bound: number },
): CutAnswer {
  const unpriced = instance.stocks.every(({ price }) => price === 0);
  const price = best.strips.reduce(
    (sum, { stock }) => sum + (instance.stocks[stock.index]?.price ?? 0),
    0,
  );
  const opened = best.strips.reduce(
    (sum, { stock }) => sum + (instance.stocks[stock.index]?.length ?? 0),
    0,
  );
  const used = best.strips.reduce((sum, { counts }) => {
    const pieces = counts.reduce((all, count) => all + count, 0);
    return sum + lengthOn(counts, lengths.sizes) / fine - pieces * (instance.kerf ?? 0);
  }, 0);
  const left = best.left.flatMap((count, index) => lengths.parts[index]?.slice(0, count) ?? []);
  const unplaced = unplacedParts([...lengths.unfit, ...left]);
  const [first] = instance.stocks;
  const one = unpriced ? 1 : (first?.price ?? 0);
  const counted = instance.stocks.length === 1 && one > 0 ? Math.ceil(bound / one - 1e-9) : 0;
  return {
    kind: 'strips',
    count: best.strips.length,
    price,
    bound: counted,
    priceBound: unpriced ? 0 : bound,
    proven: unplaced.length === 0 && best.price <= bound,
    utilisation: opened > 0 ? used / opened : 0,
    sheets: [],
    placements: [],
    patterns: patternsOf(instance, lengths, best.strips),
    cuts: [],
    unplaced,
  };
}

/** Strips cut alike are one pattern, the most frequent first. */
function patternsOf(
  instance: StripsInstance,
  lengths: Lengths,
  strips: readonly Strip[],
): readonly CutPattern[] {
  const waiting = lengths.parts.map((own) => [...own]);
  const found = new Map<string, CutPattern>();
  for (const { stock, counts } of strips) {
    const id = instance.stocks[stock.index]?.id ?? '';
    const taken = counts.flatMap((count, index) => waiting[index]?.splice(0, count) ?? []);
    const pieces = countedParts(taken);
    const key = JSON.stringify([id, pieces]);
    const left = (stock.length - lengthOn(counts, lengths.sizes)) / fine;
    const known = found.get(key);
    found.set(
      key,
      known ? { ...known, times: known.times + 1 } : { stock: id, times: 1, pieces, left },
    );
  }
  return [...found.values()].sort((a, b) => b.times - a.times);
}

function countedParts(parts: readonly Part[]): CutPattern['pieces'] {
  const counts = new Map<string, { part: string; length: number; count: number }>();
  for (const { id, length } of parts) {
    const known = counts.get(id);
    counts.set(id, { part: id, length, count: (known?.count ?? 0) + 1 });
  }
  return [...counts.values()];
}

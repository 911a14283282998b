import type { ValueRange } from '../formula/catalogue.ts';
import type { Problem } from '../problems.ts';
import { plain, type Dimension } from '../units/dimension.ts';
import { comparedValues, sameValue } from '../units/same-value.ts';
import { tradeProblem } from './trade-problems.ts';

/** More units than any shop builds; adding them up would only take time. */
const mostUnits = 100_000;

/** What a number of a call may be, by the name its code knows it by; none where all numbers will do. */
const valueRanges = {
  positive: { above: 0 },
  'not-negative': { least: 0 },
  share: { above: 0, most: 1, share: true },
  /** Catalyst outside these shares of resin leaves it soft or burns it. */
  catalyst: { least: 0.005, most: 0.04, share: true },
  /** Of the price: at 100 % the cost would be a share of nothing. */
  margin: { least: 0, below: 1, share: true },
  'glass-share': { above: 0, below: 1, share: true },
  /** A lip that leans by a right angle has no plan. */
  tilt: { least: 0, below: Math.PI / 2 },
  /** Where a shop works; the rule of gel times says nothing beyond. */
  shop: { least: 0, most: 60 },
  faces: { least: 1, most: 2, whole: true },
  count: { least: 1, whole: true },
  'count-or-none': { least: 0, whole: true },
  units: { least: 1, most: mostUnits, whole: true },
  any: {},
  /** An optional one that is looked at elsewhere. */
  unchecked: undefined,
} as const satisfies Readonly<Record<string, ValueRange | undefined>>;

/** What a number of a call must be. */
export type Range = keyof typeof valueRanges;

/** A number of a call as a refusal names it. */
export interface Ranged {
  readonly functionName: string;
  readonly name: string;
  readonly value: number;
  readonly dimension: Dimension;
  readonly show: (base: number, dimension: Dimension, unit?: string) => string;
}

/** The range of a parameter as the catalogue lists it; nothing where all values will do. */
export function ranged(range: Range): { readonly range?: ValueRange } {
  const found: ValueRange | undefined = valueRanges[range];
  return found === undefined || Object.keys(found).length === 0 ? {} : { range: found };
}

/** −1, 0 or 1. Equality with tolerance is for numbers; what is infinite is further than all of them. */
function sideOf(value: number, limit: number): number {
  if (Number.isFinite(value) && Number.isFinite(limit)) return comparedValues(value, limit);
  return Math.sign(value - limit);
}

const unlimited = { least: -Infinity, above: -Infinity, most: Infinity, below: Infinity };

/** True where a number lies in a range. */
export function inRange(value: number, range: Range): boolean {
  const of: ValueRange | undefined = valueRanges[range];
  if (of === undefined) return true;
  if (Number.isNaN(value) || (range === 'any' && !Number.isFinite(value))) return false;
  const { least, above, most, below, whole } = { ...unlimited, ...of };
  if (whole === true && !sameValue(value, Math.round(value))) return false;
  const inLow = sideOf(value, least) >= 0 && sideOf(value, above) > 0;
  return inLow && !(sideOf(value, most) > 0) && !(sideOf(value, below) >= 0);
}

const refusals = {
  positive: 'argument-not-positive',
  'not-negative': 'argument-negative',
  share: 'argument-not-a-share',
  catalyst: 'percent-out-of-range',
  margin: 'margin-out-of-range',
  'glass-share': 'glass-share-out-of-range',
  tilt: 'tilt-out-of-range',
  shop: 'argument-beyond-rule',
  faces: 'faces-out-of-range',
  count: 'argument-not-a-count',
  'count-or-none': 'argument-not-a-count',
  units: 'argument-not-a-count',
  any: 'argument-not-a-number',
  unchecked: 'argument-not-a-number',
} as const satisfies Readonly<Record<Range, Parameters<typeof tradeProblem>[0]>>;

/** The refusal of a number outside its range; undefined where it lies inside. */
export function rangeProblem(of: Ranged, range: Range): Problem | undefined {
  if (inRange(of.value, range)) return undefined;
  const { least = 0, most = Infinity, share, whole } = ranged(range).range ?? {};
  const dimension = whole === true ? plain : of.dimension;
  const shown = (base: number): string =>
    of.show(base, dimension, share === true ? '%' : undefined);
  return tradeProblem(range === 'units' && of.value > most ? 'units-too-many' : refusals[range], {
    function: of.functionName,
    name: of.name,
    value: shown(of.value),
    least: shown(least),
    most: shown(most),
  });
}

import {
  angle,
  area,
  divided,
  frequency,
  length,
  mass,
  money,
  plain,
  temperature,
  temperatureDifference,
  time,
  volume,
  type Dimension,
} from './dimension.ts';
import type { UnitSettings } from './quantity.ts';

/** A unit: base value = number × factor + offset. */
export interface Unit {
  /** The one spelling that is written. */
  readonly word: string;
  readonly factor: number;
  /** 0 but for a temperature on a scale. */
  readonly offset: number;
  readonly dimension: Dimension;
}

const inch = 25.4;
const foot = 304.8;
const yard = 914.4;
const pound = 453.59237;
/** US liquid gallon, 231 cubic inches; written out because 231 × 25.4³ leaves rounding noise. */
const gallon = 3_785_411.784;
const fahrenheit = 5 / 9;

/**
 * Factors to mm, g, min, °C. Inch, pound and gallon are exact by definition (NIST Handbook 44,
 * Appendix C; NIST Special Publication 811).
 */
const factors: readonly (readonly [word: string, dimension: Dimension, factor: number])[] = [
  ['in', length, inch],
  ['ft', length, foot],
  ['yd', length, yard],
  ['mm', length, 1],
  ['cm', length, 10],
  ['m', length, 1000],
  ['sqin', area, 645.16],
  ['sqft', area, 92_903.04],
  ['sqyd', area, 836_127.36],
  ['mm2', area, 1],
  ['cm2', area, 100],
  ['m2', area, 1e6],
  ['floz', volume, gallon / 128],
  ['pt', volume, gallon / 8],
  ['qt', volume, gallon / 4],
  ['gal', volume, gallon],
  ['ml', volume, 1000],
  ['l', volume, 1e6],
  ['cuin', volume, 16_387.064],
  ['cuft', volume, 28_316_846.592],
  ['cm3', volume, 1000],
  ['m3', volume, 1e9],
  ['oz', mass, pound / 16],
  ['lb', mass, pound],
  ['g', mass, 1],
  ['kg', mass, 1000],
  ['s', time, 1 / 60],
  ['min', time, 1],
  ['h', time, 60],
  ['day', time, 1440],
  ['Hz', frequency, 60],
  ['kHz', frequency, 60_000],
  ['deg', angle, Math.PI / 180],
  ['degC', temperature, 1],
  ['degF', temperature, fahrenheit],
  ['dC', temperatureDifference, 1],
  ['dF', temperatureDifference, fahrenheit],
  ['%', plain, 0.01],
];

const offsets = new Map([['degF', -32 * fahrenheit]]);

const units = new Map<string, Unit>(
  factors.map(([word, dimension, factor]) => [
    word,
    { word, factor, offset: offsets.get(word) ?? 0, dimension },
  ]),
);

/** Spellings that are read and never written. */
const spellings = new Map([
  ['sq in', 'sqin'],
  ['sq ft', 'sqft'],
  ['sq yd', 'sqyd'],
  ['in2', 'sqin'],
  ['ft2', 'sqft'],
  ['yd2', 'sqyd'],
  ['sq mm', 'mm2'],
  ['sq cm', 'cm2'],
  ['sq m', 'm2'],
  ['fl oz', 'floz'],
  ['cu in', 'cuin'],
  ['cu ft', 'cuft'],
  ['in3', 'cuin'],
  ['ft3', 'cuft'],
  ['L', 'l'],
  ['mL', 'ml'],
]);

const word = /(?:(?:sq|fl|cu)[ \u00a0\u202f]+)?[A-Za-z]+[23]?(?![A-Za-z0-9_])|%/y;
const currencyCode = /^[A-Z]{3}$/;

/** The words of the closed table, in its order, without currency codes and compounds. */
export function unitWords(): readonly string[] {
  return [...units.keys()];
}

/** True for words that no id, column or constant may be: the units and every currency code. */
export function isUnitWord(text: string): boolean {
  return units.has(text) || currencyCode.test(text);
}

/** True for the form of a currency code: three capitals. */
export function isCurrencyCode(text: string): boolean {
  return currencyCode.test(text);
}

function simpleUnitAt(text: string, offset: number): { end: number; unit: Unit } | undefined {
  word.lastIndex = offset;
  const found = word.exec(text)?.[0];
  if (found === undefined) return undefined;
  const spelling = found.replace(/[ \u00a0\u202f]+/g, ' ');
  const known = units.get(spellings.get(spelling) ?? spelling);
  const end = offset + found.length;
  if (known !== undefined) return { end, unit: known };
  if (!currencyCode.test(spelling)) return undefined;
  return { end, unit: { word: spelling, factor: 1, offset: 0, dimension: money } };
}

function mayBeCompounded(unit: Unit): boolean {
  return unit.word !== '%' && unit.dimension.tag === undefined;
}

function compound(above: Unit, below: Unit): Unit {
  return {
    word: `${above.word}/${below.word}`,
    factor: above.factor / below.factor,
    offset: 0,
    dimension: divided(above.dimension, below.dimension),
  };
}

/**
 * The longest unit that stands at an offset, whatever its currency. No space may stand at the slash
 * of a compound.
 */
export function anyUnitAt(
  text: string,
  offset: number,
): { readonly end: number; readonly unit: Unit } | undefined {
  const above = simpleUnitAt(text, offset);
  if (above === undefined || !mayBeCompounded(above.unit)) return above;
  if (text[above.end] !== '/') return above;
  const below = simpleUnitAt(text, above.end + 1);
  if (below === undefined || !mayBeCompounded(below.unit)) return above;
  return { end: below.end, unit: compound(above.unit, below.unit) };
}

/** A currency code in a unit that is not the job's own; undefined where there is none. */
export function foreignCurrency(unit: Unit, settings: UnitSettings): string | undefined {
  return unit.word.split('/').find((part) => currencyCode.test(part) && part !== settings.currency);
}

/**
 * The longest unit spelling at an offset, for the scanner of formulas; undefined where no unit of
 * this job stands there (another currency than the job's is none).
 */
export function readUnitAt(
  text: string,
  offset: number,
  settings: UnitSettings,
): { readonly end: number; readonly unit: Unit } | undefined {
  const found = anyUnitAt(text, offset);
  return found === undefined || foreignCurrency(found.unit, settings) !== undefined
    ? undefined
    : found;
}

interface Whole {
  readonly unit: Unit;
  /** Currency codes in it, which the job must use. */
  readonly codes: readonly string[];
}

/** Spellings kept at most. */
const most = 500;

const wholes = new Map<string, Whole | undefined>();

/** The unit a text spells as a whole, whatever its currency: the same few words are asked for again. */
function wholeUnit(text: string): Whole | undefined {
  if (wholes.has(text)) return wholes.get(text);
  const found = anyUnitAt(text, 0);
  const codes = (found?.unit.word ?? '').split('/').filter(isCurrencyCode);
  const whole = found?.end === text.length ? { unit: found.unit, codes } : undefined;
  if (wholes.size >= most) wholes.clear();
  wholes.set(text, whole);
  return whole;
}

/** The unit a text spells as a whole, compounds included, in this job. */
export function unitOf(text: string, settings: UnitSettings): Unit | undefined {
  const whole = wholeUnit(text);
  return whole?.codes.every((code) => code === settings.currency) === true ? whole.unit : undefined;
}

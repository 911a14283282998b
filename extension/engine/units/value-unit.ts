import type { Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { mass, plain, sameDimension, volume, type Dimension } from './dimension.ts';
import type { Quantity, UnitSettings } from './quantity.ts';
import { unitProblem } from './unit-problems.ts';
import { anyUnitAt, foreignCurrency, unitOf, type Unit } from './unit-words.ts';
import { exampleOf, wantedName } from './wanted.ts';

/** Spellings met on paper, with the word to write instead. */
const respelt = new Map(
  Object.entries({
    inch: 'in',
    inches: 'in',
    ins: 'in',
    foot: 'ft',
    feet: 'ft',
    yard: 'yd',
    yards: 'yd',
    sf: 'sqft',
    sqm: 'm2',
    cc: 'cm3',
    lbs: 'lb',
    gm: 'g',
    gms: 'g',
    grams: 'g',
    ounces: 'oz or floz',
    liter: 'l',
    litre: 'l',
    liters: 'l',
    litres: 'l',
    gallon: 'gal',
    gallons: 'gal',
    quart: 'qt',
    quarts: 'qt',
    pint: 'pt',
    pints: 'pt',
    sec: 's',
    secs: 's',
    mins: 'min',
    minutes: 'min',
    hr: 'h',
    hrs: 'h',
    hour: 'h',
    hours: 'h',
    days: 'day',
    degrees: 'deg',
    F: 'degF',
    C: 'degC',
    percent: '%',
  }),
);

const currencySigns = new Map([
  ['$', ['USD', 'CAD', 'AUD', 'NZD', 'SGD', 'HKD', 'MXN']],
  ['€', ['EUR']],
  ['£', ['GBP']],
]);

interface Around {
  readonly settings: UnitSettings;
  readonly countWord?: string;
  readonly example: string;
}

interface Found {
  /** Undefined for a bare number. */
  readonly unit: Unit | undefined;
  readonly end: number;
}

function markAt(text: string, offset: number, settings: UnitSettings): Result<Found> | undefined {
  const sign = text[offset] ?? '';
  if (sign === '"') return ok({ unit: unitOf('in', settings), end: offset + 1 });
  if (sign === "'") return ok({ unit: unitOf('ft', settings), end: offset + 1 });
  const codes = currencySigns.get(sign);
  if (codes === undefined) return undefined;
  if (codes.includes(settings.currency)) {
    return ok({ unit: unitOf(settings.currency, settings), end: offset + 1 });
  }
  const { currency } = settings;
  return failed(unitProblem('unit-other-currency', { text, code: sign, currency }));
}

function countWordAt(
  text: string,
  offset: number,
  countWord: string | undefined,
): Found | undefined {
  if (countWord === undefined || countWord === '') return undefined;
  if (text.slice(offset).trim() !== countWord) return undefined;
  return {
    unit: { word: countWord, factor: 1, offset: 0, dimension: plain },
    end: text.length,
  };
}

function unknownUnit(text: string, offset: number, around: Around): Problem {
  const unit = /^[^\d\s]+/.exec(text.slice(offset))?.[0] ?? text.slice(offset);
  const lower = unit.toLowerCase();
  const known = unitOf(lower, around.settings) === undefined ? undefined : lower;
  const better = respelt.get(unit) ?? respelt.get(lower.replace(/\.$/, '')) ?? known;
  return better === undefined
    ? unitProblem('unit-unknown', { unit, example: around.example })
    : unitProblem('unit-respelt', { unit, better });
}

/** The unit that follows a number: a word, a mark, a sign, a count word, or nothing. */
export function unitAfterNumber(text: string, offset: number, around: Around): Result<Found> {
  const start = text[offset] === ' ' ? offset + 1 : offset;
  const rest = text.slice(start);
  if (rest === '' || /^[\d.]/.test(rest)) return ok({ unit: undefined, end: offset });
  const counted = countWordAt(text, start, around.countWord);
  if (counted !== undefined) return ok(counted);
  const mark = markAt(text, start, around.settings);
  if (mark !== undefined) return mark;
  const found = anyUnitAt(text, start);
  if (found === undefined) return failed(unknownUnit(text, start, around));
  const code = foreignCurrency(found.unit, around.settings);
  if (code === undefined) return ok(found);
  const { currency } = around.settings;
  return failed(unitProblem('unit-other-currency', { text, code, currency }));
}

function temperatureFault(read: Read, wanted: Dimension): Problem | undefined {
  const { text, unit } = read;
  const other = new Map([
    ['degF', 'dF'],
    ['degC', 'dC'],
    ['dF', 'degF'],
    ['dC', 'degC'],
  ]).get(unit);
  if (other === undefined || wanted.temperature !== 1) return undefined;
  const better = text.replace(unit, other);
  const code = wanted.tag === 'point' ? 'temperature-not-point' : 'temperature-not-difference';
  return unitProblem(code, { text, better });
}

interface Read {
  readonly value: Quantity;
  readonly unit: string;
  readonly text: string;
}

/** Why a value with this unit does not fit what is wanted; undefined where it fits. */
export function wantedUnitFault(
  read: Read,
  options: {
    readonly settings: UnitSettings;
    readonly wanted?: Dimension | 'any';
    readonly countWord?: string;
  },
): Problem | undefined {
  const { wanted, settings } = options;
  const { dimension } = read.value;
  if (wanted === undefined || wanted === 'any' || sameDimension(wanted, dimension))
    return undefined;
  const { text } = read;
  if (sameDimension(dimension, mass) && sameDimension(wanted, volume) && read.unit === 'oz') {
    return unitProblem('unit-ounce-of-what', { text, better: text.replace(/oz$/, 'floz') });
  }
  const details = { text, wanted: wantedName(wanted), example: exampleOf(wanted, settings) };
  if (read.unit === options.countWord) return unitProblem('count-word-not-wanted', details);
  return (
    temperatureFault(read, wanted) ??
    unitProblem('unit-wrong-dimension', { ...details, found: wantedName(dimension) })
  );
}

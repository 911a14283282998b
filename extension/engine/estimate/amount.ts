import {
  area,
  length,
  mass,
  plain,
  sameDimension,
  volume,
  type Dimension,
} from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import { standardUnit } from '../units/standard-units.ts';
import { unitOf } from '../units/unit-words.ts';
import type { Amount, BoughtPack } from './bill.ts';

/** What a material can be measured in. Counted goods have a word of their own: each, can, roll. */
export type Measure = 'count' | 'length' | 'area' | 'volume' | 'mass';

const dimensions: readonly (readonly [Measure, Dimension])[] = [
  ['count', plain],
  ['length', length],
  ['area', area],
  ['volume', volume],
  ['mass', mass],
];

/** The measure of a dimension; undefined for what no material is measured in (time, money). */
export function measureOf(dimension: Dimension): Measure | undefined {
  return dimensions.find(([, known]) => sameDimension(known, dimension))?.[0];
}

/** The dimension of a measure; counts are plain numbers. */
export function dimensionOf(measure: Measure): Dimension {
  return dimensions.find(([known]) => known === measure)?.[1] ?? plain;
}

class MeasuredAmount implements Amount {
  readonly base: number;
  readonly dimension: Dimension;
  readonly unit: string;
  readonly count: boolean;

  constructor(base: number, measure: Measure, unit: string) {
    this.base = base;
    this.dimension = dimensionOf(measure);
    this.unit = unit;
    this.count = measure === 'count';
  }
}

/** An amount of a measure (base units), shown in `unit`: a unit word, or the word goods are counted in. */
export function amountOf(base: number, measure: Measure, unit: string): Amount {
  return new MeasuredAmount(base, measure, unit);
}

/** The unit an amount of this measure is shown in where nobody chose one. */
export function customaryUnit(measure: Measure, settings: UnitSettings): string {
  return measure === 'count' ? 'each' : (standardUnit(dimensionOf(measure), settings) ?? '');
}

/** The words that end a cell's text after its number: `floz` of `8 floz`, `can` of `0.15 can`. */
export function writtenUnit(text: string | undefined): string {
  if (text === undefined || text.startsWith('=')) return '';
  return /\d\s*([A-Za-z][A-Za-z0-9]*(?: [A-Za-z][A-Za-z0-9]*)?)\s*$/.exec(text)?.[1] ?? '';
}

/**
 * The word a counted thing's cell is written with (`can` of `0.15 can`); empty where it is a bare
 * number, a share or a formula.
 */
export function countWord(text: string | undefined, settings: UnitSettings): string {
  const word = writtenUnit(text);
  return unitOf(word, settings) === undefined ? word : '';
}

/** The unit a cell's text is written in where it is one of this measure, else the customary one. */
export function unitWritten(
  text: string | undefined,
  measure: Measure,
  settings: UnitSettings,
): string {
  const written = unitOf(writtenUnit(text), settings);
  return written !== undefined && sameDimension(written.dimension, dimensionOf(measure))
    ? written.word
    : customaryUnit(measure, settings);
}

/** The number of an amount in the unit it is shown in. */
export function numberOf(amount: Amount, settings: UnitSettings): number {
  return amount.count ? amount.base : amount.base / (unitOf(amount.unit, settings)?.factor ?? 1);
}

/** An amount as the bill shows it: `2.003 qt`, `405 each`, `57 in`. */
export function amountText(amount: Amount, settings: UnitSettings): string {
  return showQuantity(amount, settings, amount.unit).text;
}

/** What is bought, in words: `2 × 1 qt`, and `1 yd` of goods that are cut to measure. */
export function packText(pack: BoughtPack, settings: UnitSettings): string {
  const { count, holds, cut, shelf } = pack;
  if (cut !== undefined) return amountText(cut, settings);
  const text = `${String(count)} × ${amountText(holds, settings)}`;
  return shelf === true ? `${text} from stock` : text;
}

/** A length in mm in the job's own unit. */
export function lengthText(mm: number, settings: UnitSettings): string {
  return showQuantity({ base: mm, dimension: length }, settings).text;
}

/** `28 1/2 in × 34 1/2 in`. */
export function sizeText(
  size: { readonly length: number; readonly width: number },
  settings: UnitSettings,
): string {
  return `${lengthText(size.length, settings)} × ${lengthText(size.width, settings)}`;
}

const wholeWords = new Map([
  ['qt', 'quart'],
  ['pt', 'pint'],
  ['gal', 'gallon'],
  ['floz', 'fluid ounce'],
  ['ml', 'millilitre'],
  ['l', 'litre'],
  ['in', 'inch'],
  ['ft', 'foot'],
  ['yd', 'yard'],
  ['mm', 'millimetre'],
  ['cm', 'centimetre'],
  ['m', 'metre'],
  ['sqin', 'square inch'],
  ['sqft', 'square foot'],
  ['sqyd', 'square yard'],
  ['m2', 'square metre'],
  ['oz', 'ounce'],
  ['lb', 'pound'],
  ['g', 'gram'],
  ['kg', 'kilogram'],
  ['each', 'piece'],
]);

/** What goods are bought by, in words: `by the quart`, `by the can`. */
export function boughtBy(unit: string): string {
  return wholeWords.get(unit) ?? unit;
}

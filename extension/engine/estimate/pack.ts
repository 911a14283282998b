import type { Problem } from '../problems.ts';
import { divided, length, money, plain, sameDimension, time } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import {
  amountOf,
  boughtBy,
  dimensionOf,
  measureOf,
  unitWritten,
  writtenUnit,
  type Measure,
} from './amount.ts';
import { billProblem } from './bill-problems.ts';
import type { Amount, Minor } from './bill.ts';
import { baseIn, placeOf, quantityIn } from './cells.ts';
import { conversion, type Properties } from './convert.ts';
import { minorPerUnit, toMinor } from './money.ts';
import type { Offer } from './packs.ts';

/** A way a material is sold: by the whole pack, or by the step at a rate. */
export interface PackFacts {
  readonly id: string;
  /** What one pack or step holds, in the measure the material is bought in. */
  readonly holds: number;
  /** The same as it is written. */
  readonly shown: Amount;
  /** Price of one pack or step. */
  readonly price: Minor;
  /** Sold by the step: minor units for one base unit of the measure, and the least amount sold. */
  readonly step?: { readonly rate: number; readonly least: number };
  /** Size of one sheet or length in the pack, mm; `number` of them. */
  readonly stock?: { readonly length: number; readonly width: number; readonly number: number };
  /** How many are on the shelf, of an offcut or a rest; undefined where it is bought. */
  readonly have?: number;
  /** Fewest whole packs that are sold at a time. */
  readonly fewest?: number;
  /** Price of one pack where so many are bought. */
  readonly breaks?: readonly { readonly from: number; readonly price: Minor }[];
  /** How long it keeps, where it is not as long as the material; minutes. */
  readonly keeps?: number;
  /** Day from which the job holds the price; empty where it does not say. */
  readonly held?: string;
}

/**
 * What a pack counts for where the cheapest way to buy is looked for: what is on the shelf has been
 * paid for, and is taken before anything is bought; of two offcuts the one worth less.
 */
export function weighedPrice({ price, have }: PackFacts): number {
  return have === undefined ? price : Math.max(1, Math.ceil(price / 1000));
}

/** The pack as one that may be bought, worth what it holds or only what comes out of it. */
export function offerOf(pack: PackFacts, worth: number): Offer {
  const { id, have, fewest, breaks } = pack;
  return {
    id,
    holds: worth,
    price: weighedPrice(pack),
    ...(have === undefined ? {} : { limit: have }),
    ...(fewest === undefined ? {} : { least: fewest }),
    ...(breaks === undefined ? {} : { breaks }),
  };
}

/** What a pack is read against. */
export interface PackContext {
  /** The material's name. */
  readonly name: string;
  readonly measure: Measure;
  readonly unit: string;
  readonly properties: Properties;
  readonly settings: UnitSettings;
}

export type PackReading = { readonly pack?: PackFacts; readonly problem?: Problem };

/** The measure that a pack's `holds` (or its `step`) is given in. */
export function measureHeld(pack: AnsweredRow): Measure | undefined {
  for (const column of ['holds', 'step']) {
    const reading = quantityIn(pack, column);
    if (reading.state === 'value') return measureOf(reading.value.dimension);
  }
  return undefined;
}

/** Reads one pack row of a material into the measure the material is bought in. */
export function readPack(row: AnsweredRow, context: PackContext): PackReading {
  const fault = (column: string, words: string): PackReading => ({
    problem: billProblem(
      'pack-unreadable',
      { pack: row.id, material: context.name, column, fault: words },
      { place: placeOf(row, column) },
    ),
  });
  const byStep = quantityIn(row, 'rate').state !== 'blank';
  const column = byStep && quantityIn(row, 'step').state !== 'blank' ? 'step' : 'holds';
  const own = ownProperties(row, context.properties);
  const held = heldIn(row, column, { ...context, properties: own });
  if (typeof held === 'string') return fault(column, held);
  const shown = shownHolds(row, column, context);
  if (byStep) {
    const rate = ratePerBase(row, held, context);
    if (typeof rate === 'string') return fault('rate', rate);
    const least = heldIn(row, 'least', { ...context, properties: own });
    const step = { rate, least: typeof least === 'number' ? least : 0 };
    return { pack: { id: row.id, holds: held, shown, price: Math.round(rate * held), step } };
  }
  const cost = packPrice(row);
  if (typeof cost === 'string') return fault('price', cost);
  const lower = lowerPrice(row, cost, context.settings.currency);
  if (typeof lower === 'string') return fault('price_from', lower);
  const stock = stockOf(held, own, context.measure);
  return {
    pack: {
      id: row.id,
      holds: held,
      shown,
      price: toMinor(cost, context.settings.currency),
      ...(stock === undefined ? {} : { stock }),
      ...lower,
      ...numbersOf(row, held, { ...context, properties: own }),
    },
  };
}

/** What one pack costs, or why that is not known, as the end of a sentence. */
function packPrice(row: AnsweredRow): number | string {
  const price = quantityIn(row, 'price');
  if (price.state === 'no-answer') return 'has no answer';
  if (price.state === 'blank') {
    // What is on the shelf without a price has been paid for by another job.
    return baseIn(row, 'have', plain) === undefined ? 'is blank' : 0;
  }
  if (!sameDimension(price.value.dimension, money)) return 'is not money';
  return price.value.base < 0 ? 'is negative' : price.value.base;
}

/** The price from a number of packs on, or why it cannot be told, as the end of a sentence. */
function lowerPrice(
  row: AnsweredRow,
  usual: number,
  currency: string,
): Pick<PackFacts, 'breaks'> | string {
  const price = quantityIn(row, 'price_from');
  const from = baseIn(row, 'from', plain);
  if (price.state === 'no-answer') return 'has no answer';
  if (price.state === 'blank') return from === undefined ? {} : 'is blank, but from is not';
  if (!sameDimension(price.value.dimension, money)) return 'is not money';
  if (from === undefined) return 'is a lower price: say in from how many packs it takes';
  if (from < 1) return 'holds from less than one pack on: write 1 or more in from';
  if (price.value.base < 0) return 'is negative';
  if (price.value.base > usual) return 'is higher than the price of a single pack';
  return { breaks: [{ from: Math.ceil(from - 1e-9), price: toMinor(price.value.base, currency) }] };
}

/** How many whole packs there are, how few are sold at a time, and how long one keeps. */
function numbersOf(
  row: AnsweredRow,
  held: number,
  context: PackContext,
): Pick<PackFacts, 'have' | 'fewest' | 'keeps'> {
  const have = baseIn(row, 'have', plain);
  const least = heldIn(row, 'least', context);
  const keeps = baseIn(row, 'shelf_life', time);
  return {
    ...(keeps === undefined ? {} : { keeps }),
    ...(have === undefined ? {} : { have: Math.max(0, Math.floor(have)) }),
    ...(typeof least === 'number' ? { fewest: Math.ceil(least / held - 1e-9) } : {}),
  };
}

// A pack may hold another size of stock than the material's usual one: a half sheet, a short length.
function ownProperties(row: AnsweredRow, properties: Properties): Properties {
  const own = {
    length: baseIn(row, 'length', length) ?? properties.length,
    width: baseIn(row, 'width', length) ?? properties.width,
  };
  const given = Object.entries(own).filter(([, value]) => value !== undefined);
  return { ...properties, ...Object.fromEntries(given) };
}

function heldIn(row: AnsweredRow, column: string, context: PackContext): number | string {
  const reading = quantityIn(row, column);
  if (reading.state === 'blank') return 'is blank';
  if (reading.state === 'no-answer') return 'has no answer';
  const from = measureOf(reading.value.dimension);
  const unit = boughtBy(context.unit);
  if (from === undefined) return `is not an amount that can be bought by the ${unit}`;
  if (reading.value.base <= 0) return 'must be more than nothing';
  const way = conversion(from, context.measure, context.properties);
  if (way.ok) return reading.value.base * way.factor;
  return way.missing.length === 0
    ? `cannot be turned into an amount by the ${unit}`
    : `cannot be turned into an amount by the ${unit}: the material has no ${way.missing.join(' and no ')}`;
}

function shownHolds(row: AnsweredRow, column: string, context: PackContext): Amount {
  const reading = quantityIn(row, column);
  const base = reading.state === 'value' ? reading.value.base : 0;
  const measure =
    (reading.state === 'value' ? measureOf(reading.value.dimension) : undefined) ?? context.measure;
  const { text } = row.cell(column);
  if (measure !== 'count') {
    return amountOf(base, measure, unitWritten(text, measure, context.settings));
  }
  const word = writtenUnit(text);
  const fallback = context.measure === 'count' ? context.unit : 'each';
  return amountOf(base, 'count', word === '' ? fallback : word);
}

// A rate may be for another measure than the step: money a square yard, sold by the yard of roll.
function ratePerBase(row: AnsweredRow, held: number, context: PackContext): number | string {
  const reading = quantityIn(row, 'rate');
  if (reading.state !== 'value') return 'has no answer';
  if (reading.value.base < 0) return 'is negative';
  const { base, dimension } = reading.value;
  const minor = base * minorPerUnit(context.settings.currency);
  const measure = measureOf(divided(money, dimension));
  if (measure === undefined || dimension.money !== 1) return 'is not money for a unit';
  const own = quantityIn(row, 'step').state === 'value' ? 'step' : 'holds';
  const step = quantityIn(row, own);
  if (step.state === 'value' && sameDimension(step.value.dimension, dimensionOf(measure))) {
    return (minor * step.value.base) / held;
  }
  const way = conversion(context.measure, measure, context.properties);
  return way.ok ? minor * way.factor : `is for a unit that does not fit how it is sold`;
}

function stockOf(
  held: number,
  own: Properties,
  measure: Measure,
): { length: number; width: number; number: number } | undefined {
  if (own.length === undefined) return undefined;
  if (measure === 'length') {
    const number = Math.max(1, Math.round(held / own.length));
    return { length: own.length, width: 0, number };
  }
  if (measure !== 'area' || own.width === undefined) return undefined;
  const sheet = own.length * own.width;
  // Less than a sheet of the usual size is a part of one: cut across its length.
  if (held < sheet * 0.99) return { length: held / own.width, width: own.width, number: 1 };
  return { length: own.length, width: own.width, number: Math.max(1, Math.round(held / sheet)) };
}

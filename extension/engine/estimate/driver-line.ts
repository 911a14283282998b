import type { Problem } from '../problems.ts';
import { money, sameDimension } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { amountOf } from './amount.ts';
import { billProblem } from './bill-problems.ts';
import type { BillLine, BoughtPack, Minor, RowNeed, Step } from './bill.ts';
import { nameOf, placeOf, quantityIn, wordIn } from './cells.ts';
import { moneyText, splitMoney, toMinor } from './money.ts';

/** A baffle that holds the driver, and how many it holds in the whole job. */
export interface Held {
  readonly row: AnsweredRow;
  readonly count: number;
  readonly words: string;
}

export interface DriverOutcome {
  readonly line: BillLine;
  /** Id of who sells it; empty where its row does not say. */
  readonly supplier: string;
  readonly problems: readonly Problem[];
}

interface Price {
  readonly minor: number;
  /** Drivers in one purchase: 2 where they are sold by the pair. */
  readonly pack: 1 | 2;
}

/** What is bought of a driver. */
interface Bought {
  readonly packs: readonly BoughtPack[];
  readonly cost: Minor;
  readonly left: number;
  readonly leftValue: Minor;
}

/**
 * The bill's line for a driver: as many as the baffles hold. Drivers sold by the pair are bought in
 * whole pairs. What the client brings or the car already has costs nothing and is still listed.
 */
export function driverLine(
  driver: AnsweredRow,
  held: readonly Held[],
  settings: UnitSettings,
): DriverOutcome {
  const count = held.reduce((sum, row) => sum + row.count, 0);
  const supply = wordIn(driver, 'supply');
  const free = supply === 'client' || supply === 'in_car';
  const price = free ? undefined : priceOf(driver, settings);
  const problems = held.length === 0 ? [unheld(driver)] : [];
  const complete = free || price !== undefined || count === 0;
  if (!complete) problems.push(unpriced(driver));
  const bought = price === undefined ? nothing : boughtOf(driver, price, count);
  const again = driver.occurrence === 0 ? '' : `#${String(driver.occurrence)}`;
  return {
    line: {
      id: `driver/${driver.id}${again}`,
      name: nameOf(driver),
      source: { table: 'driver', id: driver.id },
      group: 'drivers',
      need: amountOf(count, 'count', 'each'),
      packs: bought.packs,
      buy: bought.cost,
      charge: bought.cost,
      charges: 'packs',
      left: amountOf(bought.left, 'count', 'each'),
      leftValue: bought.leftValue,
      approximate: false,
      rows: rowsOf(driver, held, bought.cost),
      steps: stepsOf(driver, { held, count, supply: free ? supply : '', bought }, settings),
      complete,
    },
    supplier: wordIn(driver, 'supplier'),
    problems,
  };
}

const nothing: Bought = { packs: [], cost: 0, left: 0, leftValue: 0 };

function boughtOf(driver: AnsweredRow, price: Price, count: number): Bought {
  const number = Math.ceil(count / price.pack - 1e-9);
  if (number <= 0) return nothing;
  const cost = number * price.minor;
  const all = number * price.pack;
  const holds = amountOf(1, 'count', price.pack === 2 ? 'pair' : 'each');
  return {
    packs: [{ id: driver.id, count: number, holds, price: price.minor }],
    cost,
    left: all - count,
    leftValue: Math.round((cost * (all - count)) / all),
  };
}

function priceOf(driver: AnsweredRow, settings: UnitSettings): Price | undefined {
  const price = quantityIn(driver, 'price');
  if (price.state !== 'value' || !sameDimension(price.value.dimension, money)) return undefined;
  if (price.value.base < 0) return undefined;
  const minor = toMinor(price.value.base, settings.currency);
  return { minor, pack: wordIn(driver, 'sold') === 'pair' ? 2 : 1 };
}

function unheld(driver: AnsweredRow): Problem {
  return billProblem(
    'driver-unheld',
    { driver: nameOf(driver) },
    { severity: 'note', place: placeOf(driver) },
  );
}

function unpriced(driver: AnsweredRow): Problem {
  return billProblem(
    'driver-unpriced',
    { driver: nameOf(driver) },
    { severity: 'warning', place: placeOf(driver, 'price') },
  );
}

function rowsOf(driver: AnsweredRow, held: readonly Held[], cost: number): readonly RowNeed[] {
  const shares = splitMoney(
    cost,
    held.map(({ count }) => count),
  );
  return held.map(({ row, count, words }, index) => ({
    table: row.table,
    row: row.id,
    occurrence: row.occurrence,
    draw: '',
    material: `driver/${driver.id}`,
    group: 'drivers',
    use: amountOf(1, 'count', 'each'),
    pieces: count,
    panels: 1,
    waste: 0,
    need: amountOf(count, 'count', 'each'),
    charge: shares[index] ?? 0,
    buy: shares[index] ?? 0,
    steps: [{ text: `holds the driver: ${words}`, row: { table: row.table, id: row.id } }],
  }));
}

function stepsOf(
  driver: AnsweredRow,
  worked: {
    readonly held: readonly Held[];
    readonly count: number;
    readonly supply: string;
    readonly bought: Bought;
  },
  settings: UnitSettings,
): readonly Step[] {
  const steps: Step[] = worked.held.map(({ row, count, words }) => ({
    text: `${row.id}: ${String(count)} (${words})`,
    row: { table: row.table, id: row.id },
  }));
  steps.push({ text: `needed: ${String(worked.count)} each` });
  const at = { table: driver.table, id: driver.id };
  if (worked.supply !== '') {
    const who = worked.supply === 'client' ? 'the client brings it' : 'it is in the car';
    return [...steps, { text: `${who}: nothing to pay`, row: { ...at, column: 'supply' } }];
  }
  const { currency } = settings;
  for (const { count, holds, price } of worked.bought.packs) {
    const sold = holds.unit === 'pair' ? 'pair' : 'each';
    const money = `${moneyText(price, currency)} = ${moneyText(worked.bought.cost, currency)}`;
    steps.push({ text: `${String(count)} × ${sold} at ${money}`, row: { ...at, column: 'price' } });
  }
  return steps;
}

import type { Book } from '../../book/book.ts';
import { kindGroups } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { sameSettings } from '../../units/same-settings.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
import type { Bill } from '../bill.ts';
import { placeOf } from '../cells.ts';
import { columnsMoved } from '../cells-read.ts';
import { moneyText } from '../money.ts';
import type { Work } from '../work/task.ts';
import { chargeName, type ChargeGround } from './charge-cells.ts';
import { isLabour, labourOf, type Labour } from './labour.ts';
import { applyCharges, type Applied } from './ledger.ts';
import { priceProblem } from './price-problems.ts';
import type { Charge, MaterialsBy, Price } from './price.ts';
import { openSlices, type SliceMaker } from './slices.ts';
import { onDemand } from '../../units/on-demand.ts';

/** The price of a job, kept up with its bill and its work. */
export interface PriceKeeper {
  /** The same object comes back where nothing it depends on changed. */
  readonly update: (answers: Answers, book: Book, settings: UnitSettings, made: Made) => Price;
}

export interface Made {
  readonly bill: Bill;
  readonly work: Work;
}

interface Before {
  readonly parts: readonly AnsweredRow[];
  readonly tasks: readonly AnsweredRow[];
  readonly bill: Bill;
  readonly work: Work;
  readonly rows: readonly AnsweredRow[];
  readonly book: Book;
  readonly settings: UnitSettings;
  readonly price: Price;
}

// What a charge looks at beside needs and times: tax, markup, and the panel that a row belongs to.
const taskColumns = ['panel', 'on'];
const partColumns = [...taskColumns, 'taxed', 'marked_up'];

/** No price yet; `update` brings it. */
export function openPrice(): PriceKeeper {
  const slices = openSlices();
  let before: Before | undefined;
  return {
    update: (answers, book, settings, { bill, work }) => {
      const rows = answers.rows('charge');
      const [parts, tasks] = [answers.rows('part'), answers.rows('task')];
      const same =
        before?.bill === bill &&
        before.work === work &&
        before.rows === rows &&
        before.book === book &&
        sameSettings(before.settings, settings) &&
        !columnsMoved(before.parts, parts, partColumns) &&
        !columnsMoved(before.tasks, tasks, taskColumns);
      const price =
        before !== undefined && same
          ? before.price
          : priceOf({ answers, book, settings, bill }, work, slices);
      before = { parts, tasks, bill, work, rows, book, settings, price };
      return price;
    },
  };
}

const labourOnDemand = onDemand('labourOf');

function priceOf(ground: ChargeGround, work: Work, maker: SliceMaker): Price {
  const { answers, bill, settings } = ground;
  const rows = answers.rows('charge').filter(({ broken }) => !broken);
  const labour = labourOf(rows.filter(isLabour), work, ground);
  const applied = (by: MaterialsBy, told = false): Applied => {
    const materials = maker.slices(bill, answers, by);
    return applyCharges({ ...ground, by, rows, labour, materials, told });
  };
  const main = applied('book', true);
  const charges = main.charges.map(({ charge }) => charge);
  const totals = totalsOf(main, charges);
  const told = [
    ...main.charges.flatMap(({ problems }) => problems),
    ...(rows.length === 0 ? [] : labour.problems),
    ...main.payments.problems,
    ...suppliesTwice(rows, charges, ground),
  ];
  const price = {
    currency: settings.currency,
    materials: materialsOf(main),
    charges,
    totals,
    ways: {
      book: totals.price,
      packs: beforeTax(applied('packs')),
      used: beforeTax(applied('used')),
    },
    state: stateOf({ rows, labour, charges, work, bill }),
    problems: told,
  };
  return labourOnDemand(price, () => labour.byTask);
}

function materialsOf({ slices }: Applied): Price['materials'] {
  return kindGroups.flatMap((group) => {
    const own = slices.filter((slice) => slice.of === 'materials' && slice.group === group);
    const amount = own.reduce((sum, slice) => sum + slice.amount, 0);
    return own.length === 0 ? [] : [{ group, amount }];
  });
}

function beforeTax({ slices }: Applied): number {
  return slices.reduce((sum, { of, amount }) => sum + (of === 'tax' ? 0 : amount), 0);
}

const costs = new Set(['supplies', 'contingency', 'fee']);

function totalsOf(
  { slices, payments, total }: Applied,
  charges: readonly Charge[],
): Price['totals'] {
  const of = (sort: string): number =>
    slices.reduce((sum, slice) => sum + (slice.of === sort ? slice.amount : 0), 0);
  const [materials, labour, tax] = [of('materials'), of('labour'), of('tax')];
  const extras = charges.filter(({ kind }) => costs.has(kind));
  const cost = materials + labour + extras.reduce((sum, { amount }) => sum + amount, 0);
  const price = total - tax;
  const earned = price - cost;
  return {
    materials,
    labour,
    cost,
    price,
    taxable: slices.reduce((sum, slice) => sum + (slice.of === 'tax' ? 0 : slice.taxed), 0),
    tax,
    total,
    earned,
    margin: price === 0 ? 0 : earned / price,
    balance: payments.balance,
  };
}

function stateOf(made: {
  readonly rows: readonly AnsweredRow[];
  readonly labour: Labour;
  readonly charges: readonly Charge[];
  readonly work: Work;
  readonly bill: Bill;
}): Price['state'] {
  const { rows, labour, charges, work, bill } = made;
  if (rows.length === 0) return 'materials-only';
  if (labour.charges.size === 0 || work.tasks.length === 0) return 'no-labour';
  const open =
    !bill.totals.complete ||
    work.totals.incomplete > 0 ||
    labour.problems.some(({ code }) => code === 'labour-unpriced') ||
    charges.some(({ complete }) => !complete);
  return open ? 'incomplete' : 'whole';
}

// Supplies as a share of labour and as rows of their own charge for the same things twice.
function suppliesTwice(
  rows: readonly AnsweredRow[],
  charges: readonly Charge[],
  { bill, settings, book }: ChargeGround,
): readonly Problem[] {
  const index = charges.findIndex(({ kind, amount }) => kind === 'supplies' && amount > 0);
  const [row, charge] = [rows[index], charges[index]];
  const lines = bill.lines.filter(({ group, charge: money, source }) => {
    return group === 'shop' && money > 0 && source.table === 'material';
  });
  if (row === undefined || charge === undefined || lines.length === 0) return [];
  const listed = lines.reduce((sum, line) => sum + line.charge, 0);
  const details = {
    charge: chargeName(row, { book }),
    amount: moneyText(charge.amount, settings.currency),
    listed: moneyText(listed, settings.currency),
  };
  const more = { severity: 'warning' as const, place: placeOf(row, 'percent') };
  return [priceProblem('supplies-twice', details, more)];
}

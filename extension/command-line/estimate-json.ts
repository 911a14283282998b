import {
  amountText,
  jobCautions,
  type Amount,
  type Bill,
  type BillLine,
  type RowNeed,
  type Snapshot,
  type UnitSettings,
} from '../engine/index.ts';
import { checkJson } from './check-json.ts';
import { chargeJson, priceJson, taskJson, workJson } from './price-json.ts';
import type { JobProblem, ReadJob } from './job.ts';
import { steady } from './steady.ts';

interface Context {
  readonly currency: string;
  readonly settings: UnitSettings;
}

interface QuantityJson {
  readonly base: number;
  readonly unit: string;
  readonly text: string;
}

interface MoneyJson {
  readonly minor: number;
  readonly currency: string;
}

function quantityJson(amount: Amount, { settings }: Context): QuantityJson {
  return {
    base: steady(amount.base),
    unit: amount.unit,
    text: amountText(amount, settings),
  };
}

function moneyJson(minor: number, { currency }: Context): MoneyJson {
  return { minor, currency };
}

function rowJson(row: RowNeed, context: Context): object {
  return {
    table: row.table,
    row: row.row,
    draw: row.draw,
    use: quantityJson(row.use, context),
    pieces: steady(row.pieces),
    panels: steady(row.panels),
    waste: steady(row.waste),
    need: quantityJson(row.need, context),
    buy: moneyJson(row.buy, context),
    charge: moneyJson(row.charge, context),
    steps: row.steps.map(({ text }) => text),
  };
}

function lineJson(line: BillLine, context: Context): object {
  return {
    id: line.id,
    name: line.name,
    table: line.source.table,
    group: line.group,
    need: line.need === undefined ? null : quantityJson(line.need, context),
    buy: moneyJson(line.buy, context),
    charge: moneyJson(line.charge, context),
    charges: line.charges,
    left: line.left === undefined ? null : quantityJson(line.left, context),
    leftValue: moneyJson(line.leftValue, context),
    packs: line.packs.map(({ id, count, holds, price, cut, held, shelf }) => ({
      id,
      count,
      holds: quantityJson(holds, context),
      price: moneyJson(price, context),
      cut: cut === undefined ? null : quantityJson(cut, context),
      held: held ?? null,
      stock: shelf === true,
    })),
    rows: line.rows.map((row) => rowJson(row, context)),
    approximate: line.approximate,
    tight: line.tight ?? null,
    complete: line.complete,
    steps: line.steps.map(({ text }) => text),
  };
}

function totalsJson({ totals }: Bill, context: Context): object {
  return {
    materials: moneyJson(totals.charge, context),
    buy: moneyJson(totals.buy, context),
    charge: moneyJson(totals.charge, context),
    complete: totals.complete,
    incomplete: totals.incomplete,
    panels: totals.panels,
  };
}

/** A problem as programs read it. */
export function problemJson(problem: JobProblem): object {
  const { code, message, severity, table, row, column, line } = problem;
  return { code, message, severity, table, row, column, line };
}

function stagesOf({ work, price }: Snapshot): readonly string[] {
  return [
    'materials',
    ...(work.tasks.length === 0 ? [] : ['hours']),
    ...(price.charges.length === 0 ? [] : ['price']),
  ];
}

/** What `estimate --json` prints; docs/command-line.md describes it. */
export function estimateJson(job: ReadJob): object {
  const { file, snapshot, problems } = job;
  const { bill, settings, shown, book } = snapshot;
  const context = { currency: bill.currency, settings };
  return {
    format: 1,
    file,
    title: shown.head.get('title')?.text ?? '',
    units: settings.units,
    currency: bill.currency,
    book: book.origin,
    stages: stagesOf(snapshot),
    materials: bill.lines.map((line) => lineJson(line, context)),
    groups: bill.groups.map(({ group, buy, charge }) => ({
      group,
      buy: moneyJson(buy, context),
      charge: moneyJson(charge, context),
    })),
    totals: totalsJson(bill, context),
    tasks: snapshot.work.tasks.map((task) => taskJson(task, snapshot)),
    hours: workJson(snapshot),
    charges: snapshot.price.charges.map((charge) => chargeJson(charge, snapshot)),
    price: priceJson(snapshot),
    cautions: jobCautions(snapshot).map(({ hazard, rows }) => ({
      ...hazard,
      rows: rows.map(({ id }) => id),
    })),
    checks: snapshot.checks.map((check) => checkJson(check, job)),
    problems: problems.map(problemJson),
  };
}

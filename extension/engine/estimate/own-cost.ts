import type { Kind, KindGroup } from '../book/book.ts';
import { failed, ok, type Result } from '../result.ts';
import { divided, money, plain, sameDimension, type Dimension } from '../units/dimension.ts';
import type { Quantity, UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { amountOf, amountText, measureOf, unitWritten } from './amount.ts';
import { billProblem } from './bill-problems.ts';
import type { Amount, BillLine, Minor, RowNeed, Step } from './bill.ts';
import { nameOf, placeOf, quantityIn, wordIn } from './cells.ts';
import { conversion } from './convert.ts';
import type { MaterialFacts } from './material.ts';
import { moneyText, toMinor } from './money.ts';
import { readNeed } from './need.ts';
import { multiplicity } from './panels.ts';

/** What a row with a price of its own costs. */
export interface OwnCost {
  readonly table: string;
  readonly row: string;
  readonly occurrence: number;
  readonly name: string;
  readonly group: KindGroup;
  readonly material: string;
  readonly pieces: number;
  readonly panels: number;
  readonly need: Amount;
  readonly cost: Minor;
  readonly steps: readonly Step[];
}

interface OwnInput {
  readonly row: AnsweredRow;
  readonly kind: Kind;
  readonly panel: AnsweredRow | undefined;
  readonly material: MaterialFacts | undefined;
  readonly settings: UnitSettings;
}

/**
 * Cost of a row whose `price` replaces the book's: money for each piece, or money for a unit of what
 * it takes (a yard, a quart). Pieces count once a panel unless the row is for the job.
 */
export function readOwnCost(input: OwnInput): Result<OwnCost> {
  const { row } = input;
  const price = quantityIn(row, 'price');
  if (price.state !== 'value') return failed(unanswered(row, 'price'));
  if (price.value.base < 0) return failed(negative(input, 'price', price.value));
  const pieces = quantityIn(row, 'qty');
  if (pieces.state === 'no-answer') return failed(unanswered(row, 'qty'));
  const number = pieces.state === 'value' ? pieces.value : { base: 1, dimension: plain };
  if (number.base < 0) return failed(negative(input, 'qty', number));
  const times = multiplicity(row, input.panel, wordIn(row, 'per'));
  const counted = { pieces: number.base, panels: times.panels, words: times.words };
  return sameDimension(price.value.dimension, money)
    ? ok(pieceCost(input, price.value, counted))
    : rateCost(input, price.value, counted);
}

interface Counted {
  readonly pieces: number;
  readonly panels: number;
  readonly words: string;
}

function unanswered(row: AnsweredRow, column: string): ReturnType<typeof billProblem> {
  const details = { row: nameOf(row), column, material: 'it' };
  return billProblem('need-unanswered', details, { place: placeOf(row, column) });
}

function negative(
  { row, settings }: OwnInput,
  column: string,
  figure: Quantity,
): ReturnType<typeof billProblem> {
  const value = showQuantity(figure, settings).text;
  const details = { row: nameOf(row), column, value };
  return billProblem('need-negative', details, { place: placeOf(row, column) });
}

function pieceCost(input: OwnInput, price: Quantity, counted: Counted): OwnCost {
  const { row, settings } = input;
  const count = counted.pieces * counted.panels;
  const cost = toMinor(price.base * count, settings.currency);
  const pieces = count === 1 ? '' : ` × ${String(counted.pieces)} × ${counted.words}`;
  const each = moneyText(toMinor(price.base, settings.currency), settings.currency);
  const steps: Step[] = [
    {
      text: `its own price ${each}${pieces} = ${moneyText(cost, settings.currency)}`,
      row: { table: row.table, id: row.id, column: 'price' },
    },
  ];
  return costOf(input, { ...counted, need: amountOf(count, 'count', 'each'), cost, steps });
}

function rateCost(input: OwnInput, rate: Quantity, counted: Counted): Result<OwnCost> {
  const { row, settings } = input;
  const need = neededFor(input, counted);
  const measure = rateMeasure(rate.dimension);
  const from = need === undefined ? undefined : measureOf(need.amount.dimension);
  const way =
    measure === undefined || from === undefined
      ? undefined
      : conversion(from, measure, input.material?.properties ?? {});
  const shown = showQuantity(rate, settings).text;
  if (need === undefined || way?.ok !== true) {
    const use = need === undefined ? 'use' : amountText(need.amount, settings);
    const details = { row: nameOf(row), value: shown, use };
    return failed(billProblem('price-unfitting', details, { place: placeOf(row, 'price') }));
  }
  const cost = toMinor(rate.base * need.amount.base * way.factor, settings.currency);
  const step: Step = {
    text: `its own price ${shown} × ${amountText(need.amount, settings)} = ${moneyText(cost, settings.currency)}`,
    row: { table: row.table, id: row.id, column: 'price' },
  };
  const steps = [...need.steps, step];
  return ok(costOf(input, { ...counted, need: need.amount, cost, steps }));
}

function rateMeasure(dimension: Dimension): ReturnType<typeof measureOf> {
  return dimension.money === 1 ? measureOf(divided(money, dimension)) : undefined;
}

function neededFor(
  input: OwnInput,
  counted: Counted,
): { readonly amount: Amount; readonly steps: readonly Step[] } | undefined {
  const { material, row, settings } = input;
  if (material !== undefined) {
    const { asked } = readNeed({ ...input, material, draw: '' });
    return asked === undefined ? undefined : { amount: asked.need, steps: asked.steps };
  }
  const use = quantityIn(row, 'use');
  const measure = use.state === 'value' ? measureOf(use.value.dimension) : undefined;
  if (use.state !== 'value' || measure === undefined) return undefined;
  const unit = unitWritten(use.cell.text, measure, settings);
  const base = use.value.base * counted.pieces * counted.panels;
  return { amount: amountOf(base, measure, unit), steps: [] };
}

function costOf(
  input: OwnInput,
  worked: Pick<OwnCost, 'pieces' | 'panels' | 'need' | 'cost' | 'steps'>,
): OwnCost {
  const { row, kind, material } = input;
  return {
    table: row.table,
    row: row.id,
    occurrence: row.occurrence,
    name: nameOf(row),
    group: kind.group,
    material: material?.id ?? '',
    pieces: worked.pieces,
    panels: worked.panels,
    need: worked.need,
    cost: worked.cost,
    steps: worked.steps,
  };
}

/** The bill's line of a row with its own price: it stands for itself, bought as it is needed. */
export function ownLine(own: OwnCost): BillLine {
  const { cost, need } = own;
  const row: RowNeed = {
    table: own.table,
    row: own.row,
    occurrence: own.occurrence,
    draw: '',
    material: own.material,
    group: own.group,
    use: amountOf(1, 'count', 'each'),
    pieces: own.pieces,
    panels: own.panels,
    waste: 0,
    need,
    charge: cost,
    buy: cost,
    steps: own.steps,
  };
  const again = own.occurrence === 0 ? '' : `#${String(own.occurrence)}`;
  return {
    id: `${own.table}/${own.row}${again}`,
    name: own.name,
    source: { table: 'part', id: own.row },
    group: own.group,
    need,
    packs: [],
    buy: cost,
    charge: cost,
    charges: 'packs',
    leftValue: 0,
    approximate: false,
    rows: [row],
    steps: own.steps,
    complete: true,
  };
}

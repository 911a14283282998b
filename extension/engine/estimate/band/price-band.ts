import type { Book } from '../../book/book.ts';
import { plain } from '../../units/dimension.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import type { Answers } from '../../workbook/answers.ts';
import type { Bill, BillLine, Minor } from '../bill.ts';
import { baseIn } from '../cells.ts';
import { moneyText } from '../money.ts';
import { operationOf } from '../price/charge-row.ts';
import { openPrice } from '../price/open-price.ts';
import type { Price } from '../price/price.ts';
import type { Task, Work } from '../work/task.ts';

/** One cause of the band: a task with a range of times, or a material with a range of waste. */
export interface BandCause {
  readonly of: 'task' | 'material';
  readonly id: string;
  readonly name: string;
  /** Standard deviation of the price before tax that comes from it alone, in minor units. */
  readonly spread: number;
}

/** How far price and hours may be off, nine times in ten, by the ranges that are given. */
export interface PriceBand {
  /** Half the width of the band of the price before tax. */
  readonly price: Minor;
  /** The same of the total with tax. */
  readonly total: Minor;
  /** The same of the time to be paid, in minutes. */
  readonly minutes: number;
  /** What it comes from, the widest first. */
  readonly causes: readonly BandCause[];
  /** Tasks that vary without a range: the band knows nothing of them. */
  readonly unranged: number;
}

/** What a band is worked from: a job that is priced. */
export interface BandGround {
  readonly workbook: Answers;
  readonly book: Book;
  readonly settings: UnitSettings;
  readonly bill: Bill;
  readonly work: Work;
}

/**
 * Standard deviations on either side between which a sum of many independent parts lies nine times in
 * ten. @source NIST/SEMATECH e-Handbook 1.3.6.7.1, standard normal, 95 % one-sided: 1.645
 */
const nineInTen = 1.6448536269514722;

interface Figures {
  readonly price: Minor;
  readonly total: Minor;
}

type Priced = (bill: Bill, work: Work) => Figures;

// A price that is rounded to whole tens jumps or stands still: what moves it is looked for before that.
function unrounded(answers: Answers): Answers {
  const charges = answers.rows('charge').filter((row) => operationOf(row) !== 'rounding');
  const rows: Answers['rows'] = (table) => (table === 'charge' ? charges : answers.rows(table));
  return Object.assign(Object.create(answers) as Answers, { rows });
}

function pricing({ workbook, book, settings }: BandGround): Priced {
  const keeper = openPrice();
  const plainly = unrounded(workbook);
  return (bill, work) => keeper.update(plainly, book, settings, { bill, work }).totals;
}

interface Moved extends BandCause {
  readonly total: number;
}

function longer(work: Work, task: Task, by: number): Work {
  const tasks = work.tasks.map((one) =>
    one === task ? { ...one, working: one.working + by } : one,
  );
  return { ...work, tasks };
}

/** Tasks are moved by the same time each, so that rounding to cents weighs as little as it can. */
function byTimes({ bill, work }: BandGround, priced: Priced, start: Figures): readonly Moved[] {
  const ranged = work.tasks.filter(({ complete, spread }) => complete && spread > 0);
  const step = Math.max(60, work.totals.spread);
  return ranged.map((task) => {
    const then = priced(bill, longer(work, task, step));
    const share = task.spread / step;
    return {
      of: 'task',
      id: task.id,
      name: task.name,
      spread: (then.price - start.price) * share,
      total: (then.total - start.total) * share,
    };
  });
}

interface WasteRange {
  readonly low: number;
  readonly high: number;
}

/** Range of a material's waste as its row in the book gives it; undefined without one. */
function wasteRange(id: string, answers: Answers): WasteRange | undefined {
  const row = answers.row('material', id);
  if (row === undefined) return undefined;
  const usual = baseIn(row, 'waste', plain) ?? 0;
  const low = baseIn(row, 'waste_low', plain) ?? usual;
  const high = baseIn(row, 'waste_high', plain) ?? usual;
  return high > low ? { low, high } : undefined;
}

/**
 * Standard deviation of what a line charges. Goods charged by whole packs cost no more while what is
 * left over covers the worst waste.
 */
function chargeSpread(line: BillLine, { low, high }: WasteRange): number {
  const bare = line.rows.reduce((sum, { need, waste }) => sum + need.base / (1 + waste), 0);
  const need = line.rows.reduce((sum, row) => sum + row.need.base, 0);
  if (need === 0) return 0;
  const worst = bare * (1 + high) - need;
  if (line.charges === 'packs' && line.left !== undefined && worst <= line.left.base) return 0;
  return (line.charge * ((bare * (high - low)) / need)) / 6;
}

function dearer(bill: Bill, line: BillLine, by: Minor): Bill {
  const lines = bill.lines.map((one) => (one === line ? { ...one, charge: one.charge + by } : one));
  return { ...bill, lines };
}

function byWaste(
  { workbook, bill, work }: BandGround,
  priced: Priced,
  start: Figures,
): readonly Moved[] {
  return bill.lines.flatMap((line): readonly Moved[] => {
    if (line.source.table !== 'material' || !line.complete) return [];
    const range = wasteRange(line.source.id, workbook);
    const spread = range === undefined ? 0 : chargeSpread(line, range);
    if (spread === 0) return [];
    const step = Math.max(10_000, Math.ceil(spread));
    const then = priced(dearer(bill, line, step), work);
    const share = spread / step;
    const price = (then.price - start.price) * share;
    const total = (then.total - start.total) * share;
    return [{ of: 'material', id: line.source.id, name: line.name, spread: price, total }];
  });
}

/**
 * The band of price and hours: each range gives a variance of ((high − low) / 6)², each task and
 * material varies by itself, so that variances add up; the price moves with each as its charges say.
 * There is no chance in it: the same job has the same band everywhere. Undefined where no range is given.
 *
 * @source three-point estimates (PERT): variances of independent parts add up
 */
export function priceBand(ground: BandGround): PriceBand | undefined {
  const { bill, work } = ground;
  const priced = pricing(ground);
  const start = priced(bill, work);
  const moved = [...byTimes(ground, priced, start), ...byWaste(ground, priced, start)];
  if (moved.length === 0) return undefined;
  const causes = moved
    .map(({ of, id, name, spread }) => ({ of, id, name, spread: Math.abs(spread) }))
    .sort((one, two) => two.spread - one.spread || (one.id < two.id ? -1 : 1));
  const half = (spreads: readonly number[]): number => nineInTen * Math.hypot(...spreads);
  return {
    price: Math.round(half(causes.map(({ spread }) => spread))),
    total: Math.round(half(moved.map(({ total }) => total))),
    minutes: nineInTen * work.totals.spread,
    causes,
    unranged: work.tasks.filter(({ waits, complete, range }) => {
      return complete && !waits && range === undefined;
    }).length,
  };
}

/** `412.00 ± 35.00 USD, 9 in 10`, of the price before tax. */
export function bandWords({ price: half }: PriceBand, price: Price): string {
  const amount = moneyText(price.totals.price, price.currency).replace(` ${price.currency}`, '');
  return `${amount} ± ${moneyText(half, price.currency)}, 9 in 10`;
}

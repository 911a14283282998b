import type { Problem } from '../../problems.ts';
import { whenAsked } from '../../steps.ts';
import { divided, money, sameDimension, time } from '../../units/dimension.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { showQuantity } from '../../units/show.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import type { Minor } from '../bill.ts';
import { placeOf, wordIn } from '../cells.ts';
import { splitMoney, toMinor } from '../money.ts';
import type { Task, Work } from '../work/task.ts';
import { chargeFigure, chargeName, wordsOf, type ChargeGround } from './charge-cells.ts';
import { priceProblem } from './price-problems.ts';
import { onDemand } from '../../units/on-demand.ts';

/** What one labour row charges. */
export interface LabourCharge {
  readonly row: AnsweredRow;
  /** Minutes it takes. */
  readonly minutes: number;
  readonly rateText: string;
  readonly amount: Minor;
  readonly problems: readonly Problem[];
  readonly complete: boolean;
}

export interface Labour {
  readonly charges: ReadonlyMap<AnsweredRow, LabourCharge>;
  /** Labour of each task, by `id#occurrence`; shared out when it is first asked for. */
  readonly byTask: ReadonlyMap<string, Minor>;
  readonly problems: readonly Problem[];
}

/** Key of a task in the shares of labour: `id#occurrence`. */
export function taskKey({ id, occurrence }: Pick<Task, 'id' | 'occurrence'>): string {
  return `${id}#${String(occurrence)}`;
}

function isNamed(task: Task, words: ReadonlySet<string>): boolean {
  return [task.phase, task.kind, task.id, task.who].some((word) => word !== '' && words.has(word));
}

type Taken = ReadonlyMap<AnsweredRow, readonly Task[]>;

/** Tasks of each labour row: rows that name theirs take them first, from top to bottom. */
function sharedOut(
  rows: readonly AnsweredRow[],
  tasks: readonly Task[],
): { readonly taken: Taken; readonly left: readonly Task[] } {
  const taken = new Map<AnsweredRow, readonly Task[]>();
  let left = tasks;
  const named = (row: AnsweredRow): ReadonlySet<string> =>
    new Set(wordsOf(row).filter((word) => word !== 'all' && word !== 'labour'));
  for (const row of rows) {
    const words = named(row);
    if (words.size === 0) continue;
    taken.set(
      row,
      left.filter((task) => isNamed(task, words)),
    );
    left = left.filter((task) => !isNamed(task, words));
  }
  for (const row of rows) {
    if (taken.has(row)) continue;
    taken.set(row, left);
    left = [];
  }
  return { taken, left };
}

function chargeFor(row: AnsweredRow, tasks: readonly Task[], ground: ChargeGround): LabourCharge {
  let minutes = 0;
  for (const { working } of tasks) minutes += working;
  const none = { row, minutes, rateText: '', amount: 0, complete: false };
  const rate = chargeFigure(row, 'rate', 'rate', ground);
  if (!rate.ok) return { ...none, problems: [rate.problem] };
  const { settings } = ground;
  const shown = showQuantity(rate.value, settings).text;
  if (!sameDimension(rate.value.dimension, divided(money, time))) {
    const details = {
      charge: chargeName(row, ground),
      column: 'rate',
      value: shown,
      wanted: `money for an hour, such as 68 ${settings.currency}/h,`,
    };
    const problem = priceProblem('charge-unfitting', details, { place: placeOf(row, 'rate') });
    return { ...none, problems: [problem] };
  }
  const amount = toMinor(rate.value.base * minutes, settings.currency);
  return { ...none, rateText: shown, amount, problems: [], complete: true };
}

function unpriced(left: readonly Task[], settings: UnitSettings): readonly Problem[] {
  const open = left.filter(({ working }) => working > 0);
  const [first] = open;
  if (first === undefined) return [];
  const minutes = open.reduce((sum, { working }) => sum + working, 0);
  const names = open.slice(0, 3).map(({ name }) => name);
  const more = open.length - names.length;
  const place = { table: 'task', row: first.id, occurrence: first.occurrence, column: 'kind' };
  const details = {
    hours: showQuantity({ base: minutes, dimension: time }, settings).text,
    tasks: `${names.join(', ')}${more > 0 ? ` and ${String(more)} more` : ''}`,
  };
  const cells = { name: 'Labour', kind: 'labour' };
  const fix = {
    title: 'Add labour',
    place,
    text: '',
    rows: [{ table: 'charge', word: 'labour', cells }],
  };
  return [priceProblem('labour-unpriced', details, { severity: 'warning', place, fixes: [fix] })];
}

const tasksOnDemand = onDemand('byTask');

/**
 * Labour at its rates: the hours of work of each labour row × its rate, rounded once a row and shared
 * among its tasks by time so that the shares add up.
 */
export function labourOf(rows: readonly AnsweredRow[], work: Work, ground: ChargeGround): Labour {
  const whole = work.totals.incomplete === 0;
  const tasks = whole ? work.tasks : work.tasks.filter(({ complete }) => complete);
  const { taken, left } = sharedOut(rows, tasks);
  const charges = new Map<AnsweredRow, LabourCharge>();
  const problems: Problem[] = [];
  for (const row of rows) {
    const own = taken.get(row) ?? [];
    const charge = chargeFor(row, own, ground);
    charges.set(row, charge);
    if (own.length === 0 && wordsOf(row).length === 0 && rows.length > 1) {
      const more = { severity: 'warning' as const, place: placeOf(row, 'of') };
      problems.push(priceProblem('labour-again', { charge: chargeName(row, ground) }, more));
    }
  }
  problems.push(...unpriced(left, ground.settings));
  const byTask = whenAsked(() => sharesOf(charges, taken));
  return tasksOnDemand({ charges, problems }, byTask);
}

function sharesOf(charges: Labour['charges'], taken: Taken): ReadonlyMap<string, Minor> {
  const byTask = new Map<string, Minor>();
  for (const [row, { amount }] of charges) {
    const own = taken.get(row) ?? [];
    const shares = splitMoney(
      amount,
      own.map(({ working }) => working),
    );
    own.forEach((task, index) => byTask.set(taskKey(task), shares[index] ?? 0));
  }
  return byTask;
}

/** True for a row whose kind charges hours. */
export function isLabour(row: AnsweredRow): boolean {
  return row.kind === 'labour' && wordIn(row, 'kind') !== '';
}

import { time } from '../../units/dimension.ts';
import { showQuantity } from '../../units/show.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import type { AnsweredRow, Answers } from '../../workbook/answers.ts';
import { amountOf, amountText, measureOf } from '../amount.ts';
import type { Bill, RowNeed } from '../bill.ts';
import { baseIn, nameOf, quantityIn } from '../cells.ts';
import { conversion } from '../convert.ts';
import { readMaterial } from '../material.ts';
import type { Task, Work } from '../work/task.ts';

/** A job that is worked out, with what it took in the end in its cells `actual` and `used`. */
export interface ActualGround {
  readonly workbook: Answers;
  readonly bill: Bill;
  readonly work: Work;
  readonly settings: UnitSettings;
}

/** A task that was done: times by the clock for the whole job, in min. */
export interface TaskActual {
  readonly task: Task;
  readonly row: AnsweredRow;
  readonly estimated: number;
  readonly actual: number;
}

/** Material that a row took, in the base unit of its need. */
export interface MaterialActual {
  readonly need: RowNeed;
  readonly name: string;
  readonly estimated: number;
  readonly used: number;
  /** Without any waste: use × pieces × panels. */
  readonly bare: number;
}

/** Estimate against what a job took, as far as it says. */
export interface Actuals {
  readonly tasks: readonly TaskActual[];
  readonly materials: readonly MaterialActual[];
  readonly minutes: { readonly estimated: number; readonly actual: number };
}

function taskActuals({ workbook, work }: ActualGround): readonly TaskActual[] {
  const rows = workbook.rows('task');
  return work.tasks.flatMap((task) => {
    const row = rows.find(({ id, occurrence }) => id === task.id && occurrence === task.occurrence);
    const actual = row === undefined ? undefined : baseIn(row, 'actual', time);
    if (row === undefined || actual === undefined || actual <= 0 || !task.complete) return [];
    return [{ task, row, estimated: task.elapsed, actual }];
  });
}

/** What a row took, turned into the measure of its need; undefined where it does not say. */
function usedOf(need: RowNeed, { workbook, settings }: ActualGround): number | undefined {
  const row = workbook
    .rows(need.table)
    .find(({ id, occurrence }) => id === need.row && occurrence === need.occurrence);
  const reading = row === undefined ? undefined : quantityIn(row, 'used');
  if (reading?.state !== 'value') return undefined;
  const [from, to] = [measureOf(reading.value.dimension), measureOf(need.need.dimension)];
  const material = workbook.row('material', need.material);
  if (from === undefined || to === undefined || material === undefined) return undefined;
  if (from === to) return reading.value.base;
  const facts = readMaterial(material, { packs: [], prices: [] }, settings);
  const way = conversion(from, to, facts.properties);
  return way.ok ? reading.value.base * way.factor : undefined;
}

function materialActuals(ground: ActualGround): readonly MaterialActual[] {
  return ground.bill.lines.flatMap(({ rows }) =>
    rows.flatMap((need) => {
      const used = need.draw === '' && need.table === 'part' ? usedOf(need, ground) : undefined;
      if (used === undefined) return [];
      const row = ground.workbook.row(need.table, need.row);
      const name = row === undefined ? need.row : nameOf(row);
      const estimated = need.need.base;
      return [{ need, name, estimated, used, bare: estimated / (1 + need.waste) }];
    }),
  );
}

/**
 * What a job took against what was estimated: tasks with `actual`, rows with `used`. A `used` that
 * cannot be turned into the measure of its material is left out.
 */
export function actualsOf(ground: ActualGround): Actuals {
  const tasks = taskActuals(ground);
  const sum = (of: (one: TaskActual) => number): number =>
    tasks.reduce((total, one) => total + of(one), 0);
  return {
    tasks,
    materials: materialActuals(ground),
    minutes: { estimated: sum(({ estimated }) => estimated), actual: sum(({ actual }) => actual) },
  };
}

/** One line of estimate against actual, in words. */
export interface ActualLine {
  readonly sort: 'task' | 'material' | 'total';
  readonly id: string;
  readonly name: string;
  readonly estimated: string;
  readonly actual: string;
  /** `+12 %`. */
  readonly off: string;
}

function offText(estimated: number, actual: number): string {
  if (estimated === 0) return '';
  const share = Math.round((actual / estimated - 1) * 100);
  return share === 0 ? '0 %' : `${share > 0 ? '+' : '−'}${String(Math.abs(share))} %`;
}

/** Estimate and actual side by side: tasks, materials, and the hours of the tasks that were timed. */
export function actualLines(ground: ActualGround): readonly ActualLine[] {
  const { tasks, materials, minutes } = actualsOf(ground);
  const { settings } = ground;
  const clock = (base: number): string =>
    showQuantity({ base: Math.round(base), dimension: time }, settings).text;
  const amount = (base: number, { need }: RowNeed): string => {
    const measure = measureOf(need.dimension);
    return measure === undefined ? '' : amountText(amountOf(base, measure, need.unit), settings);
  };
  const lines: ActualLine[] = tasks.map(({ task, estimated, actual }) => ({
    sort: 'task',
    id: task.id,
    name: task.name,
    estimated: clock(estimated),
    actual: clock(actual),
    off: offText(estimated, actual),
  }));
  for (const { need, name, estimated, used } of materials) {
    const [was, is] = [amount(estimated, need), amount(used, need)];
    const off = offText(estimated, used);
    lines.push({ sort: 'material', id: need.row, name, estimated: was, actual: is, off });
  }
  if (tasks.length > 1) {
    const { estimated, actual } = minutes;
    const off = offText(estimated, actual);
    const figures = { estimated: clock(estimated), actual: clock(actual), off };
    lines.push({ sort: 'total', id: '', name: 'Tasks that were timed', ...figures });
  }
  return lines;
}

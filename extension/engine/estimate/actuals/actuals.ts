import { time } from '../../units/dimension.ts';
import { percentChangeText } from '../../units/percent-text.ts';
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

/** A task whose time is known, whether or not it was done; in min by the clock for the whole job. */
export interface PlannedTask {
  readonly task: Task;
  readonly row: AnsweredRow;
  readonly estimated: number;
  /** Undefined where the row does not say. */
  readonly actual: number | undefined;
}

/** What a row was to take of its material, and what it took; in the base unit of its need. */
export interface PlannedMaterial {
  readonly need: RowNeed;
  readonly row: AnsweredRow;
  readonly name: string;
  readonly estimated: number;
  /** Undefined where the row does not say, or says it in a measure that its material cannot be turned into. */
  readonly used: number | undefined;
}

function rowsByKey(rows: readonly AnsweredRow[]): ReadonlyMap<string, AnsweredRow> {
  return new Map(rows.map((row) => [keyOf(row.id, row.occurrence), row]));
}

function keyOf(id: string, occurrence: number): string {
  return `${id}#${String(occurrence)}`;
}

/** The tasks of a job with their time by the clock, in min, and what their cells `actual` say. */
export function plannedTasks({ workbook, work }: ActualGround): readonly PlannedTask[] {
  const rows = rowsByKey(workbook.rows('task'));
  return work.tasks.flatMap((task) => {
    const row = rows.get(keyOf(task.id, task.occurrence));
    if (row === undefined || !task.complete) return [];
    const actual = baseIn(row, 'actual', time);
    const said = actual !== undefined && actual > 0 ? actual : undefined;
    return [{ task, row, estimated: task.elapsed, actual: said }];
  });
}

/** What a row took, turned into the measure of its need; undefined where it does not say. */
function usedOf(
  need: RowNeed,
  row: AnsweredRow,
  { workbook, settings }: ActualGround,
): number | undefined {
  const reading = quantityIn(row, 'used');
  if (reading.state !== 'value') return undefined;
  const [from, to] = [measureOf(reading.value.dimension), measureOf(need.need.dimension)];
  const material = workbook.row('material', need.material);
  if (from === undefined || to === undefined || material === undefined) return undefined;
  if (from === to) return reading.value.base;
  const facts = readMaterial(material, { packs: [], prices: [] }, settings);
  const way = conversion(from, to, facts.properties);
  return way.ok ? reading.value.base * way.factor : undefined;
}

/** The parts of a job that take a material, with what their cells `used` say; draws go with their row. */
export function plannedMaterials(ground: ActualGround): readonly PlannedMaterial[] {
  const rows = rowsByKey(ground.workbook.rows('part'));
  return ground.bill.lines.flatMap((line) =>
    line.rows.flatMap((need) => {
      const row = need.table === 'part' ? rows.get(keyOf(need.row, need.occurrence)) : undefined;
      const isDraw = need.draw !== '';
      // A one-off cost is of no material.
      const isGoods = ground.workbook.row('material', need.material) !== undefined;
      if (row === undefined || isDraw || !isGoods) return [];
      const used = usedOf(need, row, ground);
      return [{ need, row, name: nameOf(row), estimated: need.need.base, used }];
    }),
  );
}

function taskActuals(ground: ActualGround): readonly TaskActual[] {
  return plannedTasks(ground).flatMap((planned) => {
    const { actual } = planned;
    return actual === undefined ? [] : [{ ...planned, actual }];
  });
}

function materialActuals(ground: ActualGround): readonly MaterialActual[] {
  return plannedMaterials(ground).flatMap(({ need, name, estimated, used }) =>
    used === undefined ? [] : [{ need, name, estimated, used, bare: estimated / (1 + need.waste) }],
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

/** A time by the clock, in whole minutes, from min. */
export function clockTime(minutes: number, settings: UnitSettings): string {
  return showQuantity({ base: Math.round(minutes), dimension: time }, settings).text;
}

/** An amount of a row's material (base units) in the unit of its need. */
export function needText(base: number, { need }: RowNeed, settings: UnitSettings): string {
  const measure = measureOf(need.dimension);
  return measure === undefined ? '' : amountText(amountOf(base, measure, need.unit), settings);
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

/** What an actual is off its estimate by, as a share: `+12 %`; empty where nothing was estimated. */
export function offText(estimated: number, actual: number): string {
  if (estimated === 0) return '';
  return percentChangeText(actual / estimated - 1, 0);
}

/** Estimate and actual side by side: tasks, materials, and the hours of the tasks that were timed. */
export function actualLines(ground: ActualGround): readonly ActualLine[] {
  const { tasks, materials, minutes } = actualsOf(ground);
  const { settings } = ground;
  const clock = (base: number): string => clockTime(base, settings);
  const amount = (base: number, need: RowNeed): string => needText(base, need, settings);
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

import type { AnsweredRow } from '../../workbook/answers.ts';
import { nameOf } from '../cells.ts';
import {
  clockTime,
  needText,
  offText,
  plannedMaterials,
  plannedTasks,
  type ActualGround,
  type PlannedMaterial,
  type PlannedTask,
} from './actuals.ts';

/** A row that was estimated, beside the cell that says what it took, in words. */
export interface ActualRow {
  readonly row: AnsweredRow;
  /** Cell that says what it took. */
  readonly column: 'actual' | 'used';
  readonly name: string;
  /** Material of the row; empty for a task. */
  readonly of: string;
  readonly estimated: string;
  /** What it took in the measure of the estimate; empty where nothing is said. */
  readonly actual: string;
  /** `+15 min`. */
  readonly difference: string;
  /** `+25 %`. */
  readonly off: string;
  /** Why what was said cannot be held against the estimate; empty where it can. */
  readonly problem: string;
}

interface Figures {
  readonly estimated: number;
  readonly actual: number | undefined;
  readonly show: (base: number) => string;
}

function differenceText(by: number, show: Figures['show']): string {
  const text = show(Math.abs(by));
  // What is shown alike is no difference.
  return text === show(0) ? 'as planned' : `${by > 0 ? '+' : '−'}${text}`;
}

function compared({
  estimated,
  actual,
  show,
}: Figures): Pick<ActualRow, 'estimated' | 'actual' | 'difference' | 'off'> {
  if (actual === undefined)
    return { estimated: show(estimated), actual: '', difference: '', off: '' };
  return {
    estimated: show(estimated),
    actual: show(actual),
    difference: differenceText(actual - estimated, show),
    off: offText(estimated, actual),
  };
}

function taskRow({ task, row, estimated, actual }: PlannedTask, ground: ActualGround): ActualRow {
  const show = (base: number): string => clockTime(base, ground.settings);
  const figures = compared({ estimated, actual, show });
  return { row, column: 'actual', name: task.name, of: '', ...figures, problem: '' };
}

function materialRow(planned: PlannedMaterial, ground: ActualGround): ActualRow {
  const { need, row, name, estimated, used } = planned;
  const show = (base: number): string => needText(base, need, ground.settings);
  const material = ground.workbook.row('material', need.material);
  const of = material === undefined ? need.material : nameOf(material);
  const { result, text = '' } = row.cell('used');
  const misses = used === undefined && result.state === 'value';
  return {
    ...{ row, column: 'used', name, of },
    ...compared({ estimated, actual: used, show }),
    problem: misses
      ? `${text} of ${of} cannot be held against ${show(estimated)}: the book does not say how to turn one into the other. Write it in the unit of the estimate.`
      : '',
  };
}

/** Estimate and actual of a job, row by row, whether or not its rows say what they took. */
export interface ActualRows {
  readonly tasks: readonly ActualRow[];
  readonly materials: readonly ActualRow[];
  /** The tasks that were timed, together; undefined where fewer than two were. */
  readonly timed: Omit<ActualRow, 'row' | 'column' | 'of' | 'problem'> | undefined;
}

/** Every task and every part that takes a material, with what it was estimated at and what it took. */
export function actualRows(ground: ActualGround): ActualRows {
  const tasks = plannedTasks(ground);
  const done = tasks.filter(({ actual }) => actual !== undefined);
  const sum = (of: (one: PlannedTask) => number): number =>
    done.reduce((total, one) => total + of(one), 0);
  const together = compared({
    estimated: sum(({ estimated }) => estimated),
    actual: sum(({ actual = 0 }) => actual),
    show: (base) => clockTime(base, ground.settings),
  });
  return {
    tasks: tasks.map((one) => taskRow(one, ground)),
    materials: plannedMaterials(ground).map((one) => materialRow(one, ground)),
    timed:
      done.length > 1
        ? { name: `The ${String(done.length)} tasks that were timed`, ...together }
        : undefined,
  };
}

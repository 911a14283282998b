import {
  fileForm,
  rowKey,
  whenAsked,
  type Charge,
  type Check,
  type LocatedProblem,
  type Snapshot,
  type Task,
} from '../../engine/index.ts';
import type { ColumnView } from '../../protocol/views.ts';
import { checksByKey } from './check-view.ts';
import { sheetColumns, sheetPlans } from './column-plan.ts';
import { problemAddress } from './problem-view.ts';

/** What a sheet is made with: the snapshot and indexes that all its rows share. */
export interface SheetContext {
  readonly snapshot: Snapshot;
  /** Worst problem of each cell (`part/mid_ring#0/depth`) and row (`part/mid_ring#0`). */
  readonly problems: ReadonlyMap<string, LocatedProblem>;
  readonly columns: ReadonlyMap<string, readonly ColumnView[]>;
  /** Checks by the key of their row. */
  readonly checks: ReadonlyMap<string, Check>;
  readonly tasks: ReadonlyMap<string, Task>;
  readonly charges: ReadonlyMap<string, Charge>;
}

const rank = { error: 3, warning: 2, note: 1 } as const;

/** Worst problem of each cell and row. */
function worstProblems(snapshot: Snapshot): SheetContext['problems'] {
  const problems = new Map<string, LocatedProblem>();
  for (const located of snapshot.problems) {
    const address = problemAddress(located);
    if (address === undefined) continue;
    const row = rowKey(address);
    const key = address.column === '' ? row : `${row}/${address.column}`;
    const before = problems.get(key);
    if (before === undefined || rank[located.problem.severity] > rank[before.problem.severity])
      problems.set(key, located);
  }
  return problems;
}

/** What is read of it is worked out when it is read first: totals are told without most of it. */
export function sheetContext(snapshot: Snapshot): SheetContext {
  const problems = whenAsked(() => worstProblems(snapshot));
  const checks = whenAsked(() => checksByKey(snapshot));
  const tasks = whenAsked(
    () => new Map(snapshot.work.tasks.map((task) => [rowKey({ ...task, table: 'task' }), task])),
  );
  const charges = whenAsked(
    () => new Map(snapshot.price.charges.map((one) => [rowKey({ ...one, table: 'charge' }), one])),
  );
  const plans = sheetPlans(fileForm(snapshot.shown));
  const columns = new Map(plans.map(({ table }) => [table, sheetColumns(table, snapshot)]));
  return {
    snapshot,
    columns,
    get problems() {
      return problems();
    },
    get checks() {
      return checks();
    },
    get tasks() {
      return tasks();
    },
    get charges() {
      return charges();
    },
  };
}

/** A job that has moved on, with the problems and checks that were told before. */
export function toldBefore(after: SheetContext, { problems, checks }: SheetContext): SheetContext {
  const { snapshot, columns } = after;
  return {
    ...{ snapshot, columns, problems, checks },
    get tasks() {
      return after.tasks;
    },
    get charges() {
      return after.charges;
    },
  };
}

import {
  fileForm,
  rowKey,
  type Charge,
  type Check,
  type LocatedProblem,
  type Snapshot,
  type Task,
} from '../../engine/index.ts';
import type { ColumnView } from '../../protocol/views.ts';
import { checksByKey } from './check-view.ts';
import { labelText, sheetColumns, sheetPlans } from './column-plan.ts';
import { isFollower, problemAddress } from './problem-view.ts';
import { columnLabel } from './problem-words.ts';

/** What a sheet is made with: the snapshot and indexes that all its rows share. */
export interface SheetContext {
  readonly snapshot: Snapshot;
  /** Worst problem of each cell (`part/mid_ring#0/depth`) and row (`part/mid_ring#0`). */
  readonly problems: ReadonlyMap<string, LocatedProblem>;
  /** First fault in a cell of each row by the row's key, in words; not what only follows from another. */
  readonly faults: ReadonlyMap<string, string>;
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

/** First fault in a cell of each row, with the name of the cell. */
function firstFaults({ problems, snapshot }: SheetContext): SheetContext['faults'] {
  const faults = new Map<string, string>();
  for (const located of problems.values()) {
    const { problem } = located;
    const address = problemAddress(located);
    if (problem.severity !== 'error' || address === undefined || isFollower(located)) continue;
    const key = rowKey(address);
    const kind = snapshot.workbook.row(address.table, address.id)?.kind ?? '';
    const label = labelText(columnLabel(address, kind, snapshot));
    if (address.column !== '' && !faults.has(key)) faults.set(key, `${label}: ${problem.message}`);
  }
  return faults;
}

type Told = Pick<SheetContext, 'problems' | 'faults' | 'checks'>;

/** What is read of it is worked out when it is read first: totals are told without most of it. */
class JobContext implements SheetContext {
  readonly snapshot: Snapshot;
  readonly columns: SheetContext['columns'];
  readonly #told: Told | undefined;
  #problems: SheetContext['problems'] | undefined;
  #faults: SheetContext['faults'] | undefined;
  #checks: SheetContext['checks'] | undefined;
  #tasks: SheetContext['tasks'] | undefined;
  #charges: SheetContext['charges'] | undefined;

  constructor(snapshot: Snapshot, columns: SheetContext['columns'], told?: Told) {
    this.snapshot = snapshot;
    this.columns = columns;
    this.#told = told;
  }

  get problems(): SheetContext['problems'] {
    this.#problems ??= this.#told?.problems ?? worstProblems(this.snapshot);
    return this.#problems;
  }

  get faults(): SheetContext['faults'] {
    this.#faults ??= this.#told?.faults ?? firstFaults(this);
    return this.#faults;
  }

  get checks(): SheetContext['checks'] {
    this.#checks ??= this.#told?.checks ?? checksByKey(this.snapshot);
    return this.#checks;
  }

  get tasks(): SheetContext['tasks'] {
    const { tasks } = this.snapshot.work;
    this.#tasks ??= new Map(tasks.map((task) => [rowKey({ ...task, table: 'task' }), task]));
    return this.#tasks;
  }

  get charges(): SheetContext['charges'] {
    const { charges } = this.snapshot.price;
    this.#charges ??= new Map(charges.map((one) => [rowKey({ ...one, table: 'charge' }), one]));
    return this.#charges;
  }
}

export function sheetContext(snapshot: Snapshot): SheetContext {
  const plans = sheetPlans(fileForm(snapshot.shown));
  const columns = new Map(plans.map(({ table }) => [table, sheetColumns(table, snapshot)]));
  return new JobContext(snapshot, columns);
}

/** A job that has moved on, with the problems and checks that were told before. */
export function toldBefore({ snapshot, columns }: SheetContext, before: Told): SheetContext {
  return new JobContext(snapshot, columns, before);
}

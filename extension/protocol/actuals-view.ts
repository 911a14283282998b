import type { CellAddress } from './addresses.ts';
import type { CellView } from './views.ts';

/** Estimate against actual of one row, with the cell that the actual is typed into. */
export interface ActualRowView {
  readonly cell: CellAddress;
  readonly name: string;
  /** Material of the row; empty for a task. */
  readonly of: string;
  readonly estimated: string;
  /** What the cell says. */
  readonly said: CellView;
  /** What it took in the measure of the estimate, where the cell says it in another; else empty. */
  readonly actual: string;
  /** "+15 min, +25 %". */
  readonly difference: string;
  /** Why it cannot be held against the estimate, or what is wrong with the cell; empty where nothing is. */
  readonly problem: string;
}

/** Estimate against actual, row by row. */
export interface ActualsView {
  /** Why there is nothing to hold against each other; empty where there is. */
  readonly message: string;
  /** How much of the job says what it took. */
  readonly said: string;
  readonly tasks: readonly ActualRowView[];
  /** The tasks that were timed, together; undefined where fewer than two were. */
  readonly timed:
    | {
        readonly label: string;
        readonly estimated: string;
        readonly actual: string;
        readonly difference: string;
      }
    | undefined;
  readonly materials: readonly ActualRowView[];
}

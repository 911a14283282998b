import type { CellValue } from '../formula/value.ts';
import type { Problem } from '../problems.ts';

/** Where a cell's text comes from. */
export type CellOrigin = 'typed' | 'default' | 'computed';

/** What a cell says after calculation. */
export type CellResult =
  /** `estimate`: something too heavy for a keystroke is still being worked out. */
  | { readonly state: 'value'; readonly value: CellValue; readonly estimate?: true }
  | { readonly state: 'blank' }
  /** The sentence says why there is no answer and names the cell it waits for. */
  | { readonly state: 'no-answer'; readonly problem: Problem };

/** A cell as the grid and the estimate see it. */
export interface AnsweredCell {
  readonly column: string;
  /** Text as typed, or the kind's default or result text; undefined when there is none. */
  readonly text: string | undefined;
  readonly origin: CellOrigin;
  readonly formula: boolean;
  readonly result: CellResult;
}

/** A row after calculation. `table` is a job table, or `material`, `constant`, `pack` of the book. */
export interface AnsweredRow {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  /** Kind id of part, task, check and charge rows; empty elsewhere. */
  readonly kind: string;
  readonly broken: boolean;
  /** Any column of the row; a column it does not have is blank. Draw keys are columns: `draw.glue.use`. */
  readonly cell: (column: string) => AnsweredCell;
  /** Names of the draws of this row, from its kind and its own cells. */
  readonly draws: readonly string[];
}

/** Everything calculated, as the estimate and the views read it. */
export interface Answers {
  /** Rows in display order. */
  readonly rows: (table: string) => readonly AnsweredRow[];
  readonly row: (table: string, id: string) => AnsweredRow | undefined;
  /** A setting of `[job]`: units, currency, temperature… */
  readonly setting: (key: string) => CellResult;
  /** Rows that this row stands on, nearest first (its `on`, its `on`'s `on`…). */
  readonly under: (row: AnsweredRow) => readonly AnsweredRow[];
  readonly problems: readonly Problem[];
}

import type { Kind } from '../book/book.ts';
import type { Checked } from '../formula/checked.ts';
import type { CellRef } from '../formula/scope.ts';
import type { CellValue, ValueType } from '../formula/value.ts';
import type { Place, Problem } from '../problems.ts';
import type { AnsweredCell, AnsweredRow, CellOrigin, CellResult } from './answers.ts';

/** What is known of a cell before anything is calculated. */
export type Meaning =
  | { readonly kind: 'blank' }
  | { readonly kind: 'literal'; readonly value: CellValue }
  | {
      readonly kind: 'formula';
      readonly checked: Checked;
      /** The cells that its references mean in this row; others are found by name. */
      readonly bound: ReadonlyMap<CellRef, Cell>;
      /** The tree is shared with other rows and reads nothing but what is bound. */
      readonly shared: boolean;
    }
  /** There can be no answer until somebody mends it; `cause` is a cell it waits for, if it is not at fault itself. */
  | { readonly kind: 'fault'; readonly problem: Problem; readonly cause: Cell | undefined };

/** Text of a cell, and where it is from. */
export interface CellText {
  readonly text: string;
  readonly origin: CellOrigin;
}

/** A cell at work: everything the workbook keeps of it between two updates. */
export interface Cell {
  readonly row: Row;
  readonly column: string;
  /** Its number in faults that travel through the evaluator. */
  readonly number: number;
  text: CellText | undefined;
  meaning: Meaning;
  /** Type before calculation. */
  type: ValueType;
  /** Name graph: the cells it reads, and the cells that read it. */
  reads: readonly Cell[];
  readers: Set<Cell> | undefined;
  /** Names and lists its meaning hangs on: `name:mid_ring`, `kind:ring`, `table:part`, `on:base`. */
  watches: readonly string[];
  /** Problems found without calculating, warnings included. */
  problems: readonly Problem[];
  /** Loop it is a member of. */
  loop: Problem | undefined;
  result: CellResult;
  answered: AnsweredCell | undefined;
  /** Column in the evaluator's sheet once it stands there. */
  placed: number | undefined;
  /** Its meaning is to be worked out again. */
  stale: boolean;
  /** How often it was looked at since meanings were last settled. */
  visits: number;
}

/** Where a row's texts are from: a row of the file, of the book, or the head of the file. */
export interface RowSource {
  /** Changes exactly when the row's texts may have changed. */
  readonly identity: object;
  readonly texts: ReadonlyMap<string, string>;
  /** Texts that hold where the row has none of its own: of a row of a shop book, what is built in. */
  readonly under?: ReadonlyMap<string, string>;
  readonly broken: boolean;
}

/** A row at work. */
export interface Row {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  /** `part/mid_ring#0`. */
  readonly key: string;
  source: RowSource;
  kind: string;
  /** Its block could be read when it was last looked at. */
  legible: boolean;
  definition: Kind | undefined;
  draws: readonly string[];
  readonly cells: Map<string, Cell>;
  /** Index in display order among the rows of its table. */
  position: number;
  answered: AnsweredRow | undefined;
  /** Where its cells stood among those that say something, when it was answered last. */
  places: ReadonlyMap<string, number> | undefined;
  problems: readonly Problem[] | undefined;
  /** Row in the evaluator's sheet once it stands there. */
  slot: number | undefined;
}

export const blankType: ValueType = { kind: 'blank' };
const blankMeaning: Meaning = { kind: 'blank' };
export const blankResult: CellResult = { state: 'blank' };

export function rowKeyOf(table: string, id: string, occurrence: number): string {
  return `${table}/${id}#${occurrence}`;
}

export function newRow({
  table,
  id,
  occurrence,
  source,
}: {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  readonly source: RowSource;
}): Row {
  return {
    table,
    id,
    occurrence,
    key: rowKeyOf(table, id, occurrence),
    source,
    kind: '',
    legible: true,
    definition: undefined,
    draws: [],
    cells: new Map(),
    position: 0,
    answered: undefined,
    places: undefined,
    problems: undefined,
    slot: undefined,
  };
}

/** A cell without text, as every cell begins. */
export function newCell(row: Row, column: string, number: number): Cell {
  return {
    row,
    column,
    number,
    text: undefined,
    meaning: blankMeaning,
    type: blankType,
    reads: [],
    readers: undefined,
    watches: [],
    problems: [],
    loop: undefined,
    result: blankResult,
    answered: undefined,
    placed: undefined,
    stale: false,
    visits: 0,
  };
}

export function refOf(cell: Cell): CellRef {
  const { table, id, occurrence } = cell.row;
  return { table, id, occurrence, column: cell.column };
}

export function placeOfRow(row: Row): Place {
  return row.table === 'job'
    ? { table: 'job' }
    : { table: row.table, row: row.id, occurrence: row.occurrence };
}

export function placeOfCell(cell: Cell): Place {
  return { ...placeOfRow(cell.row), column: cell.column };
}

/** What people call a cell, as a formula would: `mid_ring.depth`, `job.temperature`, `book.wet_out`. */
export function cellName(cell: Cell): string {
  const { table, id } = cell.row;
  if (table === 'job') return `job.${cell.column}`;
  if (table === 'constant' && cell.column === 'value') return `book.${id}`;
  if (table === 'measure' && cell.column === 'value') return `job.${id}`;
  return `${id}.${cell.column}`;
}

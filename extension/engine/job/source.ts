import type { Problem, Span } from '../problems.ts';

/** One `key = value` of a file: the text between the quotes, as a person would type it in a cell. */
export interface SourceCell {
  /** Text without TOML quoting; numbers, booleans and dates as they are spelt. */
  readonly text: string;
  readonly form: 'string' | 'integer' | 'float' | 'boolean' | 'date' | 'array' | 'table';
  /** Elements of an array of strings (else absent). */
  readonly items?: readonly string[];
  /** Range of the value in the file, quotes included, counted from the start of its block. */
  readonly span: Span;
}

/** One `[[table]]` block: a row as it stands in the file, nothing computed. */
export interface SourceRow {
  readonly table: string;
  readonly id: string;
  /** 0 for the first row with this id in the table, 1 for the next (after a merge), and so on. */
  readonly occurrence: number;
  /** Cells by key, dotted keys joined (`draw.catalyst.percent`); without `id` and `order`. */
  readonly cells: ReadonlyMap<string, SourceCell>;
  readonly order?: number;
  /** Index into `blocks`. */
  readonly block: number;
  /** True when the block could not be read; such a row shows its problem and takes no edit. */
  readonly broken: boolean;
}

/** A stretch of the file: what stands before the first header, or a header and all up to the next. */
export interface Block {
  readonly text: string;
  /** Offset in the file. */
  readonly start: number;
  readonly header?: { readonly name: string; readonly array: boolean };
  /** Problems of this block; their `fileSpan` counts from the block's start, not the file's. */
  readonly problems: readonly Problem[];
}

/** What a job or a book file says, before any meaning is given to it. */
export interface FileReading {
  readonly text: string;
  readonly blocks: readonly Block[];
  /** The keys of `[job]` or `[book]`. */
  readonly head: ReadonlyMap<string, SourceCell>;
  /** Rows of each table in display order. */
  readonly tables: ReadonlyMap<string, readonly SourceRow[]>;
  readonly format: number;
  /**
   * `readable` takes edits; `newer` is shown read-only; `conflicted` has git's conflict markers;
   * `unreadable` has nothing that can be shown.
   */
  readonly state: 'readable' | 'newer' | 'conflicted' | 'unreadable';
  readonly problems: readonly Problem[];
}

/** The smallest replacement in the file's text. */
export interface TextChange {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface RowRef {
  readonly table: string;
  readonly id: string;
  readonly occurrence?: number;
}

/** One thing a person does to a file. A gesture is a list of these, applied in order, undone as one. */
export type Edit =
  | {
      readonly kind: 'set-cell';
      readonly row: RowRef;
      readonly column: string;
      /** Text of the cell; undefined removes the key. */
      readonly text: string | undefined;
    }
  | { readonly kind: 'set-head'; readonly key: string; readonly text: string | undefined }
  | {
      readonly kind: 'insert-row';
      readonly table: string;
      readonly id: string;
      readonly cells: Readonly<Record<string, string>>;
      /** Row it is displayed after; undefined puts it last, null puts it first. */
      readonly after?: string | null;
    }
  | { readonly kind: 'delete-row'; readonly row: RowRef }
  | { readonly kind: 'move-row'; readonly row: RowRef; readonly after: string | null }
  | { readonly kind: 'sort-rows'; readonly table: string; readonly ids: readonly string[] }
  /** Renames the row and every reference to it, in links and in formulas. */
  | { readonly kind: 'rename-row'; readonly row: RowRef; readonly id: string };

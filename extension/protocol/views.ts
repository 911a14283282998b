/** Plain data that the grid shows. Every text is ready to show: the webview formats nothing. */

import type { CheckView } from './check-view.ts';
import type { CellMark } from './compare-view.ts';

/** How a cell's text came about and what may be done with it. */
export interface CellView {
  /** What is shown. */
  readonly shown: string;
  /** Text as it stands in the file: what editing starts from. Empty for a blank cell. */
  readonly typed: string;
  readonly look:
    | 'typed'
    /** A kind's default, shown lighter. */
    | 'default'
    /** Read-only result, grey. */
    | 'computed'
    | 'blank'
    /** No answer: `message` says why. */
    | 'error'
    /** Not calculated yet. */
    | 'waiting';
  readonly formula: boolean;
  /** Worst problem on the cell, or the reason why there is no answer. */
  readonly message: string;
  readonly severity: '' | 'error' | 'warning' | 'note';
  /** Set by the page where the job is held against another version. */
  readonly mark?: CellMark;
}

export interface RowView {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  readonly kind: string;
  readonly group: string;
  /** A row whose block cannot be read: shown, not editable. */
  readonly locked: boolean;
  /** Problem of the row as a whole. */
  readonly message: string;
  /** One cell a column of the sheet, in its order. */
  readonly cells: readonly CellView[];
  /** Set by the page where the row as a whole differs from another version. */
  readonly mark?: CellMark;
}

export type CellEditor = 'text' | 'choice' | 'link' | 'none';

export interface ColumnView {
  readonly key: string;
  readonly label: string;
  readonly help: string;
  readonly editor: CellEditor;
  readonly align: 'start' | 'end';
  /** Width in px to begin with. */
  readonly width: number;
}

/** A heading between rows: a bench group with its totals. */
export interface GroupView {
  readonly group: string;
  readonly label: string;
  readonly totals: string;
}

export interface SheetView {
  readonly table: string;
  readonly label: string;
  readonly columns: readonly ColumnView[];
  readonly groups: readonly GroupView[];
  /** Rows in display order as `id` or `id#occurrence`; within a sheet with groups, group after group. */
  readonly order: readonly string[];
  /** What a row of this table is called in menus: "part", "driver". */
  readonly noun: string;
  /** Kinds a new row may be, where the table has kinds. */
  readonly kinds: readonly {
    readonly id: string;
    readonly label: string;
    readonly group: string;
  }[];
}

/** One figure of the headline. */
export interface HeadlineFigure {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  /** Difference since the file was opened, with its sign; empty when there is none. */
  readonly change: string;
  readonly tone: 'plain' | 'warning' | 'error';
}

export interface HeadlineView {
  readonly title: string;
  readonly figures: readonly HeadlineFigure[];
  /** "No labour in it yet", "2 lines without price". */
  readonly notes: readonly string[];
}

/** A pinned cell with what one step does. */
export interface KnobView {
  readonly table: string;
  readonly id: string;
  readonly column: string;
  readonly label: string;
  readonly value: string;
  readonly step: string;
  /** "+1/8 in: +0.42 USD"; empty while not known. */
  readonly effect: string;
  /** "window: 1/4 in to spare"; empty when no check is near. */
  readonly check: string;
}

export interface BillLineView {
  readonly id: string;
  readonly name: string;
  readonly need: string;
  readonly buy: string;
  readonly buyCost: string;
  readonly charge: string;
  readonly left: string;
  /** "≈", "tight, 0.1 % short". */
  readonly note: string;
  readonly problem: string;
  /** Change of the charge since the file was opened. */
  readonly change: string;
  /** Changed by the last edit: marked for a moment. */
  readonly fresh: boolean;
  readonly rows: readonly string[];
}

export interface BillGroupView {
  readonly group: string;
  readonly label: string;
  readonly buy: string;
  readonly charge: string;
  readonly lines: readonly BillLineView[];
}

/** A danger of the job: what to look up before, and what rules print about it. */
export interface CautionView {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly limits: readonly { readonly text: string; readonly source: string }[];
  /** Rows that bring it: "First coat, Second coat and 4 more". */
  readonly rows: string;
}

export interface BillView {
  readonly groups: readonly BillGroupView[];
  readonly buy: string;
  readonly charge: string;
  readonly left: string;
  /** Difference since the file was opened. */
  readonly change: string;
  readonly note: string;
  readonly cautions: { readonly first: string; readonly list: readonly CautionView[] };
}

export interface ProblemView {
  readonly code: string;
  readonly message: string;
  readonly severity: 'error' | 'warning' | 'note';
  readonly table: string;
  readonly row: string;
  readonly occurrence: number;
  readonly column: string;
  readonly line: number;
  /** Titles of quick fixes; taken by index. */
  readonly fixes: readonly string[];
  /** True for one that goes when another is mended. */
  readonly follows: boolean;
}

/** The whole job but its rows, which follow in `rows` messages. */
export interface JobView {
  /** A job, or a shop book, which has rows and problems but no bill. */
  readonly form: 'job' | 'book';
  /**
   * `calculating` shows the texts while answers are worked out, and takes edits already; `empty` has
   * no rows yet and offers kits; `read-only`, `conflicted` and `unreadable` show the last
   * good grid (if any) and take no edit.
   */
  readonly state: 'ready' | 'calculating' | 'empty' | 'read-only' | 'conflicted' | 'unreadable';
  readonly message: string;
  /** Line of the trouble in the text, from 1; 0 when there is none. */
  readonly line: number;
  readonly units: 'in' | 'mm';
  readonly sheets: readonly SheetView[];
  readonly headline: HeadlineView;
  readonly knobs: readonly KnobView[];
  readonly bill: BillView;
  readonly checks: readonly CheckView[];
  readonly problems: readonly ProblemView[];
  readonly kits: readonly { readonly id: string; readonly name: string; readonly help: string }[];
}

/** One line of the row card. */
export interface CardField {
  readonly key: string;
  readonly label: string;
  readonly help: string;
  readonly cell: CellView;
  /** The kind's default as text, if it has one. */
  readonly fallback: string;
  readonly unit: string;
  readonly editor: CellEditor;
  readonly pinned: boolean;
  readonly fixes: readonly string[];
}

export interface CardView {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  readonly title: string;
  readonly kind: string;
  readonly kindHelp: string;
  readonly fields: readonly CardField[];
  /** Results: read-only. */
  readonly results: readonly CardField[];
  readonly draws: readonly {
    readonly name: string;
    readonly label: string;
    readonly fields: readonly CardField[];
  }[];
  readonly amounts: readonly {
    readonly label: string;
    readonly value: string;
    readonly steps: readonly string[];
  }[];
  /** Checks that look at this row; of a check, itself. */
  readonly checks: readonly CheckView[];
  readonly problems: readonly ProblemView[];
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
}

export interface ChoiceOption {
  readonly value: string;
  readonly label: string;
  readonly detail: string;
}

export interface CompletionItem {
  readonly label: string;
  readonly detail: string;
  readonly kind: 'function' | 'column' | 'row' | 'word' | 'unit';
  /** Replaces `start`–`end` of the text. */
  readonly insert: string;
}

export interface SignatureView {
  readonly name: string;
  readonly help: string;
  readonly parameters: readonly { readonly label: string; readonly help: string }[];
  /** Parameter under the caret. */
  readonly active: number;
  readonly example: string;
}

export interface CompletionView {
  readonly start: number;
  readonly end: number;
  readonly items: readonly CompletionItem[];
  readonly signature: SignatureView | undefined;
  /** What the text so far comes to, or the sentence why not; empty when not a formula. */
  readonly preview: string;
}

/** "Where from": the working behind a bill line or a cell. */
export interface WhereFromView {
  readonly title: string;
  readonly steps: readonly {
    readonly text: string;
    readonly table: string;
    readonly row: string;
    readonly column: string;
  }[];
}

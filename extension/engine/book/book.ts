import type { Problem } from '../problems.ts';
import type { FileReading, SourceRow } from '../job/source.ts';

/** Bench groups, in the order they are shown. */
export const kindGroups = ['structure', 'skin', 'finish', 'drivers', 'shop'] as const;
export type KindGroup = (typeof kindGroups)[number];

/** A further material that a row of a kind needs: glue for a ring, catalyst for resin. */
export interface Draw {
  readonly name: string;
  readonly label: string;
  /** Texts by key: `material`, `use`, `percent`, `qty`, `per`, `waste`; formulas are over the row. */
  readonly cells: ReadonlyMap<string, string>;
}

/**
 * What a row means. Texts are cell texts: literals or formulas. In a file `label.size`, `hint.size`,
 * `default.size`, `result.low`, `draw.glue.use`, `rule.low` with `say.low` are keys of the row.
 */
export interface Kind {
  readonly id: string;
  readonly name: string;
  /**
   * Table whose rows may be of this kind. A kind whose id is a table's name (`part`, `driver`) holds
   * what is common to all rows of the table and is never offered to people; its columns, labels and
   * defaults have been given to the table's other kinds already.
   */
  readonly table: string;
  readonly group: KindGroup;
  readonly help: string;
  /** Kinds a row of this kind may stand on; empty: stands alone. */
  readonly on: readonly string[];
  /** The row's own columns, in the order of the row card. */
  readonly columns: readonly string[];
  /**
   * How the row uses its material: a `blank` of length × width laid on a sheet or bolt, a `strip`
   * of stock length, an `amount` (the column use), or `none`.
   */
  readonly takes: 'blank' | 'strip' | 'amount' | 'none';
  /** Template of the main size in words: `{size}, {depth} deep, {tilt}`. */
  readonly words: string;
  readonly labels: ReadonlyMap<string, string>;
  /** One line a column, from keys `hint.size`. */
  readonly helps: ReadonlyMap<string, string>;
  readonly defaults: ReadonlyMap<string, string>;
  readonly results: ReadonlyMap<string, string>;
  readonly draws: readonly Draw[];
  /**
   * Formulas that must be yes for the row to be possible, by code, with the sentence to show
   * (`{column}` is filled with the shown value): `rule.low = "=low >= 0in"`, `say.low = "…"`.
   */
  readonly rules: readonly {
    readonly name: string;
    readonly formula: string;
    readonly say: string;
  }[];
  /** Columns suggested as knobs. */
  readonly knobs: readonly string[];
  readonly steps: readonly string[];
  readonly tools: readonly string[];
  readonly cautions: readonly string[];
  /** Dangers a row of this kind brings into a job, by the ids of book/cautions.ts. */
  readonly hazards: readonly string[];
  /** Kinds of check and task rows that a row of this kind calls for; `coat/lay_mat`: either will do. */
  readonly checks: readonly string[];
  readonly tasks: readonly string[];
  /** A kind of task in which time passes while nobody works. */
  readonly waits: boolean;
  /** Where the figures of its defaults are from; empty where it does not say. */
  readonly source: string;
}

/** A question a kit asks. */
export interface KitQuestion {
  readonly key: string;
  readonly label: string;
  readonly help: string;
  /** `text`, `id` (a new row's prefix), `number`, `length`, `angle`, `choice`, `row` (of the kinds or tables named), `material` (of the forms named). */
  readonly type:
    | 'text'
    | 'id'
    | 'number'
    | 'length'
    | 'angle'
    | 'shape'
    | 'money'
    | 'choice'
    | 'row'
    | 'material'
    | 'yes-no';
  readonly of: readonly string[];
  /** Text offered; may hold `{other_key}`. */
  readonly start: string;
  /** Text offered where the job works in mm; absent: `start`. */
  readonly startMm?: string;
  readonly required: boolean;
}

/**
 * A row a kit writes; texts (keys `set.column`) may hold `{key}`, and `{key:stem}` for an answer without its last word
 * (`door` of `door_base`). A cell whose text comes out empty, or whose every answer is empty, is left
 * out. Another row of the kit is referred to by the template of its id, spelt alike.
 */
export interface KitRow {
  readonly table: string;
  readonly id: string;
  readonly cells: ReadonlyMap<string, string>;
  /** Written only when this question's answer is neither empty nor `no` nor 0. */
  readonly when?: string;
}

export interface Kit {
  readonly id: string;
  readonly name: string;
  readonly help: string;
  readonly questions: readonly KitQuestion[];
  readonly rows: readonly KitRow[];
}

export interface Pack {
  readonly id: string;
  readonly material: string;
  /** `holds` and `price`, or `step` and `rate`, as cell texts. */
  readonly cells: ReadonlyMap<string, string>;
}

/** A band of a chart: from (closed) to (open), as cell texts. */
export interface Band {
  readonly id: string;
  readonly chart: string;
  readonly from: string;
  readonly to: string;
  readonly value: string;
  readonly source: string;
}

/**
 * A shop book laid over the built-in one, key by key; a job's own material, pack, constant and kind
 * rows are laid over that in turn.
 */
export interface Book {
  readonly title: string;
  readonly currency: string;
  /** `demo` when no book file was given. */
  readonly origin: 'demo' | 'file';
  /** Rows by id, cells overlaid; `from` tells where a cell's text stands. */
  readonly materials: ReadonlyMap<string, BookRow>;
  readonly constants: ReadonlyMap<string, BookRow>;
  readonly packs: readonly BookRow[];
  readonly suppliers: readonly BookRow[];
  readonly bands: readonly Band[];
  readonly kinds: ReadonlyMap<string, Kind>;
  readonly kits: readonly Kit[];
  readonly problems: readonly Problem[];
}

export interface BookRow {
  readonly id: string;
  readonly cells: ReadonlyMap<string, string>;
  /** Where the row stands: built in, in the shop's book, or in this job only. */
  readonly origin: 'built-in' | 'book' | 'job';
}

export interface BookSources {
  /** Reading of the shop's book file; absent: the demo book. */
  readonly file?: FileReading;
  /** The job's own `material`, `pack`, `constant`, `band`, `kind` rows. */
  readonly job: ReadonlyMap<string, readonly SourceRow[]>;
  /** The job's currency; prices in another one cannot be used. */
  readonly currency?: string;
}

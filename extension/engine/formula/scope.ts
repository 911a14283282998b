import type { Problem } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { Catalogue } from './catalogue.ts';
import type { Step } from './expression.ts';
import type { ValueType } from './value.ts';

/** A cell by name: what formulas depend on. */
export interface CellRef {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  readonly column: string;
}

/** A row by name. */
export interface NamedRow {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
}

export type Resolved<Thing> =
  | { readonly found: true; readonly thing: Thing }
  /** The name means nothing here, or a link on the way is empty: the sentence says which cell to fill. */
  | {
      readonly found: false;
      readonly problem: Problem;
      /** Cells walked through before the way ended: when one changes, the formula is checked again. */
      readonly links?: readonly CellRef[];
      /** Keys that change when the missing name may have come. */
      readonly watches?: readonly string[];
    };

/** A name that may stand at a place, for completion. */
export interface Nameable {
  readonly word: string;
  readonly kind: 'column' | 'row' | 'link' | 'kind' | 'table' | 'root';
  readonly detail: string;
}

/** What the names of one formula mean: the workbook's view from one row. */
export interface Scope {
  readonly settings: UnitSettings;
  readonly catalogue: Catalogue;
  /**
   * The cell a path ends in, with every link cell walked through on the way (they are dependencies:
   * when one changes, the formula is checked again) and the type the cell has now.
   */
  readonly cell: (steps: readonly Step[]) => Resolved<{
    readonly cell: CellRef;
    readonly links: readonly CellRef[];
    readonly type: ValueType;
  }>;
  /** The row a path of an id or links ends in. */
  readonly row: (
    steps: readonly Step[],
  ) => Resolved<{ readonly row: NamedRow; readonly links: readonly CellRef[] }>;
  /**
   * The cells of a list, in display order, without this row's own, each with the cell that holds its
   * row's pieces (qty) where there is one.
   */
  readonly list: (
    form: 'all' | 'on',
    row: readonly Step[] | undefined,
    kinds: readonly Step[],
    column: Step,
  ) => Resolved<{
    readonly cells: readonly {
      readonly cell: CellRef;
      readonly pieces: CellRef | undefined;
      readonly type: ValueType;
    }[];
    readonly links: readonly CellRef[];
    /** Keys that change when rows come, go or move links: `kind:ring`, `table:part`, `on:base`. */
    readonly watches: readonly string[];
  }>;
  /** Names that may follow the steps already written (none: at the start of a path). */
  readonly names: (steps: readonly string[]) => readonly Nameable[];
}

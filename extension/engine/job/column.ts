import type { Dimension } from '../units/dimension.ts';

/** What a column holds. */
export type ColumnType =
  | { readonly kind: 'quantity'; readonly dimension: Dimension | 'any' }
  | { readonly kind: 'text' }
  | { readonly kind: 'choice'; readonly choices: readonly string[] }
  | { readonly kind: 'yes-no' }
  | { readonly kind: 'shape' }
  | { readonly kind: 'date' }
  /** A row id of one of these tables. */
  | { readonly kind: 'link'; readonly tables: readonly string[] }
  | { readonly kind: 'list' };

/** A column of a table: core, computed, or added by the user. */
export interface Column {
  readonly table: string;
  readonly key: string;
  readonly label: string;
  readonly help: string;
  readonly type: ColumnType;
  /** Group of keys (at most three) between blank lines in the file; computed columns have none. */
  readonly group?: number;
  /** Computed: read-only, never in the file. `late` ones come from the estimate and no formula may read them. */
  readonly computed?: 'cell' | 'late';
}

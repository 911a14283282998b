import type { Problem, Span } from '../problems.ts';
import type { FunctionEntry } from './catalogue.ts';
import type { BinaryOperator } from './expression.ts';
import type { CellRef, NamedRow } from './scope.ts';
import type { CellValue, ValueType } from './value.ts';

/** A formula whose names are resolved and whose dimensions agree: what the evaluator translates. */
export type Checked = { readonly type: ValueType; readonly span: Span } & (
  | { readonly kind: 'constant'; readonly value: CellValue }
  | { readonly kind: 'cell'; readonly cell: CellRef }
  | {
      readonly kind: 'list';
      readonly cells: readonly { readonly cell: CellRef; readonly pieces: CellRef | undefined }[];
    }
  | { readonly kind: 'row'; readonly row: NamedRow }
  | {
      readonly kind: 'call';
      readonly entry: FunctionEntry;
      readonly args: readonly (Checked | undefined)[];
    }
  | { readonly kind: 'negative'; readonly operand: Checked }
  | {
      readonly kind: 'binary';
      readonly operator: BinaryOperator;
      readonly left: Checked;
      readonly right: Checked;
    }
);

/** Outcome of checking: a tree when there is no error, all problems in any case. */
export interface CheckOutcome {
  readonly checked: Checked | undefined;
  readonly problems: readonly Problem[];
  /** Every cell read, links walked through included. */
  readonly reads: readonly CellRef[];
  /** Rows given to row-taking functions. */
  readonly rows: readonly NamedRow[];
  readonly watches: readonly string[];
}

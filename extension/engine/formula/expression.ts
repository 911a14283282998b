import type { Span } from '../problems.ts';
import type { Quantity } from '../units/quantity.ts';

export type UnaryOperator = '+' | '-';
export type BinaryOperator =
  '+' | '-' | '*' | '/' | '^' | '&' | '=' | '<>' | '<' | '<=' | '>' | '>=';

/** One word of a reference path, with its range in the formula. */
export interface Step {
  readonly word: string;
  readonly span: Span;
}

/** A formula as a tree. Ranges count from the first character of the cell (the `=` is offset 0). */
export type Expression =
  | {
      readonly kind: 'quantity';
      readonly value: Quantity;
      /** Canonical unit word as in the formula; empty for a plain number. */
      readonly unit: string;
      readonly span: Span;
    }
  | { readonly kind: 'text'; readonly text: string; readonly span: Span }
  /** A column of this row, a choice word, a row argument, or a path of links ending in a column. */
  | { readonly kind: 'path'; readonly steps: readonly Step[]; readonly span: Span }
  /** `all(ring).wall`, `on(base, ring, tube_ring).wall`. */
  | {
      readonly kind: 'list';
      /** `all` takes every row of a kind or table; `on` those that stand on a row. */
      readonly form: 'all' | 'on';
      /** The row of `on`: an id, or links from this row. */
      readonly row?: readonly Step[];
      /** Kinds or tables. */
      readonly kinds: readonly Step[];
      readonly column: Step;
      readonly span: Span;
    }
  | {
      readonly kind: 'call';
      /** In capitals. */
      readonly name: string;
      readonly nameSpan: Span;
      /** An argument left empty between commas is undefined. */
      readonly args: readonly (Expression | undefined)[];
      readonly span: Span;
    }
  | {
      readonly kind: 'unary';
      readonly operator: UnaryOperator;
      readonly operand: Expression;
      readonly span: Span;
    }
  | { readonly kind: 'percent'; readonly operand: Expression; readonly span: Span }
  | {
      readonly kind: 'binary';
      readonly operator: BinaryOperator;
      readonly left: Expression;
      readonly right: Expression;
      readonly span: Span;
    };

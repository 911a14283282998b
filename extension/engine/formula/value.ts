import type { Shape } from '../geometry/shape.ts';
import type { Dimension } from '../units/dimension.ts';

/** The type a cell or an expression has before it is calculated. */
export type ValueType =
  | { readonly kind: 'quantity'; readonly dimension: Dimension }
  /** A literal 0 or a blank: fits every dimension. */
  | { readonly kind: 'zero' }
  | { readonly kind: 'blank' }
  | { readonly kind: 'text' }
  | { readonly kind: 'yes-no' }
  | { readonly kind: 'choice'; readonly choices: readonly string[] }
  | { readonly kind: 'shape' }
  | { readonly kind: 'link'; readonly tables: readonly string[] };

/** A calculated value. Quantities are in base units; shapes in mm. */
export type CellValue =
  | { readonly kind: 'quantity'; readonly base: number; readonly dimension: Dimension }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'yes-no'; readonly yes: boolean }
  | { readonly kind: 'choice'; readonly word: string }
  | { readonly kind: 'shape'; readonly shape: Shape }
  | { readonly kind: 'link'; readonly id: string };

import type { Span } from '../problems.ts';
import type { Unit } from '../units/unit-words.ts';
import type { Step } from './expression.ts';

/** A piece of a formula's text. */
export type Token =
  | {
      readonly kind: 'quantity';
      readonly number: number;
      readonly unit: Unit | undefined;
      readonly span: Span;
    }
  | { readonly kind: 'text'; readonly text: string; readonly span: Span }
  /** A word, or words joined by dots: a path or a function's name. */
  | { readonly kind: 'name'; readonly steps: readonly Step[]; readonly span: Span }
  | { readonly kind: 'symbol'; readonly symbol: string; readonly span: Span }
  | { readonly kind: 'end'; readonly span: Span };

/** True for one of these signs. */
export function isSymbol(token: Token | undefined, ...symbols: readonly string[]): boolean {
  return token?.kind === 'symbol' && symbols.includes(token.symbol);
}

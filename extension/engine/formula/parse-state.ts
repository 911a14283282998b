import type { Problem, Span } from '../problems.ts';
import type { Expression } from './expression.ts';
import type { Token } from './token.ts';

/** Where the parser stands in one formula. */
export interface ParseState {
  readonly text: string;
  readonly tokens: readonly Token[];
  index: number;
  depth: number;
  /** The first fault; the parser stops at it. */
  problem: Problem | undefined;
}

/** The token at the parser's place; the `end` token when there are no more. */
export function currentToken(state: ParseState): Token {
  const end = state.text.length;
  return state.tokens[state.index] ?? { kind: 'end', span: { start: end, end } };
}

/** Notes a fault (the first one counts) and answers with nothing. */
export function fault(state: ParseState, problem: Problem): Expression | undefined {
  state.problem ??= problem;
  return undefined;
}

/** The text of a range. */
export function textOf(state: ParseState, span: Span): string {
  return state.text.slice(span.start, span.end);
}

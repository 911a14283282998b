import type { Problem, Span } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { BinaryOperator, Expression, UnaryOperator } from './expression.ts';
import { syntaxProblem } from './formula-problems.ts';
import { operatorBinding, signBinding } from './operators.ts';
import { parseCall } from './parse-call.ts';
import { tokenDimension } from './number-token.ts';
import { currentToken, fault, textOf, type ParseState } from './parse-state.ts';
import { isSymbol, type Token } from './token.ts';
import { tokensOf } from './tokens.ts';

export interface Parsed {
  /** Undefined when anything is wrong. */
  readonly expression: Expression | undefined;
  readonly problems: readonly Problem[];
}

/** More nesting than this is no formula of a person and would exhaust the stack. */
const deepest = 100;
const longest = 2000;

const defaults: UnitSettings = { units: 'in', currency: 'USD' };

function quantityOf(token: Token & { readonly kind: 'quantity' }, sign: 1 | -1): Expression {
  const { unit, number, span } = token;
  const base = sign * number * (unit?.factor ?? 1) + (unit?.offset ?? 0);
  const value = { base, dimension: tokenDimension(unit) };
  return { kind: 'quantity', value, unit: unit?.word ?? '', span };
}

function signed(state: ParseState, operator: UnaryOperator, start: number): Expression | undefined {
  state.index += 1;
  const token = currentToken(state);
  if (token.kind === 'quantity' && token.unit?.dimension.tag === 'point') {
    state.index += 1;
    const literal = quantityOf(token, operator === '-' ? -1 : 1);
    return { ...literal, span: { start, end: token.span.end } };
  }
  const operand = expressionFrom(state, signBinding);
  if (operand === undefined) return undefined;
  return { kind: 'unary', operator, operand, span: { start, end: operand.span.end } };
}

function bracketed(state: ParseState, open: Span): Expression | undefined {
  state.index += 1;
  const inner = expressionFrom(state, 0);
  if (inner === undefined) return undefined;
  const close = currentToken(state);
  if (!isSymbol(close, ')')) return unclosed(state, open);
  state.index += 1;
  return { ...inner, span: { start: open.start, end: close.span.end } };
}

function unclosed(state: ParseState, open: Span): Expression | undefined {
  const token = currentToken(state);
  if (token.kind === 'end') {
    const before = state.text.slice(0, open.start).trim();
    const after = before === '' ? '=' : before.slice(-20);
    return fault(state, syntaxProblem('formula-bracket-open', { after }, { span: open }));
  }
  return leftOver(state, token);
}

function missingValue(state: ParseState, token: Token): Expression | undefined {
  const before = state.tokens[state.index - 1];
  const place = before === undefined ? 'after =' : `after ${textOf(state, before.span)}`;
  const where = token.kind === 'end' ? `${place} at the end` : place;
  const span =
    token.kind === 'end' && before !== undefined
      ? { start: before.span.start, end: token.span.end }
      : token.span;
  return fault(state, syntaxProblem('formula-value-missing', { where }, { span }));
}

/** A sign alone between the separators of a call. */
function isArgument(state: ParseState): boolean {
  const [before, after] = [state.tokens[state.index - 1], state.tokens[state.index + 1]];
  return isSymbol(before, '(', ',', ';') && isSymbol(after, ')', ',', ';');
}

/** `%` as the unit a function is given: SHOW(percent, %). */
function percentUnit(state: ParseState, span: Span): Expression {
  state.index += 1;
  return { kind: 'path', steps: [{ word: '%', span }], span };
}

function primary(state: ParseState): Expression | undefined {
  const token = currentToken(state);
  switch (token.kind) {
    case 'quantity':
      state.index += 1;
      return quantityOf(token, 1);
    case 'text':
      state.index += 1;
      return { kind: 'text', text: token.text, span: token.span };
    case 'name':
      return parseCall(state, token, expressionFrom);
    case 'symbol':
      if (token.symbol === '+' || token.symbol === '-') {
        return signed(state, token.symbol, token.span.start);
      }
      if (token.symbol === '(') return bracketed(state, token.span);
      if (token.symbol === '%' && isArgument(state)) return percentUnit(state, token.span);
      return missingValue(state, token);
    case 'end':
      return missingValue(state, token);
  }
}

function percented(state: ParseState, operand: Expression, sign: Token): Expression | undefined {
  state.index += 1;
  const next = currentToken(state);
  const span = { start: operand.span.start, end: sign.span.end };
  if (next.kind !== 'quantity') return { kind: 'percent', operand, span };
  const left = textOf(state, operand.span);
  const right = textOf(state, next.span);
  const whole = { start: span.start, end: next.span.end };
  const details = {
    text: textOf(state, whole),
    first: `${left}%*${right}`,
    second: `MOD(${left}, ${right})`,
  };
  return fault(state, syntaxProblem('literal-ambiguous', details, { span: whole }));
}

function joined(state: ParseState, left: Expression, sign: Token): Expression | undefined {
  if (sign.kind !== 'symbol') return undefined;
  if (sign.symbol === '%') return percented(state, left, sign);
  state.index += 1;
  const right = expressionFrom(state, operatorBinding.get(sign.symbol) ?? 0);
  if (right === undefined) return undefined;
  const span = { start: left.span.start, end: right.span.end };
  return { kind: 'binary', operator: sign.symbol as BinaryOperator, left, right, span };
}

function expressionFrom(state: ParseState, above: number): Expression | undefined {
  state.depth += 1;
  if (state.depth > deepest) {
    return fault(state, syntaxProblem('formula-too-long', {}, { span: currentToken(state).span }));
  }
  let left = primary(state);
  while (left !== undefined) {
    const sign = currentToken(state);
    const strength = sign.kind === 'symbol' ? (operatorBinding.get(sign.symbol) ?? 0) : 0;
    if (strength <= above) break;
    left = joined(state, left, sign);
  }
  state.depth -= 1;
  return left;
}

function leftOver(state: ParseState, token: Token): Expression | undefined {
  const { span } = token;
  const before = state.tokens[state.index - 1];
  const left = before === undefined ? '=' : textOf(state, before.span);
  const right = textOf(state, span);
  if (isSymbol(token, ')'))
    return fault(state, syntaxProblem('formula-bracket-extra', {}, { span }));
  if (isSymbol(token, ',', ';')) {
    return fault(state, syntaxProblem('formula-separator', { separator: right }, { span }));
  }
  if (isSymbol(token, '.')) {
    return fault(state, syntaxProblem('formula-dot', { path: left }, { span }));
  }
  const units = before?.kind === 'quantity' && token.kind === 'quantity';
  const code =
    units && before.unit !== undefined && token.unit !== undefined
      ? 'formula-join-units'
      : 'formula-operator-missing';
  const whole = { start: before?.span.start ?? 0, end: span.end };
  return fault(state, syntaxProblem(code, { left, right }, { span: whole }));
}

function parsedTokens(state: ParseState): Expression | undefined {
  const first = currentToken(state);
  if (first.kind === 'end') {
    const span = { start: 0, end: state.text.length };
    return fault(state, syntaxProblem('formula-empty', {}, { span }));
  }
  if (state.tokens.length > longest) {
    const span = { start: 0, end: state.text.length };
    return fault(state, syntaxProblem('formula-too-long', {}, { span }));
  }
  const expression = expressionFrom(state, 0);
  if (expression === undefined) return undefined;
  const rest = currentToken(state);
  return rest.kind === 'end' ? expression : leftOver(state, rest);
}

/**
 * Reads a formula as a person writes it. Ranges count from the `=`, which is offset 0. The settings say
 * which currency's code is a unit; USD and inches unless told.
 *
 * @returns the tree, or every problem that stands in its way; never throws
 */
export function parseFormula(text: string, settings: UnitSettings = defaults): Parsed {
  if (!text.startsWith('=')) {
    const span = { start: 0, end: text.length };
    return {
      expression: undefined,
      problems: [syntaxProblem('formula-no-equals', { text }, { span })],
    };
  }
  const { tokens, problems } = tokensOf(text, 1, settings);
  const state: ParseState = { text, tokens, index: 0, depth: 0, problem: undefined };
  const expression = parsedTokens(state);
  // A fault of a word or number often leaves the rest unreadable; its own sentence is enough.
  if (problems.length > 0) return { expression: undefined, problems };
  return state.problem === undefined
    ? { expression, problems: [] }
    : { expression: undefined, problems: [state.problem] };
}

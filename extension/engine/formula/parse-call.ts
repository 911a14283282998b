import type { Span } from '../problems.ts';
import type { Expression, Step } from './expression.ts';
import { syntaxProblem } from './formula-problems.ts';
import { currentToken, fault, textOf, type ParseState } from './parse-state.ts';
import { isSymbol, type Token } from './token.ts';

type Name = Token & { readonly kind: 'name' };
type ParseExpression = (state: ParseState, above: number) => Expression | undefined;

const examples = { all: 'all(ring).wall', on: 'on(base, ring).wall' };

function bracketFault(state: ParseState, name: Name): Expression | undefined {
  const after = textOf(state, name.span);
  const start = name.span.start;
  const end = Math.min(state.text.length, name.span.end + 1);
  return fault(state, syntaxProblem('formula-bracket-open', { after }, { span: { start, end } }));
}

function argumentFault(state: ParseState, name: Name): Expression | undefined {
  const token = currentToken(state);
  if (token.kind === 'end') return bracketFault(state, name);
  const before = state.tokens[state.index - 1];
  const left = before === undefined ? '' : textOf(state, before.span);
  const right = textOf(state, token.span);
  const span = { start: before?.span.start ?? token.span.start, end: token.span.end };
  if (token.kind === 'symbol' && token.symbol === '.') {
    return fault(state, syntaxProblem('formula-dot', { path: left }, { span }));
  }
  const units =
    before?.kind === 'quantity' &&
    token.kind === 'quantity' &&
    before.unit !== undefined &&
    token.unit !== undefined;
  const code = units ? 'formula-join-units' : 'formula-operator-missing';
  return fault(state, syntaxProblem(code, { left, right }, { span }));
}

function argumentsOf(
  state: ParseState,
  name: Name,
  parse: ParseExpression,
): { readonly args: readonly (Expression | undefined)[]; readonly end: number } | undefined {
  const args: (Expression | undefined)[] = [];
  state.index += 2;
  const first = currentToken(state);
  if (isSymbol(first, ')')) {
    state.index += 1;
    return { args, end: first.span.end };
  }
  for (;;) {
    const empty = isSymbol(currentToken(state), ',', ';', ')');
    if (currentToken(state).kind === 'end') {
      bracketFault(state, name);
      return undefined;
    }
    const argument = empty ? undefined : parse(state, 0);
    if (argument === undefined && !empty) return undefined;
    args.push(argument);
    const after = currentToken(state);
    if (!isSymbol(after, ',', ';', ')')) {
      argumentFault(state, name);
      return undefined;
    }
    state.index += 1;
    if (isSymbol(after, ')')) return { args, end: after.span.end };
  }
}

function listWords(state: ParseState, name: Name): readonly Name[] | undefined {
  const words: Name[] = [];
  const form = name.steps[0]?.word === 'on' ? 'on' : 'all';
  state.index += 2;
  for (;;) {
    const token = currentToken(state);
    if (token.kind === 'end') {
      bracketFault(state, name);
      return undefined;
    }
    if (token.kind !== 'name') {
      const details = { form, example: examples[form] };
      fault(state, syntaxProblem('formula-list-kind', details, { span: token.span }));
      return undefined;
    }
    words.push(token);
    state.index += 1;
    const after = currentToken(state);
    if (!isSymbol(after, ',', ';', ')')) {
      argumentFault(state, name);
      return undefined;
    }
    state.index += 1;
    if (isSymbol(after, ')')) return words;
  }
}

function joinedStep(name: Name): Step {
  return { word: name.steps.map((step) => step.word).join('.'), span: name.span };
}

function listColumn(state: ParseState, start: number): Step | undefined {
  const end = state.tokens[state.index - 1]?.span.end ?? start;
  const column = state.tokens[state.index + 1];
  if (isSymbol(currentToken(state), '.') && column?.kind === 'name') {
    state.index += 2;
    return joinedStep(column);
  }
  const span: Span = { start, end };
  const list = textOf(state, span);
  fault(state, syntaxProblem('formula-list-column', { list }, { span }));
  return undefined;
}

function parseList(state: ParseState, name: Name): Expression | undefined {
  const form = name.steps[0]?.word === 'on' ? 'on' : 'all';
  const words = listWords(state, name);
  if (words === undefined) return undefined;
  const { start } = name.span;
  const kinds = (form === 'on' ? words.slice(1) : words).map(joinedStep);
  const row = form === 'on' ? words[0]?.steps : undefined;
  if (kinds.length === 0) {
    const details = { form, example: examples[form] };
    const span = { start, end: state.tokens[state.index - 1]?.span.end ?? start };
    return fault(state, syntaxProblem('formula-list-kind', details, { span }));
  }
  const column = listColumn(state, start);
  if (column === undefined) return undefined;
  const span = { start, end: column.span.end };
  return row === undefined
    ? { kind: 'list', form, kinds, column, span }
    : { kind: 'list', form, row, kinds, column, span };
}

function constantCall(name: Name): Expression | undefined {
  const word = name.steps.length === 1 ? name.steps[0]?.word : undefined;
  if (word !== 'TRUE' && word !== 'FALSE') return undefined;
  return { kind: 'call', name: word, nameSpan: name.span, args: [], span: name.span };
}

/** Reads what begins with a name: a list, a function with its arguments, or a path. */
export function parseCall(
  state: ParseState,
  name: Name,
  parse: ParseExpression,
): Expression | undefined {
  if (!isSymbol(state.tokens[state.index + 1], '(')) {
    state.index += 1;
    return constantCall(name) ?? { kind: 'path', steps: name.steps, span: name.span };
  }
  const written = textOf(state, name.span);
  if (written === 'all' || written === 'on') return parseList(state, name);
  const call = argumentsOf(state, name, parse);
  if (call === undefined) return undefined;
  return {
    kind: 'call',
    name: written.toUpperCase(),
    nameSpan: name.span,
    args: call.args,
    span: { start: name.span.start, end: call.end },
  };
}

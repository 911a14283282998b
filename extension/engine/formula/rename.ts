import type { Span } from '../problems.ts';
import type { Step } from './expression.ts';
import { isSymbol, type Token } from './token.ts';
import { tokensOf } from './tokens.ts';

type Bracket = 'call' | 'on' | 'all' | 'group';

interface Renaming {
  readonly from: string;
  readonly isColumn: (path: string) => boolean;
}

function bracketAfter(name: Token | undefined): Bracket {
  if (name?.kind !== 'name') return 'group';
  const word = name.steps.length === 1 ? name.steps[0]?.word : undefined;
  return word === 'on' || word === 'all' ? word : 'call';
}

/** The word of a path that names a row: `base` in base.area, `cavity` in job.cavity. */
function namingStep(steps: readonly Step[], { from, isColumn }: Renaming): Step | undefined {
  const [first, second] = steps;
  if (second === undefined) return undefined;
  if (first?.word !== 'job' && first?.word !== 'book')
    return first?.word === from ? first : undefined;
  const path = steps.map((step) => step.word).join('.');
  return second.word === from && !isColumn(path) ? second : undefined;
}

/** A word alone between the separators of a call is a row unless it is a column. */
function isLoneArgument(tokens: readonly Token[], index: number): boolean {
  const [before, after] = [tokens[index - 1], tokens[index + 1]];
  return isSymbol(before, '(', ',', ';') && isSymbol(after, ')', ',', ';');
}

function loneStep(
  tokens: readonly Token[],
  index: number,
  at: { readonly bracket: Bracket | undefined; readonly renaming: Renaming },
): Step | undefined {
  const token = tokens[index];
  const step = token?.kind === 'name' ? token.steps[0] : undefined;
  const { from, isColumn } = at.renaming;
  if (step?.word !== from || at.bracket !== 'call' || !isLoneArgument(tokens, index))
    return undefined;
  return isColumn(from) ? undefined : step;
}

/** The row of `on(base, ring)` stands first in its brackets; the kinds behind it are no rows. */
function listStep(tokens: readonly Token[], index: number, renaming: Renaming): Step | undefined {
  const token = tokens[index];
  if (token?.kind !== 'name' || !isSymbol(tokens[index - 1], '(')) return undefined;
  return token.steps[0]?.word === renaming.from ? token.steps[0] : undefined;
}

function spansOf(tokens: readonly Token[], renaming: Renaming): readonly Span[] {
  const open: Bracket[] = [];
  const spans: Span[] = [];
  for (const [index, token] of tokens.entries()) {
    if (isSymbol(token, '(')) open.push(bracketAfter(tokens[index - 1]));
    if (isSymbol(token, ')')) open.pop();
    if (token.kind !== 'name' || isSymbol(tokens[index + 1], '(')) continue;
    if (isSymbol(tokens[index - 1], '.')) continue;
    const bracket = open.at(-1);
    const step =
      bracket === 'on'
        ? listStep(tokens, index, renaming)
        : bracket === 'all'
          ? undefined
          : (namingStep(token.steps, renaming) ?? loneStep(tokens, index, { bracket, renaming }));
    if (step !== undefined) spans.push(step.span);
  }
  return spans;
}

/**
 * A formula after the row `from` was renamed; everything else stays byte for byte, and a formula with
 * faults is renamed as far as its words can be told. `isColumn` is asked where a word could be something
 * else than a row: the word alone as an argument (a column of this row, a choice), or `job.NAME` and
 * `book.NAME` (a setting).
 *
 * @example renamedInFormula('=base.area * 2', 'base', 'left_base', () => false) // '=left_base.area * 2'
 */
export function renamedInFormula(
  text: string,
  from: string,
  to: string,
  isColumn: (path: string) => boolean,
): string {
  if (!text.startsWith('=')) return text;
  const { tokens } = tokensOf(text, 1, { units: 'in', currency: 'USD' });
  let renamed = text;
  for (const { start, end } of [...spansOf(tokens, { from, isColumn })].reverse()) {
    renamed = renamed.slice(0, start) + to + renamed.slice(end);
  }
  return renamed;
}

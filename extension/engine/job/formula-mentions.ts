import type { Expression, Step } from '../formula/expression.ts';
import { parseFormula } from '../formula/parse.ts';
import type { Span } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { namedRowTables } from './columns.ts';

/** What a mention is looked for in: the row's own columns come before ids. */
export interface MentionContext {
  readonly settings: UnitSettings;
  /** Link columns of the row the formula stands in. */
  readonly links: ReadonlySet<string>;
  /** All columns of that row. */
  readonly columns: ReadonlySet<string>;
}

interface Target {
  readonly table: string;
  readonly id: string;
}

const roots: Readonly<Record<string, string>> = { job: 'measure', book: 'constant' };

function pathMention(
  steps: readonly Step[],
  target: Target,
  alone: boolean,
  context: MentionContext,
): Step | undefined {
  const [first, second] = steps;
  if (first === undefined) return undefined;
  if (second !== undefined && Object.hasOwn(roots, first.word)) {
    return roots[first.word] === target.table && second.word === target.id ? second : undefined;
  }
  if (first.word !== target.id || !namedRowTables.includes(target.table)) return undefined;
  if (second !== undefined) return context.links.has(first.word) ? undefined : first;
  return alone && !context.columns.has(first.word) ? first : undefined;
}

function listMentions(
  list: Extract<Expression, { readonly kind: 'list' }>,
  target: Target,
  context: MentionContext,
): readonly Step[] {
  const { id, table } = target;
  if (table === 'kind') return list.kinds.filter((kind) => kind.word === id);
  const [row] = list.row ?? [];
  const isRow = row?.word === id && namedRowTables.includes(table) && !context.links.has(id);
  return isRow ? [row] : [];
}

function mentions(
  expression: Expression,
  target: Target,
  alone: boolean,
  context: MentionContext,
): readonly Step[] {
  const inner = (one: Expression | undefined, argument = false): readonly Step[] =>
    one === undefined ? [] : mentions(one, target, argument, context);
  switch (expression.kind) {
    case 'path': {
      const step = pathMention(expression.steps, target, alone, context);
      return step === undefined ? [] : [step];
    }
    case 'list':
      return listMentions(expression, target, context);
    case 'call':
      return expression.args.flatMap((argument) => inner(argument, true));
    case 'unary':
    case 'percent':
      return inner(expression.operand);
    case 'binary':
      return [...inner(expression.left), ...inner(expression.right)];
    case 'quantity':
    case 'text':
      return [];
  }
}

/**
 * Ranges in a formula (its `=` is offset 0) where a row is mentioned by its id: as the first step of
 * a path, as the row of a list, alone as an argument, or behind `job` or `book`. None where the
 * formula cannot be read.
 */
export function mentionsIn(
  formula: string,
  target: Target,
  context: MentionContext,
): readonly Span[] {
  if (!formula.startsWith('=') || !formula.includes(target.id)) return [];
  const { expression } = parseFormula(formula, context.settings);
  if (expression === undefined) return [];
  return mentions(expression, target, false, context)
    .map((step) => step.span)
    .sort((a, b) => a.start - b.start);
}

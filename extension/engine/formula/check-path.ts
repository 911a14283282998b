import type { Problem } from '../problems.ts';
import { sameDimension } from '../units/dimension.ts';
import { isUnitWord } from '../units/unit-words.ts';
import { noteMissing, noteReads, refused, untyped, type Checking, type Want } from './checking.ts';
import type { Checked } from './checked.ts';
import type { Expression, Step } from './expression.ts';
import { expressionText } from './expression-text.ts';
import { formulaProblem } from './formula-problems.ts';
import { suggestion } from './near-name.ts';
import type { CellRef, Scope } from './scope.ts';
import type { ValueType } from './value.ts';
import { joinedType, typeName } from './value-type.ts';

type Path = Expression & { readonly kind: 'path' };
type List = Expression & { readonly kind: 'list' };

/** A word that the place itself knows: a choice, or yes and no. */
function wordOf(path: Path, want: Want): Checked | undefined {
  const word = path.steps.length === 1 ? path.steps[0]?.word : undefined;
  if (word === undefined || want === 'any') return undefined;
  const { span } = path;
  if (want.kind === 'choice' && want.choices.includes(word)) {
    return { kind: 'constant', type: want, value: { kind: 'choice', word }, span };
  }
  if (want.kind === 'yes-no' && (word === 'yes' || word === 'no')) {
    const value = { kind: 'yes-no', yes: word === 'yes' } as const;
    return { kind: 'constant', type: want, value, span };
  }
  return undefined;
}

/** The first word of a path that means nothing after those before it, with the near ones. */
function likeness(steps: readonly Step[], scope: Scope): string {
  const words = steps.map((step) => step.word);
  for (const [index, word] of words.entries()) {
    const names = scope.names(words.slice(0, index)).map((name) => name.word);
    if (names.length === 0) return '';
    if (!names.includes(word)) return suggestion(word, names);
  }
  return '';
}

function withLikeness(problem: Problem, steps: readonly Step[], scope: Scope): Problem {
  if (problem.message.includes('?') || problem.message.includes(' mean ')) return problem;
  return { ...problem, message: problem.message + likeness(steps, scope) };
}

function unknownWord(path: Path, problem: Problem, scope: Scope): Problem {
  const name = expressionText(path);
  if (path.steps.length > 1) return withLikeness(problem, path.steps, scope);
  const entry = scope.catalogue.get(name.toUpperCase());
  if (isUnitWord(name)) return formulaProblem('name-is-unit', { name });
  if (entry !== undefined && name === name.toUpperCase()) {
    const parameters = entry.parameters.map((parameter) => parameter.name).join(', ');
    return formulaProblem('function-needs-brackets', { name: entry.name, parameters });
  }
  if (scope.row(path.steps).found) return formulaProblem('row-not-value', { name });
  return withLikeness(problem, path.steps, scope);
}

/** The cell a path ends in, or a word that the place wants. */
export function checkPath(checking: Checking, path: Path, want: Want): Checked | undefined {
  const word = wordOf(path, want);
  if (word !== undefined) return word;
  const { scope } = checking;
  const resolved = scope.cell(path.steps);
  if (!resolved.found) {
    noteMissing(checking, resolved);
    const problem = unknownWord(path, resolved.problem, scope);
    return refused(checking, problem, resolved.problem.span ?? path.span);
  }
  const { cell, links, type } = resolved.thing;
  noteReads(checking, [cell, ...links]);
  return { kind: 'cell', cell, type, span: path.span };
}

/** The row that a path names. */
export function checkRow(checking: Checking, path: Path): Checked | undefined {
  const { scope } = checking;
  const resolved = scope.row(path.steps);
  if (!resolved.found) {
    noteMissing(checking, resolved);
    const problem = withLikeness(resolved.problem, path.steps, scope);
    return refused(checking, problem, problem.span ?? path.span);
  }
  const { row, links } = resolved.thing;
  noteReads(checking, links);
  checking.rows.set(`${row.table}\n${row.id}\n${String(row.occurrence)}`, row);
  return { kind: 'row', row, type: { kind: 'link', tables: [row.table] }, span: path.span };
}

function compatible(a: ValueType, b: ValueType): boolean {
  if (a.kind === 'quantity' && b.kind === 'quantity')
    return sameDimension(a.dimension, b.dimension);
  return joinedType(a, b) !== undefined;
}

interface ListCell {
  readonly cell: CellRef;
  readonly type: ValueType;
}

/** The type all filled cells of a list share. */
function listType(
  checking: Checking,
  list: List,
  cells: readonly ListCell[],
): ValueType | undefined {
  const filled = cells.filter(({ type }) => type.kind !== 'blank');
  const first = filled.find(({ type }) => type.kind !== 'zero') ?? filled[0];
  if (first === undefined) return { kind: 'blank' };
  const other = filled.find(({ type }) => !compatible(first.type, type));
  if (other === undefined) return first.type;
  const details = {
    list: expressionText(list),
    first: `${first.cell.id}.${first.cell.column}`,
    firstFound: typeName(first.type),
    second: `${other.cell.id}.${other.cell.column}`,
    secondFound: typeName(other.type),
  };
  return untyped(checking, formulaProblem('list-mixed', details), list.span);
}

/** The cells of a list, all of one dimension. */
export function checkList(checking: Checking, list: List): Checked | undefined {
  const { form, row, kinds, column, span } = list;
  const resolved = checking.scope.list(form, row, kinds, column);
  if (!resolved.found) {
    noteMissing(checking, resolved);
    return refused(checking, resolved.problem, resolved.problem.span ?? span);
  }
  const { cells, links, watches } = resolved.thing;
  noteReads(checking, links);
  noteReads(
    checking,
    cells.map(({ cell }) => cell),
  );
  noteReads(
    checking,
    cells.flatMap(({ pieces }) => pieces ?? []),
  );
  for (const watch of watches) checking.watches.add(watch);
  const type = listType(checking, list, cells);
  if (type === undefined) return undefined;
  return {
    kind: 'list',
    cells: cells.map(({ cell, pieces }) => ({ cell, pieces })),
    type,
    span,
  };
}

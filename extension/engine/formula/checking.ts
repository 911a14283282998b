import type { Problem, Span } from '../problems.ts';
import type { Checked } from './checked.ts';
import type { Expression } from './expression.ts';
import type { CellRef, NamedRow, Resolved, Scope } from './scope.ts';
import type { ValueType } from './value.ts';

/** What the place of an expression wants; it tells choice words from columns. */
export type Want = ValueType | 'any';

/** One formula being checked: what was found so far, and the way down the tree. */
export interface Checking {
  readonly scope: Scope;
  readonly problems: Problem[];
  readonly reads: Map<string, CellRef>;
  readonly rows: Map<string, NamedRow>;
  readonly watches: Set<string>;
  readonly check: (expression: Expression, want: Want) => Checked | undefined;
}

/** Notes a problem. */
export function noteProblem(checking: Checking, problem: Problem, span?: Span): void {
  checking.problems.push(span === undefined ? problem : { ...problem, span });
}

/** Notes a problem in place of an expression: there is none. */
export function refused(checking: Checking, problem: Problem, span?: Span): Checked | undefined {
  noteProblem(checking, problem, span);
  return undefined;
}

/** Notes a problem in place of a type: there is none. */
export function untyped(checking: Checking, problem: Problem, span?: Span): ValueType | undefined {
  noteProblem(checking, problem, span);
  return undefined;
}

/** Notes cells that the formula depends on. */
export function noteReads(checking: Checking, cells: readonly CellRef[]): void {
  for (const cell of cells) {
    const key = `${cell.table}\n${cell.id}\n${String(cell.occurrence)}\n${cell.column}`;
    checking.reads.set(key, cell);
  }
}

/** Notes what an unresolved name waits for. */
export function noteMissing(
  checking: Checking,
  missing: Resolved<unknown> & { readonly found: false },
): void {
  noteReads(checking, missing.links ?? []);
  for (const watch of missing.watches ?? []) checking.watches.add(watch);
}

import type { Step } from '../formula/expression.ts';
import type { Book } from '../book/book.ts';
import { namedRowTables } from '../job/columns.ts';
import { failed, ok, type Result } from '../result.ts';
import { suggestion } from '../formula/near-name.ts';
import type { Row } from './row.ts';
import { rowAtEnd, type Walk } from './walking.ts';
import { workbookProblem } from './workbook-problems.ts';

/** A list as a formula writes it. */
export interface WrittenList {
  readonly form: 'all' | 'on';
  readonly row: readonly Step[] | undefined;
  readonly kinds: readonly Step[];
  readonly column: Step;
}

interface Group {
  readonly table: string;
  /** Empty: every row of the table. */
  readonly kind: string;
}

const isTable = (word: string): boolean => namedRowTables.includes(word);

function groupOf(step: Step, book: Book): Result<Group> {
  if (isTable(step.word)) return ok({ table: step.word, kind: '' });
  const kind = book.kinds.get(step.word);
  if (kind !== undefined) return ok({ table: kind.table, kind: kind.id });
  const near = suggestion(step.word, [...book.kinds.keys(), ...namedRowTables]);
  const details = { word: step.word, suggestion: near };
  return failed(workbookProblem('list-kind-unknown', details, { span: step.span }));
}

function columnFault(groups: readonly Group[], column: Step, walk: Walk): Result<undefined> {
  for (const { table } of groups) {
    const { word, span } = column;
    if (walk.columns.late(table, word)) {
      return failed(workbookProblem('column-late', { word }, { span }));
    }
    const known = walk.columns.known(table);
    if (known.has(word)) continue;
    const details = { table, word, suggestion: suggestion(word, known) };
    return failed(workbookProblem('column-unknown', details, { span }));
  }
  return ok(undefined);
}

const inGroups = (row: Row, groups: readonly Group[]): boolean =>
  groups.some(({ table, kind }) => row.table === table && (kind === '' || row.kind === kind));

function candidates(groups: readonly Group[], walk: Walk): Iterable<Row> {
  const { store, watches } = walk;
  const found = new Set<Row>();
  for (const { table, kind } of groups) {
    watches.add(kind === '' ? `table:${table}` : `kind:${kind}`);
    for (const row of kind === '' ? store.rows(table) : store.ofKind(kind)) found.add(row);
  }
  return found;
}

/** The rows of a list in display order, without the row that asks. */
export function rowsOfList(
  from: Row,
  list: WrittenList,
  walk: Walk,
  book: Book,
): Result<readonly Row[]> {
  const groups: Group[] = [];
  for (const step of list.kinds) {
    const group = groupOf(step, book);
    if (!group.ok) return group;
    groups.push(group.value);
  }
  const fault = columnFault(groups, list.column, walk);
  if (!fault.ok) return fault;
  let rows: Iterable<Row>;
  if (list.form === 'all') rows = candidates(groups, walk);
  else {
    const ground = rowAtEnd(from, list.row ?? [], walk);
    if (!ground.ok) return ground;
    walk.watches.add(`on:${ground.value.id}`);
    rows = walk.store.allStandingOn(ground.value);
  }
  const kept = [...rows].filter((row) => row !== from && inGroups(row, groups));
  kept.sort((a, b) => (a.table === b.table ? a.position - b.position : a.table < b.table ? -1 : 1));
  return ok(kept);
}

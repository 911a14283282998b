import type { Step } from '../formula/expression.ts';
import type { Problem } from '../problems.ts';
import { namedRowTables } from '../job/columns.ts';
import { failed, ok, type Result } from '../result.ts';
import type { ColumnTypes } from './column-types.ts';
import { suggestion } from '../formula/near-name.ts';
import type { RowStore } from './row-store.ts';
import { offWord } from './row-texts.ts';
import type { Cell, Row } from './row.ts';
import { linkText } from './standing.ts';
import { workbookProblem } from './workbook-problems.ts';

/** What following names needs, and what it found out on the way. */
export interface Walk {
  readonly store: RowStore;
  readonly columns: ColumnTypes;
  /** Link cells walked through. */
  readonly links: Set<Cell>;
  readonly watches: Set<string>;
}

/** Notes that a suggestion hangs on the names of all rows there are. */
export function watchNames(walk: Walk, tables: readonly string[]): void {
  for (const table of tables) walk.watches.add(`table:${table}`);
}

/** How a name is pointed at: the range of one step. */
function at(step: Step): Partial<Problem> {
  return { span: step.span };
}

export function isLink(row: Row, column: string, walk: Walk): boolean {
  return walk.columns.declared(row.table, column)?.kind === 'link';
}

function rowLabel(row: Row): string {
  return row.cells.get('name')?.text?.text ?? row.id;
}

/** The row of a job that an id names. */
export function rowNamed(step: Step, walk: Walk): Result<Row | undefined> {
  walk.watches.add(`name:${step.word}`);
  const found = walk.store.inJob(step.word);
  if (found.length > 1) {
    const details = { id: step.word, name: step.word };
    return failed(workbookProblem('path-repeated', details, at(step)));
  }
  return ok(found[0] ?? walk.store.named('material', step.word)[0]);
}

/** The row that a link cell of a row names, or which cell to fill in. */
export function throughLink(row: Row, column: string, step: Step, walk: Walk): Result<Row> {
  const type = walk.columns.declared(row.table, column);
  if (type?.kind !== 'link') {
    return failed(workbookProblem('path-not-link', { word: step.word }, at(step)));
  }
  walk.links.add(walk.store.cell(row, column));
  const link = column.startsWith('draw.') ? column.split('.').slice(1).join(' ') : column;
  const details = { row: rowLabel(row), link, name: step.word };
  const text = linkText(row, column);
  if (text === undefined) return failed(workbookProblem('link-empty', details, at(step)));
  if (text === offWord && column.endsWith('material')) {
    return failed(workbookProblem('link-off', details, at(step)));
  }
  walk.watches.add(`name:${text}`);
  const found = type.tables.flatMap((table) => walk.store.named(table, text));
  if (found.length > 1) {
    return failed(workbookProblem('path-repeated', { id: text, name: step.word }, at(step)));
  }
  const one = found[0];
  if (one !== undefined) return ok(one);
  const tables = type.tables.join(' or ');
  return failed(workbookProblem('link-dangling', { ...details, text, tables }, at(step)));
}

function unknownStart(row: Row, step: Step, walk: Walk): Problem {
  const { store, columns } = walk;
  if (columns.known(row.table).has(step.word)) {
    return workbookProblem('path-not-link', { word: step.word }, at(step));
  }
  watchNames(walk, namedRowTables);
  const links = [...columns.known(row.table)].filter((key) => isLink(row, key, walk));
  const ids = namedRowTables.flatMap((table) => store.rows(table).map((one) => one.id));
  const near = suggestion(step.word, [...links, ...ids]);
  return workbookProblem('path-unknown', { word: step.word, suggestion: near }, at(step));
}

/** The row that a path of an id, or of links from this row, ends in. */
export function rowAtEnd(from: Row, steps: readonly Step[], walk: Walk): Result<Row> {
  const [first, ...rest] = steps;
  if (first === undefined) return ok(from);
  const linked = isLink(from, first.word, walk);
  const start = linked ? throughLink(from, first.word, first, walk) : rowNamed(first, walk);
  if (!start.ok) return start;
  if (start.value === undefined) return failed(unknownStart(from, first, walk));
  let row = start.value;
  if (rest.length + (linked ? 1 : 0) > 3) {
    const path = steps.map((step) => step.word).join('.');
    return failed(workbookProblem('path-too-long', { path }, at(first)));
  }
  for (const step of rest) {
    const next = throughLink(row, step.word, step, walk);
    if (!next.ok) return next;
    row = next.value;
  }
  return ok(row);
}

/** A cell of a row by its column's name, if formulas may read it. */
export function cellOf(row: Row, step: Step, walk: Walk): Result<Cell> {
  const { columns, store } = walk;
  const { word } = step;
  if (row.source.broken) {
    const details = { id: row.id, name: `${row.id}.${word}` };
    return failed(workbookProblem('row-broken', details, at(step)));
  }
  if (columns.late(row.table, word)) {
    return failed(workbookProblem('column-late', { word }, at(step)));
  }
  const known = columns.known(row.table);
  if (known.has(word) || row.cells.get(word)?.text !== undefined) return ok(store.cell(row, word));
  // The row may get such a cell later, or the job such a row.
  walk.links.add(store.cell(row, word));
  walk.watches.add(`name:${word}`);
  if (store.inJob(word).length > 0) {
    const details = { word, column: row.table === 'measure' ? 'value' : 'size' };
    return failed(workbookProblem('path-is-row', details, at(step)));
  }
  const near = suggestion(word, known);
  const details = { table: row.table, word, suggestion: near };
  return failed(workbookProblem('column-unknown', details, at(step)));
}

import type { Checked } from '../formula/checked.ts';
import type { FunctionEntry } from '../formula/catalogue.ts';
import type { NamedRow } from '../formula/scope.ts';
import type { ColumnTypes } from './column-types.ts';
import type { RowStore } from './row-store.ts';
import { rowKeyOf, type Cell, type Row } from './row.ts';

/** A row that a function of rows looks at, with the cells of it that the function reads. */
export interface RowSeen {
  readonly row: Row;
  readonly cells: readonly Cell[];
}

/** Where a function of rows looks. */
export interface Sight {
  readonly store: RowStore;
  readonly columns: ColumnTypes;
}

const nothingRead: readonly string[] = [];

function columnsRead(row: Row, { rows }: FunctionEntry, { columns }: Sight): readonly string[] {
  const read = rows?.standing?.(row.kind) ?? rows?.reads ?? nothingRead;
  if (read.length === 0) return read;
  // In a table without such a column nothing can ever stand there.
  const known = columns.known(row.table);
  return read.filter((column) => known.has(column));
}

/** Rows that stand on one, without the row that asks and what stands on it. */
function standingRows(given: Row, asking: Row | undefined, store: RowStore): Iterable<Row> {
  const all = store.allStandingOn(given);
  if (asking === undefined || asking === given) return all;
  const seen = new Set(all);
  // What stands on the row that asks is worked out from its answer.
  seen.delete(asking);
  for (const one of store.allStandingOn(asking)) seen.delete(one);
  return seen;
}

function asDisplayed({ row: a }: RowSeen, { row: b }: RowSeen): number {
  return a.table === b.table ? a.position - b.position : a.table < b.table ? -1 : 1;
}

/**
 * What a function of rows looks at: the row given, then those that stand on it, as displayed; the ones
 * of which it reads nothing are left out.
 */
export function rowsSeen(
  given: Row,
  asking: Row | undefined,
  entry: FunctionEntry,
  sight: Sight,
): readonly RowSeen[] {
  const { store } = sight;
  const seen = (row: Row, columns: readonly string[]): RowSeen => ({
    row,
    cells: columns.map((column) => store.cell(row, column)),
  });
  const standing: RowSeen[] = [];
  for (const row of standingRows(given, asking, store)) {
    const columns = columnsRead(row, entry, sight);
    if (columns.length > 0 && row !== given) standing.push(seen(row, columns));
  }
  return [seen(given, entry.rows?.reads ?? nothingRead), ...standing.sort(asDisplayed)];
}

export function rowOf(named: NamedRow, store: RowStore): Row | undefined {
  return store.byKey(rowKeyOf(named.table, named.id, named.occurrence));
}

function callsIn(checked: Checked | undefined, found: [FunctionEntry, NamedRow][]): void {
  if (checked?.kind === 'call') {
    const row = checked.args.find((arg) => arg?.kind === 'row');
    if (checked.entry.rows !== undefined && row?.kind === 'row')
      found.push([checked.entry, row.row]);
    for (const arg of checked.args) callsIn(arg, found);
  } else if (checked?.kind === 'negative') callsIn(checked.operand, found);
  else if (checked?.kind === 'binary') {
    callsIn(checked.left, found);
    callsIn(checked.right, found);
  }
}

/** Cells that functions of rows in this formula read, and the rows whose standing rows they hang on. */
export function readsOfRowFunctions(
  checked: Checked | undefined,
  asking: Row,
  sight: Sight,
): { readonly cells: readonly Cell[]; readonly watches: readonly string[] } {
  const found: [FunctionEntry, NamedRow][] = [];
  callsIn(checked, found);
  const cells: Cell[] = [];
  const watches: string[] = [];
  for (const [entry, named] of found) {
    const given = rowOf(named, sight.store);
    if (given === undefined) continue;
    watches.push(`on:${given.id}`, `on:${asking.id}`);
    for (const seen of rowsSeen(given, asking, entry, sight)) cells.push(...seen.cells);
  }
  return { cells, watches };
}

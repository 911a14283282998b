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
function rowsSeen(
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

function rowOf(named: NamedRow, store: RowStore): Row | undefined {
  return store.byKey(rowKeyOf(named.table, named.id, named.occurrence));
}

type Call = Extract<Checked, { kind: 'call' }>;

/** The row that a call gives to a function of rows. */
function rowGiven({ entry, args }: Call, store: RowStore): Row | undefined {
  const arg = args.find((one) => one?.kind === 'row');
  return entry.rows === undefined || arg?.kind !== 'row' ? undefined : rowOf(arg.row, store);
}

function callsIn(checked: Checked | undefined, found: Call[]): void {
  if (checked?.kind === 'call') {
    found.push(checked);
    for (const arg of checked.args) callsIn(arg, found);
  } else if (checked?.kind === 'negative') callsIn(checked.operand, found);
  else if (checked?.kind === 'binary') {
    callsIn(checked.left, found);
    callsIn(checked.right, found);
  }
}

// A call that is given a row was checked for one cell alone, and is checked anew when what it sees
// comes or goes; what it sees is asked when its cell is hung up and when it is translated.
const seenByCalls = new WeakMap<Call, readonly RowSeen[]>();

/**
 * The row that a call gives to a function of rows, with what that looks at; undefined where it gives
 * none. `asking` is the row whose cell the call stands in, undefined for one that stands nowhere.
 */
export function seenBy(
  call: Call,
  asking: Row | undefined,
  sight: Sight,
): { readonly given: Row; readonly rows: readonly RowSeen[] } | undefined {
  const given = rowGiven(call, sight.store);
  if (given === undefined) return undefined;
  const known = asking && seenByCalls.get(call);
  return { given, rows: known ?? rowsSeen(given, asking, call.entry, sight) };
}

/** Cells that functions of rows in this formula read, and the rows whose standing rows they hang on. */
export function readsOfRowFunctions(
  checked: Checked | undefined,
  asking: Row,
  sight: Sight,
): { readonly cells: readonly Cell[]; readonly watches: readonly string[] } {
  const calls: Call[] = [];
  callsIn(checked, calls);
  const cells: Cell[] = [];
  const watches: string[] = [];
  for (const call of calls) {
    const given = rowGiven(call, sight.store);
    if (given === undefined) continue;
    watches.push(`on:${given.id}`, `on:${asking.id}`);
    const rows = rowsSeen(given, asking, call.entry, sight);
    seenByCalls.set(call, rows);
    for (const seen of rows) cells.push(...seen.cells);
  }
  return { cells, watches };
}

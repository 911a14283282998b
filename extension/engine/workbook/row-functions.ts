import type { Checked } from '../formula/checked.ts';
import type { FunctionEntry } from '../formula/catalogue.ts';
import type { NamedRow } from '../formula/scope.ts';
import type { RowStore } from './row-store.ts';
import { rowKeyOf, type Cell, type Row } from './row.ts';
import { allStandingOn } from './standing.ts';

/** The rows that a function of rows looks at: the one given, then those that stand on it, as displayed. */
export function rowsSeen(given: Row, asking: Row | undefined, store: RowStore): readonly Row[] {
  const seen = new Set(allStandingOn(given, store));
  seen.delete(given);
  if (asking !== undefined && asking !== given) {
    // What stands on the row that asks is worked out from its answer.
    seen.delete(asking);
    for (const one of allStandingOn(asking, store)) seen.delete(one);
  }
  const standing = [...seen].sort((a, b) =>
    a.table === b.table ? a.position - b.position : a.table < b.table ? -1 : 1,
  );
  return [given, ...standing];
}

/** Cells of a row that a function reads; those that nobody can fill in are left out. */
export function cellsSeen(row: Row, entry: FunctionEntry, store: RowStore): readonly Cell[] {
  return (entry.rows?.reads ?? []).map((column) => store.cell(row, column));
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
  store: RowStore,
): { readonly cells: readonly Cell[]; readonly watches: readonly string[] } {
  const found: [FunctionEntry, NamedRow][] = [];
  callsIn(checked, found);
  const cells: Cell[] = [];
  const watches: string[] = [];
  for (const [entry, named] of found) {
    const given = rowOf(named, store);
    if (given === undefined) continue;
    watches.push(`on:${given.id}`, `on:${asking.id}`);
    for (const row of rowsSeen(given, asking, store)) cells.push(...cellsSeen(row, entry, store));
  }
  return { cells, watches };
}

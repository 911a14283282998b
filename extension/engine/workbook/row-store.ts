import { namedRowTables } from '../job/columns.ts';
import { newCell, newRow, type Cell, type Row, type RowSource } from './row.ts';

/** All rows at work, found by name, by kind and by what they stand on. */
export interface RowStore {
  readonly rows: (table: string) => readonly Row[];
  readonly tables: () => Iterable<string>;
  readonly byKey: (key: string) => Row | undefined;
  /** Rows of one id in a table; more than one only after a merge. */
  readonly named: (table: string, id: string) => readonly Row[];
  /** Rows of a job table of this id. */
  readonly inJob: (id: string) => readonly Row[];
  readonly ofKind: (kind: string) => readonly Row[];
  /** All rows that stand on a row, directly or through others, in no particular order. */
  readonly allStandingOn: (row: Row) => ReadonlySet<Row>;
  readonly add: (row: { table: string; id: string; occurrence: number; source: RowSource }) => Row;
  readonly remove: (row: Row) => void;
  /** Sets the display order of a table. */
  readonly order: (table: string, rows: readonly Row[]) => void;
  readonly setKind: (row: Row, kind: string) => void;
  readonly setOn: (row: Row, on: string | undefined) => void;
  readonly cell: (row: Row, column: string) => Cell;
  readonly cellNumbered: (number: number) => Cell | undefined;
}

function group(groups: Map<string, Set<Row>>, key: string): Set<Row> {
  let found = groups.get(key);
  if (found === undefined) groups.set(key, (found = new Set()));
  return found;
}

const none: readonly Row[] = [];

function inOrder(rows: ReadonlySet<Row> | undefined): readonly Row[] {
  if (rows === undefined) return none;
  // Names are asked for at every link, and most belong to one row.
  if (rows.size < 2) return [...rows];
  return [...rows].sort((a, b) =>
    a.table === b.table ? a.position - b.position : a.table < b.table ? -1 : 1,
  );
}

export function openRowStore(): RowStore {
  const tables = new Map<string, readonly Row[]>();
  const keys = new Map<string, Row>();
  const ids = new Map<string, Set<Row>>();
  const kinds = new Map<string, Set<Row>>();
  const standing = new Map<string, Set<Row>>();
  const grounds = new Map<Row, string>();
  const cells: (Cell | undefined)[] = [];
  /** What stands on rows that were asked for, until any row stands elsewhere. */
  const above = new Map<Row, ReadonlySet<Row>>();

  function standingOn(row: Row): ReadonlySet<Row> {
    const found = new Set<Row>();
    const open = [row.id];
    for (let id = open.pop(); id !== undefined; id = open.pop()) {
      for (const one of standing.get(id) ?? []) {
        if (one === row || found.has(one)) continue;
        found.add(one);
        open.push(one.id);
      }
    }
    return found;
  }

  function leave(row: Row): void {
    const ground = grounds.get(row);
    if (ground !== undefined) standing.get(ground)?.delete(row);
    grounds.delete(row);
    above.clear();
  }

  return {
    rows: (table) => tables.get(table) ?? [],
    tables: () => tables.keys(),
    byKey: (key) => keys.get(key),
    named: (table, id) => inOrder(ids.get(`${table}/${id}`)),
    inJob: (id) => inOrder(ids.get(id)),
    ofKind: (kind) => inOrder(kinds.get(kind)),
    allStandingOn: (row) => {
      const found = above.get(row) ?? standingOn(row);
      above.set(row, found);
      return found;
    },
    add: (named) => {
      const row = newRow(named);
      keys.set(row.key, row);
      group(ids, `${row.table}/${row.id}`).add(row);
      if (namedRowTables.includes(row.table)) group(ids, row.id).add(row);
      return row;
    },
    remove: (row) => {
      keys.delete(row.key);
      ids.get(`${row.table}/${row.id}`)?.delete(row);
      ids.get(row.id)?.delete(row);
      kinds.get(row.kind)?.delete(row);
      leave(row);
      for (const cell of row.cells.values()) cells[cell.number] = undefined;
    },
    order: (table, rows) => {
      tables.set(table, rows);
      for (const [position, row] of rows.entries()) row.position = position;
    },
    setKind: (row, kind) => {
      kinds.get(row.kind)?.delete(row);
      row.kind = kind;
      if (kind !== '') group(kinds, kind).add(row);
    },
    setOn: (row, on) => {
      if ((on ?? '') === (grounds.get(row) ?? '')) return;
      leave(row);
      if (on === undefined || on === '') return;
      grounds.set(row, on);
      group(standing, on).add(row);
    },
    cell: (row, column) => {
      const known = row.cells.get(column);
      if (known !== undefined) return known;
      const cell = newCell(row, column, cells.length);
      cells.push(cell);
      row.cells.set(column, cell);
      return cell;
    },
    cellNumbered: (number) => cells[number],
  };
}

import type { CellAddress, RowAddress } from '../extension/protocol/messages.ts';

/** Column key of the row header; typing there renames the row. */
export const idColumn = 'id';

/** A row's key within its sheet, as `SheetView.order` lists it: `id`, or `id#1` for a repeated id. */
export function rowKey(row: { readonly id: string; readonly occurrence: number }): string {
  return row.occurrence === 0 ? row.id : `${row.id}#${String(row.occurrence)}`;
}

/** Reads a key that `rowKey` made. */
export function rowAddress(table: string, key: string): RowAddress {
  const hash = key.lastIndexOf('#');
  const occurrence = hash < 0 ? 0 : Number(key.slice(hash + 1));
  return { table, id: hash < 0 ? key : key.slice(0, hash), occurrence };
}

/** Reads the name of a row in a picture, `part/mid_ring`. */
export function rowNamed(name: string): RowAddress {
  const slash = name.indexOf('/');
  return rowAddress(name.slice(0, slash), name.slice(slash + 1));
}

export function cellAddress(table: string, key: string, column: string): CellAddress {
  return { ...rowAddress(table, key), column };
}

/** One text per cell of the job, for maps. */
export function cellKey(cell: CellAddress): string {
  return `${cell.table}/${rowKey(cell)}/${cell.column}`;
}

export function sameRow(one: RowAddress | undefined, other: RowAddress | undefined): boolean {
  if (one === undefined || other === undefined) return one === other;
  return one.table === other.table && one.id === other.id && one.occurrence === other.occurrence;
}

export function sameCell(one: CellAddress | undefined, other: CellAddress | undefined): boolean {
  return sameRow(one, other) && one?.column === other?.column;
}

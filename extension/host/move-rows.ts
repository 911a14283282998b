import { kindGroups, rowKey, type Edit, type Snapshot } from '../engine/index.ts';
import type { GridEdit, RowAddress } from '../protocol/messages.ts';
import { rowAt } from './addresses.ts';

type Move = GridEdit & { readonly kind: 'move' };
type Placed = RowAddress;

/** Rows of a table that have a place of their own: a locked row without a number follows the one above. */
function placedRows(table: string, snapshot: Snapshot): readonly Placed[] {
  const rows = snapshot.shown.tables.get(table) ?? [];
  return rows.filter((row) => !row.broken || row.order !== undefined);
}

/** The row that a new one can be written after; null where no row above has a place of its own. */
export function placedAbove(row: RowAddress, snapshot: Snapshot): string | null {
  const rows = snapshot.shown.tables.get(row.table) ?? [];
  const at = rows.findIndex((one) => rowKey(one) === rowKey(row));
  const above = rows.slice(0, at + 1).filter((one) => !one.broken || one.order !== undefined);
  return above.at(-1)?.id ?? null;
}

function groupAt(row: RowAddress, snapshot: Snapshot): string {
  if (row.table !== 'part') return '';
  const kind = rowAt(row, snapshot)?.kind ?? '';
  return snapshot.book.kinds.get(kind)?.group ?? kindGroups[0];
}

/** The next row of the same group in this direction. */
function neighbour(
  rows: readonly Placed[],
  at: number,
  { by, groupOf }: { readonly by: -1 | 1; readonly groupOf: (row: Placed) => string },
): number {
  const own = rows[at];
  if (own === undefined) return -1;
  const group = groupOf(own);
  for (let index = at + by; index >= 0 && index < rows.length; index += by) {
    const row = rows[index];
    if (row !== undefined && groupOf(row) === group) return index;
  }
  return -1;
}

/**
 * Moves rows one place up or down among the rows of their own group. Rows that move together keep
 * their order among themselves and stop together at the edge of the group.
 */
export function moveEdits(moves: readonly Move[], snapshot: Snapshot): readonly Edit[] {
  const moving = new Set(moves.map(({ row }) => rowKey(row)));
  const groups = new Map<string, string>();
  const groupOf = (row: Placed): string => {
    const known = groups.get(rowKey(row)) ?? groupAt(row, snapshot);
    groups.set(rowKey(row), known);
    return known;
  };
  const tables = new Map<string, Placed[]>();
  const edits: Edit[] = [];
  for (const { row, by } of inMovingOrder(moves, snapshot)) {
    const rows = tables.get(row.table) ?? [...placedRows(row.table, snapshot)];
    tables.set(row.table, rows);
    const at = rows.findIndex((one) => rowKey(one) === rowKey(row));
    const target = neighbour(rows, at, { by, groupOf });
    const met = rows[target];
    // A neighbour that moves too has come to the edge already.
    if (met === undefined || moving.has(rowKey(met))) continue;
    rows.splice(target, 0, ...rows.splice(at, 1));
    edits.push({ kind: 'move-row', row, after: rows[target - 1]?.id ?? null });
  }
  return edits;
}

/** The row in front goes first. */
function inMovingOrder(moves: readonly Move[], snapshot: Snapshot): readonly Move[] {
  const places = new Map<string, number>();
  for (const table of new Set(moves.map(({ row }) => row.table)))
    for (const [index, row] of placedRows(table, snapshot).entries())
      places.set(rowKey(row), index);
  const place = (move: Move): number => (places.get(rowKey(move.row)) ?? 0) * -move.by;
  return [...moves].sort((one, two) => place(one) - place(two));
}

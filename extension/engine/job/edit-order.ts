import { failed, ok, type Result } from '../result.ts';
import { withKeys, type Draft } from './draft.ts';
import { editProblem } from './edit-problems.ts';
import { keepLongestRun, orderNumbers, type Numbered } from './order-numbers.ts';
import { rowAt } from './row-ids.ts';
import type { RowRef, SourceRow } from './source.ts';

/** A place in a sequence: a row of the file, or the id of one that is still to be written. */
type Placed = SourceRow | string;

function numbered(place: Placed): Numbered {
  return typeof place === 'string'
    ? { id: place, order: undefined }
    : { id: place.id, order: place.order };
}

/** Rows that can be given a place; a locked row without a number follows the row above it. */
function placeable(draft: Draft, table: string): readonly SourceRow[] {
  const rows = draft.reading.tables.get(table) ?? [];
  return rows.filter((row) => !row.broken || row.order !== undefined);
}

function withOrders(
  draft: Draft,
  sequence: readonly Placed[],
  orders: readonly number[],
): Result<Draft> {
  const edits = sequence.flatMap((place, index) => {
    const order = orders[index];
    if (typeof place === 'string' || place.broken || order === place.order) return [];
    return [{ block: place.block, key: 'order', text: String(order) }];
  });
  return edits.length === 0 ? ok(draft) : withKeys(draft, edits);
}

function indexAfter(
  rows: readonly SourceRow[],
  table: string,
  after: string | null | undefined,
): Result<number> {
  if (after === undefined) return ok(rows.length);
  if (after === null) return ok(0);
  const index = rows.findIndex((row) => row.id === after);
  if (index === -1) return failed(editProblem('edit-row-missing', { table, id: after }));
  return ok(index + 1);
}

/**
 * Makes room for new rows that are to stand together after a row, and gives the number of the first.
 * Rows that had no number get one, so that the new ones do not draw them along.
 */
export function roomFor(
  draft: Draft,
  table: string,
  ids: readonly string[],
  after: string | null | undefined,
): Result<{ readonly draft: Draft; readonly order: number }> {
  const rows = placeable(draft, table);
  const index = indexAfter(rows, table, after);
  if (!index.ok) return index;
  const sequence: Placed[] = [...rows.slice(0, index.value), ...ids, ...rows.slice(index.value)];
  const orders = orderNumbers(sequence.map(numbered));
  const next = withOrders(draft, sequence, orders);
  return next.ok ? ok({ draft: next.value, order: orders[index.value] ?? 0 }) : next;
}

/** Displays a row after another one, or first. */
export function moveRow(draft: Draft, ref: RowRef, after: string | null): Result<Draft> {
  const row = rowAt(draft.reading, ref);
  if (row === undefined) {
    return failed(editProblem('edit-row-missing', { table: ref.table, id: ref.id }));
  }
  const rows = placeable(draft, ref.table);
  const others = rows.filter((one) => one !== row);
  const index = after === ref.id ? ok(rows.indexOf(row)) : indexAfter(others, ref.table, after);
  if (!index.ok) return index;
  if (rows[index.value] === row) return ok(draft);
  const sequence = [...others.slice(0, index.value), row, ...others.slice(index.value)];
  const orders = orderNumbers(
    sequence.map((one) => (one === row ? { id: row.id, order: undefined } : numbered(one))),
  );
  return withOrders(draft, sequence, orders);
}

/** Displays the rows of a table in this order; rows that are not named come last, as they stood. */
export function sortRows(draft: Draft, table: string, ids: readonly string[]): Result<Draft> {
  const waiting = new Map<string, SourceRow[]>();
  const rows = placeable(draft, table);
  for (const row of rows) waiting.set(row.id, [...(waiting.get(row.id) ?? []), row]);
  const named = ids.flatMap((id) => waiting.get(id)?.shift() ?? []);
  const rest = new Set(rows);
  for (const row of named) rest.delete(row);
  const sequence = [...named, ...rest];
  if (sequence.every((row, index) => row === rows[index])) return ok(draft);
  const orders = orderNumbers(keepLongestRun(sequence.map(numbered)));
  return withOrders(draft, sequence, orders);
}

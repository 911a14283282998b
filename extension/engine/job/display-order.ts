import type { SourceRow } from './source.ts';

interface Run {
  readonly order: number;
  readonly id: string;
  readonly place: number;
  readonly rows: SourceRow[];
}

function compared(a: Run, b: Run): number {
  if (a.order !== b.order) return a.order - b.order;
  if (a.id !== b.id) return a.id < b.id ? -1 : 1;
  return a.place - b.place;
}

/**
 * Rows of one table, given as they stand in the file, as they are displayed: by `order`, then id. A
 * row without `order` follows the row above it in the file; those above all others come first.
 */
export function displayOrder(rows: readonly SourceRow[]): readonly SourceRow[] {
  const first: SourceRow[] = [];
  const runs: Run[] = [];
  let current = first;
  for (const [place, row] of rows.entries()) {
    if (row.order === undefined) current.push(row);
    else {
      current = [row];
      runs.push({ order: row.order, id: row.id, place, rows: current });
    }
  }
  return [...first, ...runs.sort(compared).flatMap((run) => run.rows)];
}

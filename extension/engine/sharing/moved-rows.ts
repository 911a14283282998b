import type { FileReading, SourceRow } from '../job/source.ts';

function places(reading: FileReading, table: string): ReadonlyMap<SourceRow, number> {
  return new Map((reading.tables.get(table) ?? []).map((row, place) => [row, place]));
}

/** A row was put elsewhere only where its own number says so, or where it has none. */
function mayHaveMoved(before: SourceRow, after: SourceRow): boolean {
  return before.order !== after.order || before.order === undefined;
}

/**
 * Rows that stand elsewhere on the sheet: each has another number of its place, and stands on the
 * other side of a row that both versions have. Numbers that changed while all rows stand as they stood
 * are no move.
 */
export function movedRows(
  before: FileReading,
  after: FileReading,
  pairs: ReadonlyMap<SourceRow, SourceRow>,
): ReadonlySet<SourceRow> {
  const moved = new Set<SourceRow>();
  for (const table of after.tables.keys()) {
    const now = places(after, table);
    const kept = (before.tables.get(table) ?? []).flatMap((old, from) => {
      const row = pairs.get(old);
      const to = row && now.get(row);
      return row === undefined || to === undefined ? [] : [{ old, row, from, to }];
    });
    for (const one of kept) {
      if (!mayHaveMoved(one.old, one.row)) continue;
      const passed = kept.some(
        ({ from, to }) => from < one.from !== to < one.to && from !== one.from,
      );
      if (passed) moved.add(one.row);
    }
  }
  return moved;
}

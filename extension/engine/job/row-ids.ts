import type { Problem } from '../problems.ts';
import { namedRowTables, tablePlace } from './columns.ts';
import { editProblem } from './edit-problems.ts';
import { isReservedId, isWellFormedId } from './reserved-words.ts';
import type { FileReading, RowRef, SourceRow } from './source.ts';

/** The row an edit speaks of. */
export function rowAt(reading: FileReading, ref: RowRef): SourceRow | undefined {
  const occurrence = ref.occurrence ?? 0;
  return reading.tables
    .get(ref.table)
    ?.find((row) => row.id === ref.id && row.occurrence === occurrence);
}

/** Rows that bear an id in the name space of a table. */
export function rowsCalled(reading: FileReading, table: string, id: string): readonly SourceRow[] {
  const tables = namedRowTables.includes(table) ? namedRowTables : [table];
  return tables.flatMap((one) => reading.tables.get(one)?.filter((row) => row.id === id) ?? []);
}

/** Why a row of this table cannot be called so; undefined where it can. */
export function newIdProblem(reading: FileReading, table: string, id: string): Problem | undefined {
  if (tablePlace(table) === undefined) return editProblem('edit-table-unknown', { table });
  if (!isWellFormedId(id)) return editProblem('edit-id-ill-formed', { id });
  if (isReservedId(table, id)) return editProblem('edit-id-reserved', { id });
  return rowsCalled(reading, table, id).length > 0
    ? editProblem('edit-id-taken', { id })
    : undefined;
}

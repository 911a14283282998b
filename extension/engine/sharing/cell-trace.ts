import { namedRowTables } from '../job/columns.ts';
import type { FileReading, SourceRow } from '../job/source.ts';
import { renamedRows } from './match-rows.ts';

/** A cell of a job; the table of a setting is `job`, and its id is empty. */
export interface TracedCell {
  readonly table: string;
  readonly id: string;
  readonly column: string;
}

function rowOf(reading: FileReading, { table, id }: TracedCell): SourceRow | undefined {
  return reading.tables.get(table)?.find((row) => row.id === id);
}

/** Text of a cell in one version of the file; undefined where it has no such cell. */
export function tracedText(reading: FileReading, cell: TracedCell): string | undefined {
  if (cell.table === 'job') return reading.head.get(cell.column)?.text;
  return rowOf(reading, cell)?.cells.get(cell.column)?.text;
}

/**
 * The same cell in an earlier version, where its row may have been called otherwise; undefined where
 * the row was not there yet.
 */
export function tracedBack(
  cell: TracedCell,
  later: FileReading,
  earlier: FileReading,
): TracedCell | undefined {
  if (cell.table === 'job' || rowOf(earlier, cell) !== undefined) return cell;
  const renamed = renamedRows(earlier, later).find(
    ({ table, to }) => table === cell.table && to === cell.id,
  );
  return renamed === undefined ? undefined : { ...cell, id: renamed.from };
}

/** The cell that `ROW.COLUMN` (or `job.SETTING`) names; undefined where the file has no such row. */
export function namedCell(reading: FileReading, name: string): TracedCell | undefined {
  const dot = name.indexOf('.');
  if (dot < 1 || dot === name.length - 1) return undefined;
  const [id, column] = [name.slice(0, dot), name.slice(dot + 1)];
  if (id === 'job') return { table: 'job', id: '', column };
  const table = [...namedRowTables, ...reading.tables.keys()].find(
    (one) => rowOf(reading, { table: one, id, column }) !== undefined,
  );
  return table === undefined ? undefined : { table, id, column };
}

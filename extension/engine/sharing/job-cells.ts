import { readFile } from '../job/read-file.ts';
import type { FileReading, SourceRow } from '../job/source.ts';

/** A row as two versions of a job are held against each other. */
export interface RowCells {
  readonly table: string;
  readonly id: string;
  /** 0 for the first row of this id in its table, 1 for the next. */
  readonly occurrence: number;
  /** Where it is displayed in its table, from 0. */
  readonly place: number;
  readonly order: number | undefined;
  /** True for a block that could not be read: its cells are not all there. */
  readonly broken: boolean;
  /** Texts as a person typed them, by column; without `id` and `order`. */
  readonly cells: ReadonlyMap<string, string>;
  readonly source: SourceRow;
}

/** A job as cells: what compare and merge read of it. */
export interface JobCells {
  readonly reading: FileReading;
  /** Texts of `[job]` (or `[book]`) by key. */
  readonly settings: ReadonlyMap<string, string>;
  /** Rows of each table by `id#occurrence`, in display order. */
  readonly tables: ReadonlyMap<string, ReadonlyMap<string, RowCells>>;
}

/** Key of a row within its table: `mid_ring#0`. */
export function rowInTable(row: { readonly id: string; readonly occurrence: number }): string {
  return `${row.id}#${String(row.occurrence)}`;
}

function rowCells(source: SourceRow, place: number): RowCells {
  const { table, id, occurrence, order, broken } = source;
  const cells = new Map([...source.cells].map(([key, cell]) => [key, cell.text]));
  return { table, id, occurrence, place, order, broken, cells, source };
}

/** A job or shop book as cells, from its text or from a reading of it. */
export function jobCells(job: string | FileReading): JobCells {
  const reading = typeof job === 'string' ? readFile(job) : job;
  const tables = new Map(
    [...reading.tables].map(([table, rows]) => [
      table,
      new Map(rows.map((row, place) => [rowInTable(row), rowCells(row, place)])),
    ]),
  );
  const settings = new Map([...reading.head].map(([key, cell]) => [key, cell.text]));
  return { reading, settings, tables };
}

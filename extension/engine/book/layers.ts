import type { Problem } from '../problems.ts';
import type { FileReading, SourceCell, SourceRow } from '../job/source.ts';
import { bookProblem } from './book-problems.ts';
import type { BookRow } from './book.ts';
import { builtIn } from './built-in.ts';

/** Rows of one source, to be laid over those of the sources before it. */
export interface Layer {
  readonly origin: BookRow['origin'];
  readonly tables: ReadonlyMap<string, readonly SourceRow[]>;
}

/** A row after all sources were laid over one another, key by key. */
export interface LaidRow {
  readonly id: string;
  readonly origin: BookRow['origin'];
  readonly cells: ReadonlyMap<string, SourceCell>;
}

function tablesWithout(
  tables: Layer['tables'],
  without: readonly string[],
): ReadonlyMap<string, readonly SourceRow[]> {
  return new Map([...tables].filter(([table]) => !without.includes(table)));
}

/**
 * The sources of a book, lowest first. A shop's own book puts away the demo book's prices and rates:
 * what a shop has not priced has no price.
 */
export function bookLayers(file: FileReading | undefined, job: Layer['tables']): readonly Layer[] {
  const { habits, demo } = builtIn();
  const dropped = file === undefined ? [] : ['pack', 'kind'];
  const own: readonly Layer[] = file === undefined ? [] : [{ origin: 'book', tables: file.tables }];
  return [
    ...habits.map((reading): Layer => ({ origin: 'built-in', tables: reading.tables })),
    { origin: 'built-in', tables: tablesWithout(demo.tables, dropped) },
    ...own,
    { origin: 'job', tables: job },
  ];
}

/** The rows of a table with later layers laid over earlier ones; an empty text takes a cell away. */
export function laidRows(table: string, layers: readonly Layer[]): ReadonlyMap<string, LaidRow> {
  const laid = new Map<string, LaidRow>();
  for (const { origin, tables } of layers) {
    for (const row of tables.get(table) ?? []) {
      if (row.broken || row.id === '') continue;
      const cells = new Map(laid.get(row.id)?.cells);
      for (const [key, cell] of row.cells) {
        if (cell.text === '' && cell.items === undefined) cells.delete(key);
        else cells.set(key, cell);
      }
      laid.set(row.id, { id: row.id, origin, cells });
    }
  }
  return laid;
}

/** Rows that stand more than once in a shop's book. */
export function repeatedRows(file: FileReading | undefined): readonly Problem[] {
  if (file === undefined) return [];
  return [...file.tables].flatMap(([table, rows]) =>
    rows
      .filter(({ occurrence }) => occurrence === 1)
      .map(({ id }) =>
        bookProblem(
          'book-row-repeated',
          { table, id },
          { severity: 'warning', place: { table, row: id } },
        ),
      ),
  );
}

/** The texts of a row's cells. */
export function texts(row: LaidRow): ReadonlyMap<string, string> {
  return new Map([...row.cells].map(([key, cell]) => [key, cell.text]));
}

import type { FileReading, SourceCell, SourceRow } from '../job/source.ts';
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

function overlaid(under: LaidRow['cells'] | undefined, over: LaidRow['cells']): LaidRow['cells'] {
  const cells = new Map([...(under ?? []), ...over]);
  return new Map([...cells].filter(([, { text, items }]) => text !== '' || items !== undefined));
}

/** The rows of a table with later layers laid over earlier ones; an empty text takes a cell away. */
export function laidRows(table: string, layers: readonly Layer[]): ReadonlyMap<string, LaidRow> {
  const laid = new Map<string, LaidRow>();
  for (const { origin, tables } of layers) {
    for (const { id, broken, cells } of tables.get(table) ?? []) {
      if (broken || id === '') continue;
      laid.set(id, { id, origin, cells: overlaid(laid.get(id)?.cells, cells) });
    }
  }
  return laid;
}

/** The texts of a row's cells. */
export function texts(row: LaidRow): ReadonlyMap<string, string> {
  return new Map([...row.cells].map(([key, cell]) => [key, cell.text]));
}

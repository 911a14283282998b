import type { SourceCell, SourceRow } from '../job/source.ts';
import type { BookRow } from './book.ts';

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

export type LaidRows = ReadonlyMap<string, LaidRow>;

function overlaid(under: LaidRow['cells'] | undefined, over: LaidRow['cells']): LaidRow['cells'] {
  const cells = new Map([...(under ?? []), ...over]);
  return new Map([...cells].filter(([, { text, items }]) => text !== '' || items !== undefined));
}

/** The rows of a table with a layer laid over it; an empty text takes a cell away. */
export function laidOver(under: LaidRows, table: string, { origin, tables }: Layer): LaidRows {
  const rows = tables.get(table);
  if (rows === undefined || rows.length === 0) return under;
  const laid = new Map(under);
  for (const { id, broken, cells } of rows) {
    if (broken || id === '') continue;
    laid.set(id, { id, origin, cells: overlaid(laid.get(id)?.cells, cells) });
  }
  return laid;
}

/** The rows of a table in all layers, the lowest first. */
export function laidRows(table: string, layers: readonly Layer[]): LaidRows {
  return layers.reduce((under: LaidRows, layer) => laidOver(under, table, layer), new Map());
}

/** The texts of a row's cells. */
export function texts(row: LaidRow): ReadonlyMap<string, string> {
  return new Map([...row.cells].map(([key, cell]) => [key, cell.text]));
}

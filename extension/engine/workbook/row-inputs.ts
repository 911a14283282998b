import type { Book, BookRow } from '../book/book.ts';
import { namedRowTables } from '../job/columns.ts';
import { fileForm } from '../job/file-form.ts';
import type { FileReading, SourceRow } from '../job/source.ts';
import type { RowSource } from './row.ts';

/** A row as it comes from a file, before it is at work. */
export interface RowInput {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  /** Another object exactly when the row may say something else. */
  readonly identity: object;
  readonly source: () => RowSource;
}

/** Input of a row as it stands in a file. */
export function fromSource(row: SourceRow): RowInput {
  const { table, id, occurrence, broken } = row;
  const texts = (): ReadonlyMap<string, string> => {
    const found = new Map<string, string>();
    row.cells.forEach((cell, key) => {
      found.set(key, cell.text);
    });
    return found;
  };
  const source = (): RowSource => ({ identity: row, texts: texts(), broken });
  return { table, id, occurrence, identity: row, source };
}

function fromTexts(
  table: string,
  row: { readonly id: string; readonly identity: object },
  texts: () => ReadonlyMap<string, string>,
): RowInput {
  const { id, identity } = row;
  const source = (): RowSource => ({ identity, texts: texts(), broken: false });
  return { table, id, occurrence: 0, identity, source };
}

function bookRows(table: string, rows: Iterable<BookRow>): readonly RowInput[] {
  return [...rows].map((row) => fromTexts(table, { id: row.id, identity: row }, () => row.cells));
}

function head(reading: FileReading): RowInput {
  const texts = (): ReadonlyMap<string, string> =>
    new Map([...reading.head].map(([key, cell]) => [key, cell.text]));
  return fromTexts('job', { id: '', identity: reading.head }, texts);
}

function bands(book: Book): readonly RowInput[] {
  return book.bands.map((band) => {
    const { chart, from, to, value, source } = band;
    const texts = { chart, from, to, value, source };
    return fromTexts('band', { id: band.id, identity: band }, () => new Map(Object.entries(texts)));
  });
}

/** Rows of a table in display order; occurrences number rows of one id. */
function numbered(rows: readonly RowInput[]): readonly RowInput[] {
  const counts = new Map<string, number>();
  return rows.map((row) => {
    const occurrence = counts.get(row.id) ?? 0;
    counts.set(row.id, occurrence + 1);
    return occurrence === row.occurrence ? row : { ...row, occurrence };
  });
}

export interface TableInput {
  readonly table: string;
  /** The same object as last time where the table says the same. */
  readonly identity: object;
  readonly rows: () => readonly RowInput[];
  /** The rows as they stand in the file, where the table comes from one: what to compare with. */
  readonly sources?: readonly SourceRow[];
}

const noRows: readonly SourceRow[] = [];

/**
 * Rows of a table of a shop book that is open itself: its own as they stand in the file, repeated and
 * broken ones too, over what is built in; then those that are built in alone.
 */
function withOwn(own: readonly SourceRow[], all: readonly RowInput[]): readonly RowInput[] {
  const laid = new Map(all.map((row) => [row.id, row]));
  const written = own.map((row) => {
    const input = fromSource(row);
    const under = row.occurrence === 0 && !row.broken ? laid.get(row.id) : undefined;
    if (under === undefined) return input;
    const { texts } = under.source();
    return {
      ...input,
      identity: under.identity,
      source: () => ({ ...input.source(), under: texts }),
    };
  });
  const ids = new Set(own.map(({ id }) => id));
  return [...written, ...all.filter(({ id }) => !ids.has(id))];
}

/** Tables of templates and definitions: their texts are kept as they are, formulas are of other rows. */
export const verbatimTables: readonly string[] = [
  'kind',
  'kit',
  'question',
  'kit_row',
  'column',
  'ask',
  'option',
];

/** The rows of a job and its book, table by table; a table whose identity is the same has the same rows. */
export function rowInputs(reading: FileReading, book: Book): readonly TableInput[] {
  const isBook = fileForm(reading) === 'book';
  const laid = (table: string, rows: readonly RowInput[]): readonly RowInput[] =>
    isBook ? withOwn(reading.tables.get(table) ?? noRows, rows) : rows;
  const ofJob = (table: string): TableInput => {
    const sources = reading.tables.get(table) ?? noRows;
    return { table, identity: sources, sources, rows: () => sources.map(fromSource) };
  };
  const { head: settings } = reading;
  const { materials, constants, packs, suppliers } = book;
  return [
    { table: 'job', identity: settings, rows: () => [head(reading)] },
    {
      table: 'material',
      identity: materials,
      rows: () => laid('material', bookRows('material', materials.values())),
    },
    {
      table: 'constant',
      identity: constants,
      rows: () => laid('constant', bookRows('constant', constants.values())),
    },
    { table: 'pack', identity: packs, rows: () => laid('pack', numbered(bookRows('pack', packs))) },
    {
      table: 'supplier',
      identity: suppliers,
      rows: () => laid('supplier', bookRows('supplier', suppliers)),
    },
    { table: 'band', identity: book.bands, rows: () => laid('band', numbered(bands(book))) },
    ofJob('price'),
    ofJob('lock'),
    ...verbatimTables.map(ofJob),
    ...namedRowTables.map(ofJob),
  ];
}

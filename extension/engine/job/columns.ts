import { plain } from '../units/dimension.ts';
import { bookHead, bookTables } from './book-columns.ts';
import type { Column, ColumnType } from './column.ts';
import { jobHead, jobTables } from './job-columns.ts';
import { resultColumns } from './result-columns.ts';
import type { FileReading } from './source.ts';
import { userColumns } from './user-columns.ts';

const core: ReadonlyMap<string, readonly Column[]> = new Map([...jobTables, ...bookTables]);

/** Every table of format 1, in the order they stand in a file. */
export const tableOrder: readonly string[] = [...core.keys()];

const tablePlaces: ReadonlyMap<string, number> = new Map(
  tableOrder.map((table, place) => [table, place]),
);

/** Place of a table in a file, from 0; undefined for a table that format 1 does not know. */
export function tablePlace(table: string): number | undefined {
  return tablePlaces.get(table);
}

/** Tables whose rows share one set of ids, because formulas reach them by their first word. */
export const namedRowTables: readonly string[] = [
  'panel',
  'driver',
  'measure',
  'part',
  'task',
  'check',
  'charge',
];

/**
 * Columns that format 1 gives a table, in canonical order, without `id` and `order`; none for a
 * table it does not know.
 */
export function coreColumns(table: string): readonly Column[] {
  return core.get(table) ?? [];
}

/** Keys of the head table `[job]` or `[book]`, in canonical order. */
export function headColumns(head: 'job' | 'book' = 'job'): readonly Column[] {
  return head === 'job' ? jobHead : bookHead;
}

/** Core columns of a table and then those that this file's `[[column]]` rows add to it. */
export function columnsOf(reading: FileReading, table: string): readonly Column[] {
  const rows = reading.tables.get('column');
  if (rows === undefined || rows.length === 0) return coreColumns(table);
  return [...coreColumns(table), ...userColumns(rows, table, coreColumns(table))];
}

const drawTypes: Readonly<Record<string, readonly [ColumnType, string, string]>> = {
  label: [{ kind: 'text' }, 'label', 'What the draw is called.'],
  material: [
    { kind: 'link', tables: ['material'] },
    'material',
    'What is drawn; “none” switches it off.',
  ],
  use: [{ kind: 'quantity', dimension: 'any' }, 'use', 'Amount for one piece of the row.'],
  percent: [{ kind: 'quantity', dimension: plain }, 'percent', 'Share of what it goes into.'],
  qty: [{ kind: 'quantity', dimension: plain }, 'pieces', 'Pieces for one piece of the row.'],
  per: [{ kind: 'choice', choices: ['panel', 'job'] }, 'per', 'For every panel, or once a job.'],
  waste: [{ kind: 'quantity', dimension: plain }, 'waste', 'Added for what is lost.'],
};

/** Last words of a draw's keys, in the order they are written. */
export const drawWords: readonly string[] = Object.keys(drawTypes);

/** First words of dotted keys that hold free texts, by table. */
const freeKeys: Readonly<Record<string, readonly string[]>> = {
  kind: ['label', 'hint', 'default', 'result', 'rule', 'say'],
  kit_row: ['set'],
  option: ['set'],
};

/** First words of the dotted keys a table takes, in the order they are written. */
export function dottedWords(table: string): readonly string[] {
  return [...(freeKeys[table] ?? []), 'draw'];
}

function drawColumn(table: string, key: string, words: readonly string[]): Column | undefined {
  const [, name = '', last = ''] = words;
  const found = Object.hasOwn(drawTypes, last) ? drawTypes[last] : undefined;
  if (words.length !== 3 || found === undefined) return undefined;
  const [type, label, help] = found;
  return { table, key, label: `${name.replaceAll('_', ' ')}: ${label}`, help, type };
}

function dottedColumn(table: string, key: string): Column | undefined {
  const words = key.split('.');
  const [first = '', ...rest] = words;
  if (rest.length === 0) return undefined;
  if (first === 'draw') {
    return table === 'part' || table === 'kind' ? drawColumn(table, key, words) : undefined;
  }
  if (freeKeys[table]?.includes(first) !== true) return undefined;
  return { table, key, label: rest.join('.'), help: '', type: { kind: 'text' } };
}

function byKey(columns: readonly Column[]): ReadonlyMap<string, Column> {
  return new Map(columns.map((column) => [column.key, column]));
}

/** Columns with plain keys, by table and key. */
const plainColumns: ReadonlyMap<string, ReadonlyMap<string, Column>> = new Map([
  ...[...core].map(
    ([table, columns]) => [table, byKey([...resultColumns(table), ...columns])] as const,
  ),
  ['job', byKey(jobHead)] as const,
  ['book', byKey(bookHead)] as const,
]);

/**
 * The column of a key that format 1 knows: core, computed, or a dotted key such as
 * `draw.catalyst.percent`. Undefined for a column of the user's own (see `columnsOf`) or none.
 */
export function columnOf(table: string, key: string): Column | undefined {
  if (key.includes('.')) return dottedColumn(table, key);
  return plainColumns.get(table)?.get(key);
}

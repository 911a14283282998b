import { plain } from '../units/dimension.ts';
import { dimensionFrom } from '../units/dimension-names.ts';
import type { Column, ColumnType } from './column.ts';
import type { SourceRow } from './source.ts';

const plainTypes: ReadonlyMap<string, ColumnType> = new Map<string, ColumnType>([
  ['text', { kind: 'text' }],
  ['yes_no', { kind: 'yes-no' }],
  ['date', { kind: 'date' }],
  ['shape', { kind: 'shape' }],
  ['number', { kind: 'quantity', dimension: plain }],
]);

const linked = ['panel', 'driver', 'measure', 'part', 'task', 'check', 'charge', 'material'];

/** What the text in `type` of a `[[column]]` row says; undefined where it says nothing known. */
export function userColumnType(
  text: string,
  choices: readonly string[] | undefined,
): ColumnType | undefined {
  if (text === 'choice') return { kind: 'choice', choices: choices ?? [] };
  if (linked.includes(text)) return { kind: 'link', tables: [text] };
  const known = plainTypes.get(text);
  if (known !== undefined) return known;
  const dimension = dimensionFrom(text.replaceAll('_', ' '));
  return dimension === undefined ? undefined : { kind: 'quantity', dimension };
}

/** Key that a `[[column]]` row gives its column. */
export function userColumnKey(row: SourceRow): string {
  return row.cells.get('key')?.text ?? row.id;
}

function userColumn(row: SourceRow, table: string, group: number): Column {
  const said = (key: string): string | undefined => row.cells.get(key)?.text;
  const key = userColumnKey(row);
  return {
    table,
    key,
    label: said('label') ?? key.replaceAll('_', ' '),
    help: said('help') ?? '',
    type: userColumnType(said('type') ?? 'text', row.cells.get('choices')?.items) ?? {
      kind: 'text',
    },
    group,
  };
}

/**
 * Columns that `[[column]]` rows add to a table, in display order; a key the table has already is
 * left out, and an unknown type reads as text. Each is a group of its own in the file.
 */
export function userColumns(
  rows: readonly SourceRow[],
  table: string,
  core: readonly Column[],
): readonly Column[] {
  const taken = new Set(core.map((column) => column.key)).add('');
  const groups = core.reduce((most, column) => Math.max(most, (column.group ?? 0) + 1), 0);
  const added: Column[] = [];
  for (const row of rows) {
    const key = userColumnKey(row);
    if (row.cells.get('table')?.text !== table || taken.has(key)) continue;
    taken.add(key);
    added.push(userColumn(row, table, groups + added.length));
  }
  return added;
}

import { columnOf, columnsOf, headColumns, namedRowTables } from '../job/columns.ts';
import type { Column } from '../job/column.ts';
import { settingsOf } from '../job/settings.ts';
import type { FileReading, SourceRow } from '../job/source.ts';
import { plain } from '../units/dimension.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { Ask, AskForm, AskTarget } from './ask.ts';

/** The row of the job that formulas would call by this id. */
export function rowCalled(id: string, reading: FileReading): SourceRow | undefined {
  return namedRowTables
    .flatMap((table) => reading.tables.get(table) ?? [])
    .find((row) => row.id === id && row.occurrence === 0);
}

/** The cell that `base.length` or `job.temperature` names; undefined where there is no such row. */
export function targetOf(text: string, reading: FileReading): AskTarget | undefined {
  const dot = text.indexOf('.');
  const [id, column] = [text.slice(0, dot), text.slice(dot + 1)];
  if (dot < 1 || column === '') return undefined;
  if (id === 'job') return { table: 'job', column };
  const row = rowCalled(id, reading);
  return row === undefined ? undefined : { table: row.table, id, column };
}

/** The column that a target is in; undefined where its table has none of that name. */
export function columnOfTarget(target: AskTarget, reading: FileReading): Column | undefined {
  const { table, column } = target;
  if (table === 'job') return headColumns().find(({ key }) => key === column);
  const own = columnsOf(reading, table).find(({ key }) => key === column);
  return own ?? columnOf(table, column);
}

/** Text that stands in a cell; empty where it is blank. */
export function textAt(target: AskTarget, reading: FileReading): string {
  if (!('id' in target)) return reading.head.get(target.column)?.text ?? '';
  const rows = reading.tables.get(target.table) ?? [];
  return rows.find(({ id }) => id === target.id)?.cells.get(target.column)?.text ?? '';
}

function anyForm(start: string, reading: FileReading): AskForm {
  const read = readQuantity(start, { settings: settingsOf(reading.head) });
  return read.ok
    ? { kind: 'quantity', dimension: read.value.value.dimension }
    : { kind: 'quantity', dimension: plain };
}

function formOf(column: Column | undefined, start: string, reading: FileReading): AskForm {
  if (column?.key === 'kind') return { kind: 'text' };
  switch (column?.type.kind) {
    case 'quantity': {
      const { dimension } = column.type;
      return dimension === 'any' ? anyForm(start, reading) : { kind: 'quantity', dimension };
    }
    case 'choice':
      return { kind: 'choice', choices: column.type.choices };
    case 'link':
      return { kind: 'link', tables: column.type.tables };
    case 'yes-no':
    case 'shape':
    case 'date':
      return { kind: column.type.kind };
    default:
      return { kind: 'text' };
  }
}

function askFrom(row: SourceRow, reading: FileReading): Ask {
  const text = (key: string): string => row.cells.get(key)?.text ?? '';
  const items = (key: string): readonly string[] => row.cells.get(key)?.items ?? [];
  const sets = items('sets').flatMap((cell) => targetOf(cell, reading) ?? []);
  const keeps = items('keeps');
  const [first] = sets;
  const stands = first === undefined ? 'yes' : textAt(first, reading);
  const metric = settingsOf(reading.head).units === 'mm' ? text('start_mm') : '';
  const start = metric !== '' ? metric : text('start') !== '' ? text('start') : stands;
  const choices = items('choices');
  const own = first === undefined ? undefined : columnOfTarget(first, reading);
  const form: AskForm = first === undefined ? { kind: 'yes-no' } : formOf(own, stands, reading);
  return {
    id: row.id,
    name: text('name') === '' ? row.id.replaceAll('_', ' ') : text('name'),
    help: text('help'),
    sets,
    keeps,
    form: choices.length > 0 ? { kind: 'choice', choices } : form,
    start,
    least: text('least'),
    most: text('most'),
  };
}

/** The questions of a template, in display order; none in an ordinary job. */
export function asksOf(reading: FileReading): readonly Ask[] {
  const rows = reading.tables.get('ask') ?? [];
  return rows.filter(({ broken }) => !broken).map((row) => askFrom(row, reading));
}

import { columnOf, columnsOf, headColumns } from '../job/columns.ts';
import type { Column } from '../job/column.ts';
import { quotedText } from '../job/write-value.ts';
import { completeEntry } from '../formula/complete-entry.ts';
import { parseFormula } from '../formula/parse.ts';
import type { CellRef } from '../formula/scope.ts';
import { isPathText, readPathText } from '../geometry/free-shape.ts';
import { readShape } from '../geometry/shape-text.ts';
import { problemMaker } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import type { Snapshot } from './snapshot.ts';

const problem = problemMaker({
  'entry-no-formula': '{label} cannot be a formula; choose one of its values.',
  'entry-no-choice': '{label} has no value “{text}”. It may be: {choices}.',
  'entry-no-row': 'There is no {tables} called “{text}”.',
  'entry-no-kind': 'There is no kind of {table} called “{text}”.',
  'entry-yes-no': '{label} is yes or no, not “{text}”.',
  'entry-no-date': '“{text}” is not a day of the calendar; write it as 2026-11-25.',
  'entry-computed': '{column} is worked out for you, so nothing can be typed there.',
});

/** Types whose cells hold one of their own values and never a formula. */
const bound: readonly Column['type']['kind'][] = ['link', 'choice', 'date', 'list'];

/** How a text that somebody typed is meant to be stored; undefined clears the cell. */
export type Entry = Result<string | undefined>;

function columnAt(place: CellRef, snapshot: Snapshot): Column | undefined {
  const columns = place.table === 'job' ? headColumns() : columnsOf(snapshot.shown, place.table);
  const key = place.column;
  const found = columns.find((column) => column.key === key);
  return found ?? (key.startsWith('draw.') ? columnOf(place.table, key) : undefined);
}

function word(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s-]+/g, '_');
}

function linkEntry(text: string, column: Column, snapshot: Snapshot): Entry {
  if (column.type.kind !== 'link') return ok(text);
  const { tables } = column.type;
  if (text === 'none' && column.key.endsWith('material')) return ok(text);
  const rows = tables.flatMap((table) => snapshot.workbook.rows(table));
  const same = rows.find((row) => row.id === text);
  if (same !== undefined) return ok(same.id);
  const named = rows.find((row) => row.cell('name').text?.toLowerCase() === text.toLowerCase());
  if (named !== undefined) return ok(named.id);
  return failed(problem('entry-no-row', { tables: tables.join(' or '), text }));
}

function kindEntry(text: string, table: string, snapshot: Snapshot): Entry {
  const { kinds } = snapshot.book;
  if (kinds.get(text)?.table === table) return ok(text);
  const named = [...kinds.values()].find(
    (kind) =>
      kind.table === table &&
      (kind.name.toLowerCase() === text.toLowerCase() || kind.id === word(text)),
  );
  return named === undefined ? failed(problem('entry-no-kind', { table, text })) : ok(named.id);
}

function choiceEntry(text: string, column: Column): Entry {
  if (column.type.kind !== 'choice') return ok(text);
  const { choices } = column.type;
  const found = choices.find((choice) => choice === text || choice === word(text));
  if (found !== undefined) return ok(found);
  const details = { label: column.label, text, choices: choices.join(', ').replaceAll('_', ' ') };
  return failed(problem('entry-no-choice', details));
}

function yesNoEntry(text: string, column: Column): Entry {
  const said = text.toLowerCase();
  if (['yes', 'y', 'true'].includes(said)) return ok('yes');
  if (['no', 'n', 'false'].includes(said)) return ok('no');
  return failed(problem('entry-yes-no', { label: column.label, text }));
}

const daysOfMonth = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

function dateEntry(text: string): Entry {
  const [, year = '', month = '', day = ''] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text) ?? [];
  const days = daysOfMonth[Number(month) - 1] ?? 0;
  if (year === '' || Number(day) < 1 || Number(day) > days)
    return failed(problem('entry-no-date', { text }));
  return ok([year, month.padStart(2, '0'), day.padStart(2, '0')].join('-'));
}

/** Words between commas as the list that the file holds. */
function listEntry(text: string): Entry {
  if (text.startsWith('[')) return ok(text);
  const words = text.split(',').flatMap((one) => (one.trim() === '' ? [] : [one.trim()]));
  return ok(`[${words.map(quotedText).join(', ')}]`);
}

function shapeEntry(text: string, snapshot: Snapshot): Entry {
  const options = { settings: snapshot.settings };
  // Its file may have yet to be read: the cell says what is wrong with it.
  const read = isPathText(text) ? readPathText(text, options) : readShape(text, options);
  return read.ok ? ok(read.value.text) : read;
}

function rowAt(place: CellRef, snapshot: Snapshot): AnsweredRow | undefined {
  return snapshot.workbook
    .rows(place.table)
    .find((row) => row.id === place.id && row.occurrence === place.occurrence);
}

/** True for a cell that only shows a result, of its table or of its row's kind. */
function isComputed(place: CellRef, snapshot: Snapshot): boolean {
  if (place.table === 'job') return false;
  if (columnOf(place.table, place.column)?.computed !== undefined) return true;
  const kind = snapshot.book.kinds.get(rowAt(place, snapshot)?.kind ?? '');
  return kind?.results.has(place.column) === true && columnAt(place, snapshot) === undefined;
}

function countWordAt(place: CellRef, snapshot: Snapshot): string | undefined {
  const link = place.column.startsWith('draw.')
    ? `${place.column.slice(0, place.column.lastIndexOf('.'))}.material`
    : 'material';
  const cell = rowAt(place, snapshot)?.cell(link);
  if (cell?.result.state !== 'value' || cell.result.value.kind !== 'link') return undefined;
  const material = snapshot.workbook.row('material', cell.result.value.id);
  return material?.cell('unit').text ?? countWords[material?.cell('form').text ?? ''];
}

const countWords: Readonly<Record<string, string>> = {
  sheet: 'sheet',
  piece: 'each',
  aerosol: 'can',
};

/** Columns of shares: a bare number from 1 up is meant in percent, as nobody wastes twice what is used. */
const shareColumns = ['percent', 'waste', 'solids'];

function quantityEntry(text: string, place: CellRef, snapshot: Snapshot): Entry {
  const column = columnAt(place, snapshot);
  const wanted = column?.type.kind === 'quantity' ? column.type.dimension : 'any';
  const countWord = countWordAt(place, snapshot);
  const read = readQuantity(text, {
    settings: snapshot.settings,
    wanted,
    ...(countWord === undefined ? {} : { countWord }),
  });
  if (!read.ok) return read;
  const { text: written, unit, value } = read.value;
  const share = column !== undefined && shareColumns.includes(column.key.replace(/^.*\./, ''));
  return ok(share && unit === '' && value.base >= 1 ? `${written} %` : written);
}

function formulaEntry(text: string, place: CellRef, snapshot: Snapshot): Entry {
  const { problems } = parseFormula(text, snapshot.settings);
  const fault = problems.find((one) => one.severity === 'error');
  if (fault !== undefined) return failed(fault);
  const scope = snapshot.workbook.scopeAt(place);
  return ok(completeEntry(text, scope, snapshot.workbook.wantedAt(place)));
}

/**
 * What is stored when a person types `typed` into a cell: fractions and inch marks become words, a
 * bare number gets the job's unit, a name becomes the id it stands for.
 *
 * @returns the text for the file, undefined to clear the cell, or a sentence why it cannot be taken
 */
export function entryText(place: CellRef, typed: string, snapshot: Snapshot): Entry {
  const text = typed.replaceAll(/[\r\n]+/g, ' ').trim();
  if (isComputed(place, snapshot))
    return failed(problem('entry-computed', { column: place.column }));
  if (text === '') return ok(undefined);
  const column = columnAt(place, snapshot);
  if (column === undefined) return ok(text);
  if (text.startsWith('=')) {
    if (bound.includes(column.type.kind))
      return failed(problem('entry-no-formula', { label: column.label }));
    return formulaEntry(text, place, snapshot);
  }
  return literalEntry(text, { place, column, snapshot });
}

interface LiteralPlace {
  readonly place: CellRef;
  readonly column: Column;
  readonly snapshot: Snapshot;
}

function literalEntry(text: string, { place, column, snapshot }: LiteralPlace): Entry {
  if (column.key === 'kind') return kindEntry(text, place.table, snapshot);
  switch (column.type.kind) {
    case 'link':
      return linkEntry(text, column, snapshot);
    case 'choice':
      return choiceEntry(text, column);
    case 'yes-no':
      return yesNoEntry(text, column);
    case 'quantity':
      return quantityEntry(text, place, snapshot);
    case 'shape':
      return shapeEntry(text, snapshot);
    case 'date':
      return dateEntry(text);
    case 'list':
      return listEntry(text);
    case 'text':
      return ok(text);
  }
}

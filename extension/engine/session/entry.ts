import { columnsOf, headColumns } from '../job/columns.ts';
import type { Column } from '../job/column.ts';
import { completeEntry } from '../formula/complete-entry.ts';
import { parseFormula } from '../formula/parse.ts';
import type { CellRef } from '../formula/scope.ts';
import { problemMaker } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { Snapshot } from './snapshot.ts';

const problem = problemMaker({
  'entry-no-formula': '{label} cannot be a formula; choose one of its values.',
  'entry-no-choice': '{label} has no value “{text}”. It may be: {choices}.',
  'entry-no-row': 'There is no {tables} called “{text}”.',
  'entry-no-kind': 'There is no kind of {table} called “{text}”.',
  'entry-yes-no': '{label} is yes or no, not “{text}”.',
});

/** How a text that somebody typed is meant to be stored; undefined clears the cell. */
export type Entry = Result<string | undefined>;

function columnAt(place: CellRef, snapshot: Snapshot): Column | undefined {
  const columns = place.table === 'job' ? headColumns() : columnsOf(snapshot.shown, place.table);
  const key = place.column;
  const found = columns.find((column) => column.key === key);
  if (found !== undefined || !key.startsWith('draw.')) return found;
  const last = key.slice(key.lastIndexOf('.') + 1);
  return columns.find((column) => column.key === last);
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

function countWordAt(place: CellRef, snapshot: Snapshot): string | undefined {
  const link = place.column.startsWith('draw.')
    ? `${place.column.slice(0, place.column.lastIndexOf('.'))}.material`
    : 'material';
  const row = snapshot.workbook.row(place.table, place.id);
  const cell = row?.cell(link);
  if (cell?.result.state !== 'value' || cell.result.value.kind !== 'link') return undefined;
  const material = snapshot.workbook.row('material', cell.result.value.id);
  return material?.cell('unit').text ?? countWords[material?.cell('form').text ?? ''];
}

const countWords: Readonly<Record<string, string>> = {
  sheet: 'sheet',
  piece: 'each',
  aerosol: 'can',
};

function quantityEntry(text: string, place: CellRef, snapshot: Snapshot): Entry {
  const column = columnAt(place, snapshot);
  const wanted = column?.type.kind === 'quantity' ? column.type.dimension : 'any';
  const countWord = countWordAt(place, snapshot);
  const read = readQuantity(text, {
    settings: snapshot.settings,
    wanted,
    ...(countWord === undefined ? {} : { countWord }),
  });
  return read.ok ? ok(read.value.text) : read;
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
  if (text === '') return ok(undefined);
  const column = columnAt(place, snapshot);
  if (column === undefined) return ok(text);
  const bound = ['link', 'choice'].includes(column.type.kind) || column.key === 'kind';
  if (text.startsWith('=')) {
    if (bound) return failed(problem('entry-no-formula', { label: column.label }));
    return place.table === 'job' ? ok(text) : formulaEntry(text, place, snapshot);
  }
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
    default:
      return ok(text);
  }
}

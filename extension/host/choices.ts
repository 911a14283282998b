import { columnsOf, type AnsweredRow, type Column, type Snapshot } from '../engine/index.ts';
import type { CellAddress } from '../protocol/messages.ts';
import type { ChoiceOption } from '../protocol/views.ts';
import { rowAt } from './addresses.ts';
import { groupLabel } from './views/sheet-view.ts';
import { sizeInWords } from './views/size-words.ts';

const none: ChoiceOption = { value: '', label: '(blank)', detail: 'Clears the cell' };

function columnAt(cell: CellAddress, snapshot: Snapshot): Column | undefined {
  const columns = columnsOf(snapshot.shown, cell.table);
  const last = cell.column.slice(cell.column.lastIndexOf('.') + 1);
  return columns.find((one) => one.key === cell.column) ?? columns.find((one) => one.key === last);
}

function kindOptions(table: string, snapshot: Snapshot): readonly ChoiceOption[] {
  return [...snapshot.book.kinds.values()]
    .filter((kind) => kind.table === table && kind.id !== kind.table)
    .map((kind) => ({ value: kind.id, label: kind.name, detail: groupLabel(kind.group) }));
}

function rowOption(row: AnsweredRow, snapshot: Snapshot): ChoiceOption {
  const name = row.cell('name').text ?? row.id;
  const words = row.table === 'part' ? sizeInWords(row, snapshot) : (row.cell('form').text ?? '');
  const detail =
    name === row.id ? words : [row.id, words].filter((text) => text !== '').join(' · ');
  return { value: row.id, label: name, detail };
}

function linkOptions(
  cell: CellAddress,
  tables: readonly string[],
  snapshot: Snapshot,
): readonly ChoiceOption[] {
  const own = rowAt(cell, snapshot);
  const fits = snapshot.book.kinds.get(own?.kind ?? '')?.on ?? [];
  const rows = tables
    .flatMap((table) => snapshot.workbook.rows(table))
    .filter((row) => row !== own);
  if (cell.column !== 'on' || fits.length === 0) return rows.map((row) => rowOption(row, snapshot));
  const fitting = rows.filter((row) => fits.includes(row.kind));
  return fitting.map((row) => rowOption(row, snapshot));
}

/** What a choice or link cell may hold. */
export function choicesFor(cell: CellAddress, snapshot: Snapshot): readonly ChoiceOption[] {
  const column = columnAt(cell, snapshot);
  if (cell.column === 'kind') return kindOptions(cell.table, snapshot);
  switch (column?.type.kind) {
    case 'choice':
      return [
        none,
        ...column.type.choices.map((value) => ({
          value,
          label: value.replaceAll('_', ' '),
          detail: '',
        })),
      ];
    case 'yes-no':
      return [
        none,
        { value: 'yes', label: 'yes', detail: '' },
        { value: 'no', label: 'no', detail: '' },
      ];
    case 'link':
      return [none, ...linkOptions(cell, column.type.tables, snapshot)];
    default:
      return [];
  }
}

import {
  columnOf,
  optionLines,
  unweighedWords,
  type ComparedOptions,
  type Edit,
  type Snapshot,
} from '../../engine/index.ts';
import type { CellAddress } from '../../protocol/messages.ts';
import type { OptionCellView, OptionsView, OptionView } from '../../protocol/options-view.ts';
import { rowAt, settingCell } from '../addresses.ts';

type ComparedOption = ComparedOptions['options'][number];

/** What a cell of a row is called: as its kind says, else as its column does. */
function nameOf(cell: CellAddress, snapshot: Snapshot): string {
  const row = rowAt(cell, snapshot);
  const kind = snapshot.book.kinds.get(row?.kind ?? '');
  const label = kind?.labels.get(cell.column) ?? columnOf(cell.table, cell.column)?.label;
  return `${row?.cell('name').text ?? cell.id}: ${label ?? cell.column}`;
}

/** Grid's address of what an edit of an option writes, and what the cell is called. */
function placeOf(
  edit: Edit,
  snapshot: Snapshot,
): Pick<OptionCellView, 'cell' | 'name'> | undefined {
  if (edit.kind === 'set-head') {
    const label = columnOf('job', edit.key)?.label ?? edit.key;
    return { cell: settingCell(edit.key), name: `Job: ${label}` };
  }
  if (edit.kind !== 'set-cell') return undefined;
  const { table, id, occurrence = 0 } = edit.row;
  const cell = { table, id, occurrence, column: edit.column };
  return { cell, name: nameOf(cell, snapshot) };
}

/** A material reads better by its name. */
function shownText(text: string, { column }: CellAddress, { book }: Snapshot): string {
  if (!/(^|\.)material$/.test(column)) return text;
  return book.materials.get(text)?.cells.get('name') ?? text;
}

function optionView(option: ComparedOption, snapshot: Snapshot): OptionView {
  const { id, occurrence, name, note, cells, edits, problem } = option;
  return {
    ...{ table: 'option', id, occurrence, name, note },
    problem: problem?.message ?? '',
    cells: cells.flatMap(({ now, then }, index) => {
      const edit = edits[index];
      const place = edit && placeOf(edit, snapshot);
      if (place === undefined) return [];
      const shown = (text: string): string => shownText(text, place.cell, snapshot);
      return [{ ...place, now: shown(now), then: shown(then) }];
    }),
  };
}

const none =
  'This job has no options yet. Put the cursor on a cell that may differ (a material, a driver, a lean) and press “Add option from cell…”: the option stands here beside the job, and the quote prints what it adds.';
const busy = 'The job changed while its options were worked out: they come when it rests.';

/** The options of a job side by side; undefined for a job that did not come to rest. */
export function optionsView(
  compared: ComparedOptions | undefined,
  snapshot: Snapshot,
): OptionsView {
  if (compared === undefined || compared.options.length === 0) {
    const message = compared === undefined ? busy : none;
    return { message, note: '', figures: [], options: [] };
  }
  return {
    message: '',
    note: unweighedWords(compared),
    figures: optionLines(compared),
    options: compared.options.map((option) => optionView(option, snapshot)),
  };
}

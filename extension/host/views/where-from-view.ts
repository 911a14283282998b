import { rowKey, type AnsweredRow, type Snapshot, type Step } from '../../engine/index.ts';
import type { CellAddress } from '../../protocol/messages.ts';
import type { WhereFromView } from '../../protocol/views.ts';
import { engineCell, rowAt } from '../addresses.ts';
import { shownCell } from './cell-view.ts';
import { moneyText } from './money.ts';

function stepView(step: Step): WhereFromView['steps'][number] {
  return {
    text: step.text,
    table: step.row?.table ?? '',
    row: step.row?.id ?? '',
    column: step.row?.column ?? '',
  };
}

/** The working behind one line of the bill: each row's amount, then how it is bought. */
export function whereFromLine(id: string, snapshot: Snapshot): WhereFromView {
  const line = snapshot.bill.lines.find((one) => one.id === id);
  if (line === undefined) return { title: `${id} is not on the bill any more.`, steps: [] };
  return {
    title: `${line.name}: charge ${moneyText(line.charge, snapshot.settings)}`,
    steps: [...line.rows.flatMap((row) => row.steps), ...line.steps].map(stepView),
  };
}

/** The working behind what a row needs, its own material first and then what it draws. */
function whereFromAmounts(row: AnsweredRow, snapshot: Snapshot): WhereFromView {
  const needs = snapshot.needs.get(rowKey(row)) ?? [];
  const charge = needs.reduce((sum, need) => sum + need.charge, 0);
  return {
    title: `${row.cell('name').text ?? row.id}: charge ${moneyText(charge, snapshot.settings)}`,
    steps: needs.flatMap((need) => need.steps).map(stepView),
  };
}

/** Text and value of a cell, then of each cell it reads, to the depth of one link each. */
export function whereFromCell(cell: CellAddress, snapshot: Snapshot): WhereFromView {
  return cell.table === 'job' ? whereFromSetting(cell, snapshot) : whereFromRow(cell, snapshot);
}

/** Text of a setting. */
function whereFromSetting(cell: CellAddress, snapshot: Snapshot): WhereFromView {
  const { column: key } = engineCell(cell);
  const text = snapshot.shown.head.get(key)?.text;
  const step = { table: 'job', row: cell.id, column: cell.column };
  return {
    title: `job.${key}: ${text ?? 'blank'}`,
    steps: [{ text: text === undefined ? 'nothing is entered' : `${text} (typed)`, ...step }],
  };
}

function whereFromRow(place: CellAddress, snapshot: Snapshot): WhereFromView {
  const { workbook, settings } = snapshot;
  const row = rowAt(place, snapshot);
  if (row === undefined)
    return { title: `There is no ${place.table} called ${place.id}.`, steps: [] };
  if (place.column === 'need' || place.column === 'charge') return whereFromAmounts(row, snapshot);
  const cell = row.cell(place.column);
  const origin = { typed: 'typed', default: 'default of its kind', computed: 'result of its kind' }[
    cell.origin
  ];
  const own = cell.text === undefined ? 'nothing is entered' : `${cell.text} (${origin})`;
  const reads = workbook.readsOf(place).map((read) => {
    const other = workbook.row(read.table, read.id)?.cell(read.column);
    const value = other === undefined ? '' : shownCell(other, settings);
    const formula = other?.formula === true ? ` ${other.text ?? ''}` : '';
    return {
      text: `${read.id}.${read.column} is ${value === '' ? 'blank' : value}${formula}`,
      table: read.table,
      row: read.id,
      column: read.column,
    };
  });
  return {
    title: `${place.id}.${place.column}: ${shownCell(cell, settings)}`,
    steps: [{ text: own, table: place.table, row: place.id, column: place.column }, ...reads],
  };
}

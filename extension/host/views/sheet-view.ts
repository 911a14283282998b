import {
  fileForm,
  headColumns,
  kindGroups,
  rowKey,
  showQuantity,
  timeDimension,
  type AnsweredRow,
  type Kind,
  type Problem,
  type RowNeed,
  type Snapshot,
} from '../../engine/index.ts';
import type { CellView, GroupView, RowView, SheetView } from '../../protocol/views.ts';
import { settingCell } from '../addresses.ts';
import { blankCell, cellView } from './cell-view.ts';
import { checkView, inUnitOfKind, marginText, outcomeWord } from './check-view.ts';
import { labelText, sheetPlans, shownPlans } from './column-plan.ts';
import { amountText, moneyText } from './money.ts';
import { causeOf } from './problem-words.ts';
import type { SheetContext } from './sheet-context.ts';
import { sizeInWords } from './size-words.ts';

const groupLabels: Readonly<Record<string, string>> = {
  structure: 'Structure',
  skin: 'Skin',
  finish: 'Finish',
  drivers: 'Drivers and wiring',
  shop: 'Shop',
};

export function groupLabel(group: string): string {
  return groupLabels[group] ?? group;
}

function kindOf(row: AnsweredRow, snapshot: Snapshot): Kind | undefined {
  return snapshot.book.kinds.get(row.kind);
}

function computedCell(shown: string): CellView {
  return shown === ''
    ? { ...blankCell, look: 'computed' }
    : { ...blankCell, shown, look: 'computed' };
}

function needText(needs: readonly RowNeed[], snapshot: Snapshot): string {
  const own = needs.find((need) => need.draw === '');
  return own === undefined ? '' : amountText(own.need, snapshot.settings);
}

function partCell(key: string, row: AnsweredRow, context: SheetContext): CellView | undefined {
  const { snapshot } = context;
  const needs = snapshot.needs.get(rowKey(row)) ?? [];
  switch (key) {
    case 'words':
      return computedCell(sizeInWords(row, snapshot));
    case 'need':
      return computedCell(needText(needs, snapshot));
    case 'charge': {
      const charge = needs.reduce((sum, need) => sum + need.charge, 0);
      return computedCell(needs.length === 0 ? '' : moneyText(charge, snapshot.settings));
    }
    default:
      return undefined;
  }
}

function checkCell(key: string, row: AnsweredRow, context: SheetContext): CellView | undefined {
  const check = context.checks.get(rowKey(row));
  if (key !== 'outcome' && key !== 'margin') return undefined;
  if (check === undefined) return computedCell('');
  if (key === 'margin') return computedCell(marginText(check, context.snapshot));
  const { tone, message } = checkView(check);
  const severity = tone === 'plain' ? '' : tone;
  return { ...computedCell(outcomeWord(check)), message: severity === '' ? '' : message, severity };
}

function taskCell(key: string, row: AnsweredRow, context: SheetContext): CellView | undefined {
  if (key !== 'time' && key !== 'charge') return undefined;
  const task = context.tasks.get(rowKey(row));
  if (task?.complete !== true) return computedCell('');
  const { settings, price } = context.snapshot;
  if (key === 'time') {
    const minutes = Math.round(task.waits ? task.elapsed : task.working);
    return computedCell(showQuantity({ base: minutes, dimension: timeDimension }, settings).text);
  }
  const labour = price.labourOf.get(`${row.id}#${String(row.occurrence)}`);
  return computedCell(labour === undefined || task.waits ? '' : moneyText(labour, settings));
}

function chargeCell(key: string, row: AnsweredRow, context: SheetContext): CellView | undefined {
  if (key !== 'charge') return undefined;
  const charge = context.charges.get(rowKey(row));
  const { settings } = context.snapshot;
  return computedCell(charge?.complete === true ? moneyText(charge.amount, settings) : '');
}

/** Links and kinds read better by name; the id stays what is typed. */
function namedCell(view: CellView, key: string, context: SheetContext): CellView {
  const { book } = context.snapshot;
  if (view.shown === '' || view.look === 'error') return view;
  if (key === 'kind') return { ...view, shown: book.kinds.get(view.shown)?.name ?? view.shown };
  if (key === 'material' || key.endsWith('.material'))
    return { ...view, shown: book.materials.get(view.shown)?.cells.get('name') ?? view.shown };
  return view;
}

/** Why a cell has no answer, else the worst problem of it. */
export function toldOf(
  key: string,
  row: AnsweredRow,
  { snapshot, problems }: SheetContext,
): Pick<Problem, 'message' | 'severity'> | undefined {
  const { result } = row.cell(key);
  if (result.state !== 'no-answer') return problems.get(`${rowKey(row)}/${key}`)?.problem;
  const { table, id, occurrence } = row;
  const { message } = causeOf(result.problem, { table, id, occurrence, column: key }, snapshot);
  return { message, severity: result.problem.severity };
}

function computedOf(key: string, row: AnsweredRow, context: SheetContext): CellView | undefined {
  switch (row.table) {
    case 'part':
      return partCell(key, row, context);
    case 'check':
      return checkCell(key, row, context);
    case 'task':
      return taskCell(key, row, context);
    case 'charge':
      return chargeCell(key, row, context);
    default:
      return undefined;
  }
}

export function gridCell(key: string, row: AnsweredRow, context: SheetContext): CellView {
  const computed = computedOf(key, row, context);
  if (computed !== undefined) return computed;
  const view = cellView(row.cell(key), context.snapshot.settings, toldOf(key, row, context));
  return namedCell(inUnitOfKind(view, key, row, context.snapshot), key, context);
}

function groupOf(row: AnsweredRow, snapshot: Snapshot): string {
  if (row.table !== 'part') return '';
  return kindOf(row, snapshot)?.group ?? 'structure';
}

export function rowView(row: AnsweredRow, context: SheetContext): RowView {
  const columns = context.columns.get(row.table) ?? [];
  const key = rowKey(row);
  return {
    table: row.table,
    id: row.id,
    occurrence: row.occurrence,
    kind: row.kind,
    group: groupOf(row, context.snapshot),
    locked: row.broken,
    message: context.problems.get(key)?.problem.message ?? context.faults.get(key) ?? '',
    cells: columns.map((column) => gridCell(column.key, row, context)),
  };
}

/** The settings of `[job]` or `[book]` as rows, one a key. */
export function jobRows(context: SheetContext): readonly RowView[] {
  const { snapshot } = context;
  return headColumns(fileForm(snapshot.shown)).map((column) => {
    const cell = snapshot.shown.head.get(column.key);
    const problem = context.problems.get(`${rowKey(settingCell(column.key))}/value`);
    return {
      table: 'job',
      id: column.key,
      occurrence: 0,
      kind: '',
      group: '',
      locked: false,
      message: '',
      cells: [
        { ...blankCell, shown: labelText(column.label), look: 'computed' },
        {
          shown: cell?.text ?? '',
          typed: cell?.text ?? '',
          look: cell === undefined ? 'blank' : 'typed',
          formula: false,
          message: problem?.problem.message ?? column.help,
          severity: problem?.problem.severity ?? '',
        },
      ],
    };
  });
}

function orderKey(row: { readonly id: string; readonly occurrence: number }): string {
  return row.occurrence === 0 ? row.id : `${row.id}#${String(row.occurrence)}`;
}

function groupsOf(snapshot: Snapshot): readonly GroupView[] {
  return kindGroups.map((group) => {
    const total = snapshot.bill.groups.find((one) => one.group === group);
    return {
      group,
      label: groupLabel(group),
      totals:
        total === undefined
          ? ''
          : `charge ${moneyText(total.charge, snapshot.settings)} · buy ${moneyText(total.buy, snapshot.settings)}`,
    };
  });
}

/** Rows of a sheet in display order: within parts, group after group. */
export function sheetRows(table: string, snapshot: Snapshot): readonly AnsweredRow[] {
  const own = new Set((snapshot.shown.tables.get(table) ?? []).map((row) => rowKey(row)));
  const rows = snapshot.workbook.rows(table).filter((row) => own.has(rowKey(row)));
  if (table !== 'part') return rows;
  return kindGroups.flatMap((group) => rows.filter((row) => groupOf(row, snapshot) === group));
}

function kindChoices(table: string, snapshot: Snapshot): SheetView['kinds'] {
  return [...snapshot.book.kinds.values()]
    .filter((kind) => kind.table === table && kind.id !== kind.table)
    .map((kind) => ({ id: kind.id, label: kind.name, group: groupLabel(kind.group) }));
}

/** A sheet without its rows. */
export function sheetView(table: string, context: SheetContext): SheetView {
  const { snapshot } = context;
  const form = fileForm(snapshot.shown);
  const plan = sheetPlans(form).find((one) => one.table === table);
  return {
    table,
    label: plan?.label ?? table,
    noun: plan?.noun ?? table,
    columns: context.columns.get(table) ?? [],
    groups: table === 'part' ? groupsOf(snapshot) : [],
    order:
      table === 'job'
        ? headColumns(form).map((column) => column.key)
        : sheetRows(table, snapshot).map(orderKey),
    kinds: kindChoices(table, snapshot),
  };
}

/** Tables that have a tab: those always shown and those with rows. */
export function shownTables(snapshot: Snapshot): readonly string[] {
  return shownPlans(snapshot.shown).map(({ table }) => table);
}

import {
  rowKey,
  type Bill,
  type BillLine,
  type Money,
  type SessionChange,
  type Charge,
  type Snapshot,
  type Task,
} from '../../engine/index.ts';
import type { RowAddress, ToWebview } from '../../protocol/messages.ts';
import { packRows } from '../../protocol/packing.ts';
import type { KnobView, RowView, SheetView } from '../../protocol/views.ts';
import { rowAt } from '../addresses.ts';
import { billView } from './bill-view.ts';
import { checkViews } from './check-view.ts';
import { headlineTotals, headlineView } from './headline-view.ts';
import { problemViews } from './problem-view.ts';
import { jobRows, rowView, sheetRows, sheetView, shownTables } from './sheet-view.ts';
import { toldBefore, type SheetContext } from './sheet-context.ts';

export type Patch = ToWebview & { readonly type: 'patch' };

export interface PatchParts {
  readonly before: SheetContext;
  readonly after: SheetContext;
  readonly change: SessionChange;
  readonly baseline: Money;
  readonly knobs: readonly KnobView[];
  readonly revision: number;
  /** Rows that were told before with the totals, but for their problems and checks. */
  readonly told?: ReadonlySet<string>;
}

function sharesOf(bill: Bill): ReadonlyMap<string, BillLine> {
  return new Map(bill.lines.map((line) => [line.id, line]));
}

function sharesByRow(line: BillLine | undefined): ReadonlyMap<string, string> {
  const shares = new Map<string, string>();
  for (const need of line?.rows ?? []) {
    const key = rowKey({ table: need.table, id: need.row, occurrence: need.occurrence });
    shares.set(key, `${shares.get(key) ?? ''} ${String(need.charge)} ${String(need.need.base)}`);
  }
  return shares;
}

/** Rows whose amounts or money moved, though nothing in the row itself was edited. */
function movedRows(before: Snapshot, after: Snapshot): readonly string[] {
  if (before.bill === after.bill) return [];
  const [was, now] = [sharesOf(before.bill), sharesOf(after.bill)];
  const moved: string[] = [];
  for (const id of new Set([...was.keys(), ...now.keys()])) {
    if (was.get(id) === now.get(id)) continue;
    const [old, next] = [sharesByRow(was.get(id)), sharesByRow(now.get(id))];
    for (const key of new Set([...old.keys(), ...next.keys()]))
      if (old.get(key) !== next.get(key)) moved.push(key);
  }
  return moved;
}

/** Tasks whose time or money moved. */
function movedTasks(before: Snapshot, after: Snapshot): readonly string[] {
  if (before.price === after.price) return [];
  const known = new Map(
    before.work.tasks.map((task) => [rowKey({ ...task, table: 'task' }), task]),
  );
  const money = ({ price }: Snapshot, task: Task): number =>
    price.labourOf.get(`${task.id}#${String(task.occurrence)}`) ?? 0;
  return after.work.tasks.flatMap((task) => {
    const key = rowKey({ ...task, table: 'task' });
    const old = known.get(key);
    return old === task && money(before, old) === money(after, task) ? [] : [key];
  });
}

/** Charges that come to another sum. */
function movedCharges(before: Snapshot, after: Snapshot): readonly string[] {
  if (before.price === after.price) return [];
  const key = (charge: Charge): string => rowKey({ ...charge, table: 'charge' });
  const amounts = new Map(before.price.charges.map((one) => [key(one), one.amount]));
  return after.price.charges
    .filter((one) => amounts.get(key(one)) !== one.amount)
    .map((one) => key(one));
}

/** Rows with a problem that came, went or changed. */
function troubledRows(before: SheetContext, after: SheetContext): readonly string[] {
  const keys = new Set([...before.problems.keys(), ...after.problems.keys()]);
  return [...keys].flatMap((key) => {
    const same =
      before.problems.get(key)?.problem.message === after.problems.get(key)?.problem.message;
    return same ? [] : [key.split('/').slice(0, 2).join('/')];
  });
}

function changedRows(parts: PatchParts): readonly RowView[] {
  const { before, after, change, told } = parts;
  const tables = new Set(shownTables(after.snapshot));
  const columnsChanged = [...tables].filter((table) => !sameColumns(table, before, after));
  const troubled = new Set(troubledRows(before, after));
  const keys = new Set([
    ...change.rows,
    ...movedRows(before.snapshot, after.snapshot),
    ...movedTasks(before.snapshot, after.snapshot),
    ...movedCharges(before.snapshot, after.snapshot),
    ...troubled,
  ]);
  const isTold = (key: string): boolean =>
    told?.has(key) === true && !troubled.has(key) && !key.startsWith('check/');
  const views: RowView[] = [];
  // Names of kinds and materials show in rows that did not change themselves.
  const renewed = before.snapshot.book !== after.snapshot.book;
  for (const table of tables) {
    if (table === 'job') continue;
    if (renewed || columnsChanged.includes(table)) {
      views.push(...sheetRows(table, after.snapshot).map((row) => rowView(row, after)));
      continue;
    }
    for (const row of after.snapshot.workbook.rows(table)) {
      const key = rowKey(row);
      if (keys.has(key) && !isTold(key)) views.push(rowView(row, after));
    }
  }
  const settings = [...keys].some((key) => key.startsWith('job/'));
  if (settings || before.snapshot.shown.head !== after.snapshot.shown.head)
    views.push(...jobRows(after));
  return views;
}

function sameColumns(table: string, before: SheetContext, after: SheetContext): boolean {
  const one = before.columns.get(table) ?? [];
  const two = after.columns.get(table) ?? [];
  return one.length === two.length && one.every((column, index) => column.key === two[index]?.key);
}

/** Sheets to send again: order or columns changed, or the totals of their groups. */
function changedSheets(parts: PatchParts): readonly SheetView[] {
  const { before, after, change } = parts;
  const renewed = before.snapshot.book !== after.snapshot.book;
  // A sheet that lost its last row is sent too, empty.
  const tables = new Set([...shownTables(before.snapshot), ...shownTables(after.snapshot)]);
  return [...tables].flatMap((table) => {
    const structure = change.structure || renewed || !sameColumns(table, before, after);
    return structure ? [sheetView(table, after)] : [];
  });
}

/** A paste is told whole: its rows may be most of the sheet. */
const mostTyped = 3;

/**
 * The rows that were typed into with the totals; undefined where all must be told together. Problems
 * and checks are told with all else, so that no total waits for them.
 */
export function totalsOf(
  parts: PatchParts,
  typed: readonly RowAddress[],
): { readonly patch: Omit<Patch, 'cause'>; readonly rows: ReadonlySet<string> } | undefined {
  const { after, baseline, revision } = parts;
  const rows = typedRows(parts, typed);
  if (rows.length === 0) return undefined;
  const headline = headlineTotals(after.snapshot, baseline);
  return {
    patch: {
      type: 'patch',
      part: 'totals',
      revision,
      sheets: [],
      rows: packRows(rows),
      headline,
    },
    rows: new Set(rows.map(rowKey)),
  };
}

/** Rows that can be told by themselves: they stand where they stood, in the columns that they had. */
function typedRows(
  { before, after, change }: PatchParts,
  typed: readonly RowAddress[],
): readonly RowView[] {
  const renewed = before.snapshot.book !== after.snapshot.book;
  if (typed.length > mostTyped || change.structure || renewed) return [];
  const tables = new Set(shownTables(after.snapshot));
  const views = typed.flatMap((address): readonly RowView[] => {
    const { table } = address;
    if (table === 'job' || !tables.has(table) || !sameColumns(table, before, after)) return [];
    const row = rowAt(address, after.snapshot);
    return row === undefined ? [] : [rowView(row, toldBefore(after, before))];
  });
  return views.length === typed.length ? views : [];
}

/** What one change did, as the smallest message that brings every panel up to date. */
export function patchOf(parts: PatchParts): Omit<Patch, 'cause'> {
  const { before, after, baseline, knobs, revision } = parts;
  const moneyMoved = before.snapshot.bill !== after.snapshot.bill;
  const troubled = before.snapshot.problems !== after.snapshot.problems;
  const sheets = changedSheets(parts);
  return {
    type: 'patch',
    revision,
    sheets,
    rows: packRows(changedRows(parts)),
    ...(moneyMoved && !sheets.some(({ table }) => table === 'part')
      ? { groups: [{ table: 'part', groups: sheetView('part', after).groups }] }
      : {}),
    headline: headlineView(after.snapshot, baseline),
    knobs,
    ...(moneyMoved ? { bill: billView(after.snapshot, baseline, before.snapshot.bill) } : {}),
    ...(before.snapshot.checks === after.snapshot.checks
      ? {}
      : { checks: checkViews(after.snapshot) }),
    ...(troubled ? { problems: problemViews(after.snapshot) } : {}),
  };
}

import {
  columnOf,
  columnsOf,
  fileForm,
  type Column,
  type FileForm,
  type FileReading,
  type Snapshot,
} from '../../engine/index.ts';
import type { CellEditor, ColumnView } from '../../protocol/views.ts';

/** A table with its tab. One without rows shows only when it is `always`. */
interface SheetPlan {
  readonly table: string;
  readonly label: string;
  readonly noun: string;
  readonly always: boolean;
}

/** Sheets of a job, in tab order. */
const jobSheets: readonly SheetPlan[] = [
  { table: 'part', label: 'Parts', noun: 'part', always: true },
  { table: 'driver', label: 'Drivers', noun: 'driver', always: true },
  { table: 'measure', label: 'Measures', noun: 'measure', always: true },
  { table: 'panel', label: 'Panels', noun: 'panel', always: true },
  { table: 'task', label: 'Tasks', noun: 'task', always: true },
  { table: 'check', label: 'Checks', noun: 'check', always: true },
  { table: 'charge', label: 'Charges', noun: 'charge', always: true },
  { table: 'job', label: 'Job', noun: 'setting', always: true },
  { table: 'material', label: 'Materials of this job', noun: 'material', always: false },
  { table: 'pack', label: 'Packs of this job', noun: 'pack', always: false },
  { table: 'supplier', label: 'Suppliers of this job', noun: 'supplier', always: false },
  { table: 'constant', label: 'Constants of this job', noun: 'constant', always: false },
  { table: 'price', label: 'Frozen prices', noun: 'price', always: false },
  { table: 'column', label: 'Own columns', noun: 'column', always: false },
  { table: 'option', label: 'Options', noun: 'option', always: false },
  { table: 'lock', label: 'Locked on sheets', noun: 'lock', always: false },
  { table: 'ask', label: 'Template questions', noun: 'question', always: false },
];

/** Sheets of a shop book; its settings stand in the table that those of a job stand in. */
const bookSheets: readonly SheetPlan[] = [
  { table: 'material', label: 'Materials', noun: 'material', always: true },
  { table: 'pack', label: 'Packs and stock', noun: 'pack', always: true },
  { table: 'supplier', label: 'Suppliers', noun: 'supplier', always: true },
  { table: 'constant', label: 'Constants', noun: 'constant', always: true },
  { table: 'kind', label: 'Kinds and rates', noun: 'kind', always: true },
  { table: 'band', label: 'Charts', noun: 'band', always: true },
  { table: 'kit', label: 'Kits', noun: 'kit', always: true },
  { table: 'question', label: 'Kit questions', noun: 'question', always: false },
  { table: 'kit_row', label: 'Kit rows', noun: 'kit row', always: false },
  { table: 'column', label: 'Own columns', noun: 'column', always: false },
  { table: 'job', label: 'Book', noun: 'setting', always: true },
];

/** Sheets of a file, in tab order. */
export function sheetPlans(form: FileForm): readonly SheetPlan[] {
  return form === 'book' ? bookSheets : jobSheets;
}

/** Sheets that have a tab: those always shown and those with rows. */
export function shownPlans(reading: FileReading): readonly SheetPlan[] {
  return sheetPlans(fileForm(reading)).filter(
    ({ table, always }) => always || (reading.tables.get(table) ?? []).length > 0,
  );
}

/** Columns of the parts sheet that always stand, before those that some row uses. */
const partColumns = ['name', 'kind', 'on', 'material', 'words', 'use', 'qty', 'need', 'charge'];

export function editorOf(column: Column): CellEditor {
  if (column.computed !== undefined) return 'none';
  switch (column.type.kind) {
    case 'choice':
    case 'yes-no':
      return 'choice';
    case 'link':
      return 'link';
    default:
      return 'text';
  }
}

const widths: Readonly<Record<string, number>> = {
  name: 230,
  note: 240,
  driver: 90,
  material: 150,
  value: 120,
};

// All that a part always shows stands beside its card in a window of 1440 px.
const partWidths: Readonly<Record<string, number>> = {
  name: 154,
  kind: 90,
  on: 88,
  material: 112,
  use: 80,
  qty: 56,
};

/** A label as it heads a column or stands before a field. */
export function labelText(label: string): string {
  return label.charAt(0).toUpperCase() + label.slice(1);
}

export function columnView(column: Column): ColumnView {
  const quantity = column.type.kind === 'quantity';
  return {
    key: column.key,
    label: labelText(column.label),
    help: column.help,
    editor: editorOf(column),
    align: quantity ? 'end' : 'start',
    width: widths[column.key] ?? (quantity ? 100 : 120),
  };
}

const computedOfParts: Readonly<Record<string, ColumnView>> = {
  words: {
    key: 'words',
    label: 'Main size',
    help: 'The sizes that matter for this kind, in words.',
    editor: 'none',
    align: 'start',
    width: 180,
  },
  need: {
    key: 'need',
    label: 'Need',
    help: 'What the whole job takes of the material for this row, waste included.',
    editor: 'none',
    align: 'end',
    width: 90,
  },
  charge: {
    key: 'charge',
    label: 'Charge',
    help: "This row's share of the material money in the price, with what it draws.",
    editor: 'none',
    align: 'end',
    width: 90,
  },
};

const jobColumns: readonly ColumnView[] = [
  {
    key: 'label',
    label: 'Setting',
    help: 'What is set for the whole job.',
    editor: 'none',
    align: 'start',
    width: 200,
  },
  {
    key: 'value',
    label: 'Value',
    help: 'Value of the setting.',
    editor: 'text',
    align: 'start',
    width: 320,
  },
];

/** What a check came out as, beside its figures. */
const checkResults: readonly ColumnView[] = [
  {
    key: 'outcome',
    label: 'Outcome',
    help: 'Pass, near (less than the margin it wants is left), fails, decide, or open.',
    editor: 'none',
    align: 'start',
    width: 90,
  },
  {
    key: 'margin',
    label: 'To spare',
    help: 'Room left to the limit that is closer; below nothing where the check fails.',
    editor: 'none',
    align: 'end',
    width: 90,
  },
];

const taskResults: readonly ColumnView[] = [
  {
    key: 'time',
    label: 'Hours',
    help: 'Time to be paid for the whole job; of a wait, by the clock.',
    editor: 'none',
    align: 'end',
    width: 90,
  },
  {
    key: 'charge',
    label: 'Labour',
    help: 'Money of this task in the price, at its rate.',
    editor: 'none',
    align: 'end',
    width: 100,
  },
];

const chargeResults: readonly ColumnView[] = [
  {
    key: 'charge',
    label: 'Comes to',
    help: 'What it adds to the price; of a deposit or a stage, what is due then.',
    editor: 'none',
    align: 'end',
    width: 110,
  },
];

/** A sheet's own columns with its results before the column named. */
function withResults(
  own: readonly ColumnView[],
  results: readonly ColumnView[],
  before: string,
): readonly ColumnView[] {
  const place = own.findIndex(({ key }) => key === before);
  return [...own.slice(0, place), ...results, ...own.slice(place)];
}

function usedKeys(snapshot: Pick<Snapshot, 'shown'>, table: string): Set<string> {
  const used = new Set<string>();
  for (const row of snapshot.shown.tables.get(table) ?? [])
    for (const key of row.cells.keys()) used.add(key);
  return used;
}

/** Tables whose rows say things by dotted keys: `default.rate`, `set.length`. */
const dottedTables: readonly string[] = ['kind', 'kit_row', 'option'];

function dottedColumns(table: string, snapshot: Pick<Snapshot, 'shown'>): readonly Column[] {
  if (!dottedTables.includes(table)) return [];
  const dotted = [...usedKeys(snapshot, table)].filter((key) => key.includes('.'));
  return dotted.sort().flatMap((key) => columnOf(table, key) ?? []);
}

function dottedView(column: Column): ColumnView {
  const [first = '', ...rest] = column.key.split('.');
  return {
    ...columnView(column),
    label: labelText(`${rest.join(' ')} (${first})`.replaceAll('_', ' ')),
  };
}

/** The columns of a sheet, id apart (it is the row header). */
export function sheetColumns(
  table: string,
  snapshot: Pick<Snapshot, 'shown'>,
): readonly ColumnView[] {
  if (table === 'job') return jobColumns;
  const all = columnsOf(snapshot.shown, table).filter(
    (column) => column.key !== 'id' && column.key !== 'order' && column.computed === undefined,
  );
  if (table === 'check') return withResults(all.map(columnView), checkResults, 'value');
  if (table === 'task') return withResults(all.map(columnView), taskResults, 'basis');
  if (table === 'charge') return withResults(all.map(columnView), chargeResults, 'amount');
  if (table !== 'part')
    return [...all.map(columnView), ...dottedColumns(table, snapshot).map(dottedView)];
  const used = usedKeys(snapshot, table);
  const byKey = new Map(all.map((column) => [column.key, column]));
  const fixed = partColumns.flatMap((key) => {
    const computed = computedOfParts[key];
    if (computed !== undefined) return [computed];
    const column = byKey.get(key);
    return column === undefined ? [] : [columnView(column)];
  });
  const more = all.filter((column) => !partColumns.includes(column.key) && used.has(column.key));
  return [...fixed, ...more.map(columnView)].map((column) => ({
    ...column,
    width: partWidths[column.key] ?? column.width,
  }));
}

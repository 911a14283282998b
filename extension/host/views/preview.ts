import {
  fileForm,
  headColumns,
  kindGroups,
  readBook,
  rowKey,
  settingsOf,
  type Book,
  type FileReading,
  type SourceRow,
} from '../../engine/index.ts';
import type { BillView, CellView, ColumnView, JobView, RowView } from '../../protocol/views.ts';
import { blankCell } from './cell-view.ts';
import { sheetColumns, shownPlans } from './column-plan.ts';
import { groupLabel } from './sheet-view.ts';

/** What is shown of a job before anything is calculated: its texts. */
export interface Preview {
  readonly job: JobView;
  readonly rows: ReadonlyMap<string, readonly RowView[]>;
}

const waiting: CellView = { ...blankCell, look: 'waiting' };

const noBill: BillView = {
  groups: [],
  buy: '',
  charge: '',
  left: '',
  change: '',
  note: 'Calculating…',
  cautions: { first: '', list: [] },
};

/** Links and kinds read better by name. */
function nameOf(key: string, text: string, book: Book): string {
  if (key === 'kind') return book.kinds.get(text)?.name ?? text;
  if (key === 'material') return book.materials.get(text)?.cells.get('name') ?? text;
  return text;
}

function sourceCell(row: SourceRow, { key }: ColumnView, book: Book): CellView {
  const text = row.cells.get(key)?.text;
  if (text === undefined) return waiting;
  const formula = text.startsWith('=');
  if (formula) return { ...waiting, typed: text, formula };
  return { ...blankCell, shown: nameOf(key, text, book), typed: text, look: 'typed' };
}

function groupOf(row: SourceRow, book: Book): string {
  if (row.table !== 'part') return '';
  return book.kinds.get(row.cells.get('kind')?.text ?? '')?.group ?? 'structure';
}

function previewRow(row: SourceRow, columns: readonly ColumnView[], book: Book): RowView {
  return {
    table: row.table,
    id: row.id,
    occurrence: row.occurrence,
    kind: row.cells.get('kind')?.text ?? '',
    group: groupOf(row, book),
    locked: row.broken,
    message: '',
    cells: columns.map((column) => sourceCell(row, column, book)),
  };
}

function inGroups(rows: readonly RowView[]): readonly RowView[] {
  const grouped = kindGroups.flatMap((group) => rows.filter((row) => row.group === group));
  return grouped.length === rows.length ? grouped : rows;
}

function orderKey(row: RowView): string {
  const key = rowKey(row);
  return row.occurrence === 0 ? row.id : key.slice(key.indexOf('/') + 1);
}

/**
 * The texts of a job, ready to show while its answers are worked out: `undefined` for a file that
 * cannot be shown. The book is the built-in one with the job's own rows; names of the shop's own
 * materials come with the answers.
 */
export function previewOf(reading: FileReading): Preview | undefined {
  if (reading.state !== 'readable') return undefined;
  const settings = settingsOf(reading.head);
  const book = readBook({ job: reading.tables, currency: settings.currency });
  const rows = new Map<string, readonly RowView[]>();
  const form = fileForm(reading);
  const sheets = shownPlans(reading).map(({ table, label, noun }) => {
    const columns = sheetColumns(table, { shown: reading });
    const views = (reading.tables.get(table) ?? []).map((row) => previewRow(row, columns, book));
    const shown = table === 'part' ? inGroups(views) : views;
    rows.set(table, shown);
    const order = table === 'job' ? headColumns(form).map(({ key }) => key) : shown.map(orderKey);
    const groups =
      table === 'part'
        ? kindGroups.map((group) => ({ group, label: groupLabel(group), totals: '' }))
        : [];
    return { table, label, noun, columns, groups, order, kinds: [] };
  });
  const job: JobView = {
    form,
    state: 'calculating',
    message: '',
    line: 0,
    units: settings.units,
    sheets,
    headline: {
      title: reading.head.get('title')?.text ?? 'Untitled job',
      figures: [],
      notes: ['Calculating…'],
    },
    knobs: [],
    bill: noBill,
    checks: [],
    problems: [],
    kits: [],
  };
  return { job, rows };
}

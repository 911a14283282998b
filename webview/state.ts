import type { CellAddress, ToWebview } from '../extension/protocol/messages.ts';
import { headlineWithTotals } from '../extension/protocol/headline.ts';
import { unpackRows } from '../extension/protocol/packing.ts';
import type { CompareView } from '../extension/protocol/compare-view.ts';
import type { CellView, JobView, RowView, SheetView } from '../extension/protocol/views.ts';
import { cellKey, rowKey } from './addresses.ts';
import { sameColumns } from './grid/lines.ts';
import { Marks } from './marks.ts';

export const blankCell: CellView = {
  shown: '',
  typed: '',
  look: 'blank',
  formula: false,
  message: '',
  severity: '',
};

const waitingCell: CellView = { ...blankCell, look: 'waiting' };

/** What a message changed, so that only those parts are painted. */
export interface Changes {
  /** Everything: the job was replaced. */
  readonly job: boolean;
  /** Tables whose rows or order changed. */
  readonly tables: ReadonlySet<string>;
  readonly headline: boolean;
  readonly knobs: boolean;
  readonly bill: boolean;
  readonly checks: boolean;
  readonly problems: boolean;
}

interface Echo {
  readonly request: number;
  readonly view: CellView;
}

/** A cell as it looks between being typed and being answered. */
function echoView(text: string): CellView {
  const formula = text.startsWith('=');
  const look = text === '' ? 'blank' : formula ? 'waiting' : 'typed';
  return { ...blankCell, shown: text, typed: text, look, formula };
}

type Patch = Extract<ToWebview, { readonly type: 'patch' }>;

/** What the webview knows of the job: the last views from the host under what was typed since. */
export class State {
  job: JobView | undefined;
  revision = 0;
  readonly #rows = new Map<string, Map<string, RowView>>();
  // Revision at which a patch last changed a row: rows of an older `rows` message do not undo it.
  readonly #patched = new Map<string, number>();
  readonly #echoes = new Map<string, Echo>();
  readonly #acknowledged = new Map<number, number>();
  #marks = new Marks(undefined);

  get editable(): boolean {
    return ['ready', 'calculating', 'empty'].includes(this.job?.state ?? '');
  }

  sheet(table: string): SheetView | undefined {
    return this.job?.sheets.find((sheet) => sheet.table === table);
  }

  row(table: string, key: string): RowView | undefined {
    return this.#rows.get(table)?.get(key);
  }

  /** The cell in column `index` of a row, as it should look now. */
  cell(
    table: string,
    key: string,
    column: { readonly key: string; readonly index: number },
  ): CellView {
    const echo =
      this.#echoes.size === 0 ? undefined : this.#echoes.get(`${table}/${key}/${column.key}`);
    if (echo !== undefined) return echo.view;
    const row = this.row(table, key);
    if (row === undefined) return waitingCell;
    return this.#marks.cell(`${table}/${key}/${column.key}`, row.cells[column.index] ?? blankCell);
  }

  /** Marks what differs from another version; undefined takes the marks away. */
  mark(view: CompareView | undefined): void {
    this.#marks = new Marks(view);
    // A row that is the same object is not painted again.
    for (const rows of this.#rows.values())
      for (const [key, row] of rows) rows.set(key, { ...this.#marks.row(row) });
  }

  /** True while a cell of this row shows what was typed and not yet answered. */
  echoed(table: string, key: string): boolean {
    if (this.#echoes.size === 0) return false;
    const start = `${table}/${key}/`;
    return [...this.#echoes.keys()].some((one) => one.startsWith(start));
  }

  /** Shows typed texts at once, until the patch caused by `request` brings the answers. */
  echo(
    request: number,
    cells: readonly { readonly cell: CellAddress; readonly text: string }[],
  ): void {
    for (const { cell, text } of cells)
      this.#echoes.set(cellKey(cell), { request, view: echoView(text) });
  }

  /** Takes back the echoes of a request: refused, or answered by a patch. */
  settle(request: number): void {
    for (const [key, echo] of this.#echoes) if (echo.request === request) this.#echoes.delete(key);
    this.#acknowledged.delete(request);
  }

  /** The host took the edit; its echoes go when the state of `revision` is here. */
  acknowledge(request: number, revision: number): void {
    if (revision <= this.revision) this.settle(request);
    else this.#acknowledged.set(request, revision);
  }

  apply(message: ToWebview): Changes | undefined {
    switch (message.type) {
      case 'shown':
        return this.#show(message.revision, message.job);
      case 'rows':
        return this.#takeRows(message);
      case 'patch':
        return this.#patch(message);
      default:
        return undefined;
    }
  }

  #show(revision: number, job: JobView): Changes {
    // Rows that still fit stay on screen until the new ones, which follow, take their place.
    for (const table of this.#rows.keys()) {
      const sheet = job.sheets.find((one) => one.table === table);
      if (!sheet || !sameColumns(this.sheet(table), sheet)) this.#rows.delete(table);
      else this.#forgetRows(sheet);
    }
    this.job = job;
    this.#patched.clear();
    this.#advance(revision);
    const tables = new Set(job.sheets.map((sheet) => sheet.table));
    return {
      job: true,
      tables,
      headline: true,
      knobs: true,
      bill: true,
      checks: true,
      problems: true,
    };
  }

  #takeRows(message: Extract<ToWebview, { readonly type: 'rows' }>): Changes {
    const rows = unpackRows(message.rows);
    for (const row of rows) {
      const patched = this.#patched.get(`${row.table}/${rowKey(row)}`) ?? -1;
      if (message.revision >= patched) this.#put(row);
    }
    return this.#changes({ tables: new Set([message.table]) });
  }

  #patch(message: Patch): Changes | undefined {
    if (this.job === undefined || message.revision < this.revision) {
      if (message.cause !== undefined) this.settle(message.cause);
      return undefined;
    }
    const tables = new Set<string>();
    for (const row of unpackRows(message.rows)) {
      this.#put(row);
      this.#patched.set(`${row.table}/${rowKey(row)}`, message.revision);
      tables.add(row.table);
    }
    for (const sheet of message.sheets) {
      tables.add(sheet.table);
      this.#forgetRows(sheet);
    }
    for (const { table } of message.groups ?? []) tables.add(table);
    this.job = mergedJob(this.job, message);
    if (message.cause !== undefined) {
      for (const echo of this.#echoTables(message.cause)) tables.add(echo);
      this.settle(message.cause);
    }
    this.#advance(message.revision);
    return this.#changes({
      tables,
      headline: message.headline !== undefined,
      knobs: message.knobs !== undefined,
      bill: message.bill !== undefined,
      checks: message.checks !== undefined,
      problems: message.problems !== undefined,
    });
  }

  #echoTables(request: number): readonly string[] {
    return [...this.#echoes]
      .filter(([, echo]) => echo.request === request)
      .map(([key]) => key.slice(0, key.indexOf('/')));
  }

  #changes(some: Partial<Changes> & { readonly tables: ReadonlySet<string> }): Changes {
    return {
      job: false,
      headline: false,
      knobs: false,
      bill: false,
      checks: false,
      problems: false,
      ...some,
    };
  }

  #put(row: RowView): void {
    let rows = this.#rows.get(row.table);
    if (rows === undefined) {
      rows = new Map();
      this.#rows.set(row.table, rows);
    }
    rows.set(rowKey(row), this.#marks.row(row));
  }

  #forgetRows(sheet: SheetView): void {
    const rows = this.#rows.get(sheet.table);
    if (rows === undefined || rows.size <= sheet.order.length) return;
    const kept = new Set(sheet.order);
    for (const key of rows.keys()) if (!kept.has(key)) rows.delete(key);
  }

  #advance(revision: number): void {
    this.revision = revision;
    for (const [request, needed] of this.#acknowledged)
      if (needed <= revision) this.settle(request);
  }
}

function mergedJob(job: JobView, patch: Patch): JobView {
  const { part, headline, knobs, bill, checks, problems } = patch;
  return {
    ...job,
    sheets: mergedSheets(job.sheets, patch),
    ...(headline && {
      headline: part === 'totals' ? headlineWithTotals(job.headline, headline) : headline,
    }),
    ...(knobs && { knobs }),
    ...(bill && { bill }),
    ...(checks && { checks }),
    ...(problems && { problems }),
  };
}

function mergedSheets(
  old: readonly SheetView[],
  { sheets, groups = [] }: Pick<Patch, 'sheets' | 'groups'>,
): readonly SheetView[] {
  if (sheets.length === 0 && groups.length === 0) return old;
  const byTable = new Map(sheets.map((sheet) => [sheet.table, sheet]));
  const totals = new Map(groups.map((one) => [one.table, one.groups]));
  const merged = old.map((sheet) => {
    const now = byTable.get(sheet.table) ?? sheet;
    const newTotals = totals.get(sheet.table);
    return newTotals === undefined ? now : { ...now, groups: newTotals };
  });
  const known = new Set(old.map((sheet) => sheet.table));
  return [...merged, ...sheets.filter((sheet) => !known.has(sheet.table))];
}

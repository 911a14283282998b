import { columnsOf, headColumns } from '../job/columns.ts';
import type { Edit } from '../job/source.ts';
import type { Minor } from '../estimate/bill.ts';
import { nameOf } from '../estimate/cells.ts';
import { ok, type Result } from '../result.ts';
import { compareJobs, type CellChange, type RowChange } from '../sharing/compare.ts';
import { shownCell } from '../workbook/shown-cell.ts';
import {
  comparedFigures,
  comparedMaterials,
  rowFigures,
  type ComparedFigure,
  type ComparedMaterial,
  type RowFigures,
} from './compare-figures.ts';
import { rowKey } from './row-key.ts';
import type { Session } from './session.ts';
import type { Snapshot } from './snapshot.ts';

/** A cell that says something else, as people read it. */
export interface ComparedCell extends CellChange {
  readonly label: string;
  /** Values in each version's own units; empty where the version has no such cell. */
  readonly shownBefore: string;
  readonly shownAfter: string;
  /** What this one change alone does to the price before tax, in minor units; undefined where that cannot be told. */
  readonly own: Minor | undefined;
}

export interface ComparedRow extends Omit<RowChange, 'cells'> {
  readonly name: string;
  readonly cells: readonly ComparedCell[];
  readonly before: RowFigures;
  readonly after: RowFigures;
  /** What the coming or going of this row alone does to the price before tax. */
  readonly own: Minor | undefined;
}

/** Two versions of a job held against each other, with what the change came to. */
export interface ComparedJobs {
  readonly same: boolean;
  readonly settings: readonly ComparedCell[];
  readonly rows: readonly ComparedRow[];
  /** Rows that say the same and take more or less than before. */
  readonly followers: readonly ComparedRow[];
  readonly figures: readonly ComparedFigure[];
  readonly materials: readonly ComparedMaterial[];
  /** Currencies of the two versions: money of one is not subtracted from money of another. */
  readonly currencies: { readonly before: string; readonly after: string };
}

/** Changes tried one by one; more would keep a person waiting. */
const mostTried = 200;

const noFigures: RowFigures = { need: undefined, charge: undefined, minutes: undefined };

interface Versions {
  readonly before: Snapshot;
  readonly after: Snapshot;
  readonly tried: (edit: Edit) => Minor | undefined;
}

/** Tries edits on the earlier version, one at a time. */
function trial(session: Session | undefined): (edit: Edit) => Minor | undefined {
  let left = mostTried;
  return (edit) => {
    if (session === undefined || left === 0) return undefined;
    left--;
    const { price } = session.snapshot();
    const then = session.whatIf([edit])?.price;
    if (then === undefined || (then.state !== price.state && then.state !== 'whole'))
      return undefined;
    return then.totals.price - price.totals.price;
  };
}

function shownIn(
  { workbook, settings }: Snapshot,
  row: { readonly table: string; readonly id: string; readonly occurrence: number },
  column: string,
): string {
  const found = workbook
    .rows(row.table)
    .find(({ id, occurrence }) => id === row.id && occurrence === row.occurrence);
  return found === undefined ? '' : shownCell(found.cell(column), settings);
}

function formerOf({ table, id, formerId = id, formerOccurrence }: RowChange): {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
} {
  return { table, id: formerId, occurrence: formerOccurrence };
}

function labelOf(snapshot: Snapshot, table: string, key: string): string {
  const known = columnsOf(snapshot.reading, table).find((column) => column.key === key);
  return known?.label ?? key.replaceAll(/[._]/g, ' ');
}

function comparedCells(change: RowChange, { before, after, tried }: Versions): ComparedCell[] {
  const former = formerOf(change);
  return change.cells.map((cell) => {
    const { column } = cell;
    // A book's tables are shown as they are written: a job has no answers for them.
    const shown = (snapshot: Snapshot, text: string | undefined, row: typeof former): string =>
      text === undefined ? '' : shownIn(snapshot, row, column) || text;
    return {
      ...cell,
      label: labelOf(after, change.table, column),
      shownBefore: shown(before, cell.before, former),
      shownAfter: shown(after, cell.after, change),
      own:
        change.kind === 'kept'
          ? tried({ kind: 'set-cell', row: former, column, text: cell.after })
          : undefined,
    };
  });
}

function ownOf(change: RowChange, { tried }: Versions): Minor | undefined {
  const { table, id, kind, cells } = change;
  if (kind === 'kept') return undefined;
  if (kind === 'removed') return tried({ kind: 'delete-row', row: formerOf(change) });
  const texts = Object.fromEntries(cells.map(({ column, after = '' }) => [column, after]));
  return tried({ kind: 'insert-row', table, id, cells: texts });
}

function settingCell(change: CellChange, { tried }: Versions): ComparedCell {
  const { column, before = '', after = '' } = change;
  const label = headColumns().find(({ key }) => key === column)?.label ?? column;
  const own = tried({ kind: 'set-head', key: column, text: change.after });
  return { ...change, label, shownBefore: before, shownAfter: after, own };
}

function nameIn(snapshot: Snapshot, row: ReturnType<typeof formerOf>): string | undefined {
  const found = snapshot.workbook
    .rows(row.table)
    .find(({ id, occurrence }) => id === row.id && occurrence === row.occurrence);
  return found === undefined ? undefined : nameOf(found);
}

type FiguresOf = ReadonlyMap<string, RowFigures>;

/** Rows of the later version that nobody touched and whose figures moved. */
function followersOf(
  { after }: Versions,
  changed: readonly RowChange[],
  [was, now]: readonly [FiguresOf, FiguresOf],
): readonly ComparedRow[] {
  const touched = new Set(changed.map((row) => rowKey(row)));
  return ['part', 'driver', 'task', 'charge'].flatMap((table) =>
    after.workbook.rows(table).flatMap((row): readonly ComparedRow[] => {
      const key = rowKey(row);
      const figures = { before: was.get(key) ?? noFigures, after: now.get(key) ?? noFigures };
      const { before, after: then } = figures;
      const same =
        before.need === then.need &&
        before.charge === then.charge &&
        before.minutes === then.minutes;
      if (same || touched.has(key)) return [];
      const { id, occurrence, broken } = row;
      const place = { table, id, occurrence, formerId: undefined, formerOccurrence: occurrence };
      const state = { kind: 'kept', moved: false, broken, cells: [], own: undefined } as const;
      return [{ ...place, ...state, name: nameOf(row), ...figures }];
    }),
  );
}

/**
 * Holds two versions of a job against each other and tells what the change did: to each row, to the
 * materials, to money and hours. With `before` opened once more (nothing settled), each change is
 * tried alone on it as well.
 */
export function compareSnapshots(
  before: Snapshot,
  after: Snapshot,
  again?: Session,
): Result<ComparedJobs> {
  const compared = compareJobs(before.reading, after.reading);
  if (!compared.ok) return compared;
  const versions: Versions = { before, after, tried: trial(again) };
  const figures = [rowFigures(before), rowFigures(after)] as const;
  const { settings, rows, same } = compared.value;
  return ok({
    same,
    settings: settings.map((change) => settingCell(change, versions)),
    rows: rows.map((change) => {
      const former = formerOf(change);
      return {
        ...change,
        name: nameIn(after, change) ?? nameIn(before, former) ?? change.id,
        cells: comparedCells(change, versions),
        before: figures[0].get(rowKey(former)) ?? noFigures,
        after:
          (change.kind === 'removed' ? undefined : figures[1].get(rowKey(change))) ?? noFigures,
        own: ownOf(change, versions),
      };
    }),
    followers: followersOf(versions, rows, figures),
    figures: comparedFigures(before, after),
    materials: comparedMaterials(before, after),
    currencies: { before: before.price.currency, after: after.price.currency },
  });
}

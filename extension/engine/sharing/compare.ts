import { applyEdits } from '../job/apply-edits.ts';
import { tablePlace } from '../job/columns.ts';
import { readFile } from '../job/read-file.ts';
import type { FileReading, SourceCell, SourceRow } from '../job/source.ts';
import { failed, ok, type Result } from '../result.ts';
import { compareProblem } from './compare-problems.ts';
import { matchRows, renamedRows, type Renamed } from './match-rows.ts';
import { movedRows } from './moved-rows.ts';

/** A cell that says something else, with both texts as they stand in the file. */
export interface CellChange {
  readonly kind: 'added' | 'changed' | 'removed';
  /** Column of a row, or key of a setting. */
  readonly column: string;
  /** Undefined where the cell is new. */
  readonly before: string | undefined;
  /** Undefined where the cell is gone. */
  readonly after: string | undefined;
}

export interface RowChange {
  readonly table: string;
  /** As the later version calls it; of a row that is gone, as the earlier one did. */
  readonly id: string;
  readonly occurrence: number;
  /** `kept`: both versions have it. */
  readonly kind: 'added' | 'removed' | 'kept';
  /** As the earlier version called it, where that is another id. */
  readonly formerId: string | undefined;
  /** Which of the rows of its id it was in the earlier version. */
  readonly formerOccurrence: number;
  /** It stands elsewhere on its sheet. */
  readonly moved: boolean;
  /** A version has this row with a fault that keeps some of its cells from being read. */
  readonly broken: boolean;
  /** Of a row that came or went, all its cells. */
  readonly cells: readonly CellChange[];
}

/** What is different between two versions of a job, cell by cell; remarks and layout do not count. */
export interface JobComparison {
  readonly settings: readonly CellChange[];
  /** Rows with a difference, table by table as a file has them, as the sheets show them. */
  readonly rows: readonly RowChange[];
  /** True where no cell, row or place differs. */
  readonly same: boolean;
}

type Cells = ReadonlyMap<string, SourceCell>;

/** What is different in one group of cells; a text of the earlier version is told as it stood there. */
function changedCells(was: Cells, now: Cells, told: Cells = was): readonly CellChange[] {
  return [...new Set([...now.keys(), ...was.keys()])].flatMap((column): readonly CellChange[] => {
    const [old, text] = [was.get(column)?.text, now.get(column)?.text];
    if (old === text) return [];
    const before = old === undefined ? undefined : (told.get(column)?.text ?? old);
    const kind = old === undefined ? 'added' : text === undefined ? 'removed' : 'changed';
    return [{ kind, column, before, after: text }];
  });
}

const noCells: Cells = new Map();

/** The earlier version with the names that the later one gives its rows, so that references agree. */
function renamedFile(before: FileReading, renames: readonly Renamed[]): FileReading {
  return renames.reduce((reading, { table, from, to }) => {
    const done = applyEdits(reading, [{ kind: 'rename-row', row: { table, id: from }, id: to }]);
    return done.ok ? done.value.reading : reading;
  }, before);
}

/** Rows of the earlier version as they stood, by the same rows with their later names. */
function originals(before: FileReading, renamed: FileReading): ReadonlyMap<SourceRow, SourceRow> {
  if (before === renamed) return new Map();
  const byBlock = new Map([...before.tables.values()].flat().map((row) => [row.block, row]));
  return new Map(
    [...renamed.tables.values()].flat().flatMap((row) => {
      const old = byBlock.get(row.block);
      return old === undefined ? [] : [[row, old] as const];
    }),
  );
}

interface Held {
  readonly was: SourceRow | undefined;
  readonly now: SourceRow | undefined;
}

/** Rows of one table in the order of the later version; those that are gone follow whom they followed. */
function heldRows(
  before: FileReading,
  after: FileReading,
  pairs: ReadonlyMap<SourceRow, SourceRow>,
  table: string,
): readonly Held[] {
  const former = new Map([...pairs].map(([was, now]) => [now, was]));
  const follows = new Map<SourceRow | undefined, SourceRow[]>();
  let above: SourceRow | undefined;
  for (const was of before.tables.get(table) ?? []) {
    const now = pairs.get(was);
    if (now !== undefined) above = now;
    else follows.set(above, [...(follows.get(above) ?? []), was]);
  }
  const gone = (row: SourceRow | undefined): readonly Held[] =>
    (follows.get(row) ?? []).map((was) => ({ was, now: undefined }));
  const kept = (after.tables.get(table) ?? []).flatMap((now): readonly Held[] => [
    { was: former.get(now), now },
    ...gone(now),
  ]);
  return [...gone(undefined), ...kept];
}

function tablesOf(before: FileReading, after: FileReading): readonly string[] {
  const place = (table: string): number => tablePlace(table) ?? Infinity;
  return [...new Set([...after.tables.keys(), ...before.tables.keys()])].sort((one, two) =>
    place(one) === place(two) ? 0 : place(one) - place(two),
  );
}

type Told = Pick<
  RowChange,
  'table' | 'id' | 'occurrence' | 'formerId' | 'formerOccurrence' | 'broken'
>;

function toldOf(row: SourceRow, former: SourceRow = row): Told {
  const { table, id, occurrence, broken } = row;
  const formerId = former.id === id ? undefined : former.id;
  const formerOccurrence = former.occurrence;
  return { table, id, occurrence, formerId, formerOccurrence, broken: broken || former.broken };
}

function cameOrWent(row: SourceRow, kind: 'added' | 'removed'): RowChange {
  const cells =
    kind === 'added' ? changedCells(noCells, row.cells) : changedCells(row.cells, noCells);
  return { ...toldOf(row), kind, moved: false, cells };
}

/** What is different in a row that both versions have; `former` is the earlier one as it stood. */
function keptChange(
  was: SourceRow,
  now: SourceRow,
  { former, moved }: { readonly former: SourceRow; readonly moved: boolean },
): RowChange | undefined {
  const cells = changedCells(was.cells, now.cells, former.cells);
  const change: RowChange = { ...toldOf(now, former), kind: 'kept', moved, cells };
  const same = cells.length === 0 && change.formerId === undefined && !moved;
  return same ? undefined : change;
}

function unfit(reading: FileReading, which: 'earlier' | 'later'): Result<never> | undefined {
  switch (reading.state) {
    case 'readable':
    case 'newer':
      return undefined;
    case 'conflicted':
      return failed(compareProblem('compare-conflicted', { which }));
    case 'unreadable':
      return failed(compareProblem('compare-unreadable', { which }));
  }
}

/**
 * Holds two versions of a job (or shop book) against each other: rows by table and id, cells by column.
 * A row that is called otherwise and says the same is renamed, and references that follow it did not
 * change.
 */
export function compareJobs(
  before: string | FileReading,
  after: string | FileReading,
): Result<JobComparison> {
  const was = typeof before === 'string' ? readFile(before) : before;
  const now = typeof after === 'string' ? readFile(after) : after;
  const refused = unfit(was, 'earlier') ?? unfit(now, 'later');
  if (refused !== undefined) return refused;
  const renamed = renamedFile(was, renamedRows(was, now));
  const original = originals(was, renamed);
  const { pairs } = matchRows(renamed, now);
  const moved = movedRows(renamed, now, pairs);
  const settings = changedCells(was.head, now.head);
  const changeOf = ({ was: old, now: row }: Held): RowChange | undefined => {
    const former = old === undefined ? undefined : (original.get(old) ?? old);
    if (old === undefined || former === undefined)
      return row === undefined ? undefined : cameOrWent(row, 'added');
    if (row === undefined) return cameOrWent(former, 'removed');
    return keptChange(old, row, { former, moved: moved.has(row) });
  };
  const rows = tablesOf(renamed, now).flatMap((table) =>
    heldRows(renamed, now, pairs, table).flatMap((held) => changeOf(held) ?? []),
  );
  return ok({ settings, rows, same: settings.length === 0 && rows.length === 0 });
}

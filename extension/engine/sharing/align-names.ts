import { applyEdits } from '../job/apply-edits.ts';
import { namedRowTables } from '../job/columns.ts';
import { rowsCalled } from '../job/row-ids.ts';
import type { FileReading, SourceRow } from '../job/source.ts';
import { matchRows, renamedRows, type Renamed } from './match-rows.ts';
import type { Side, VersionName, Versions } from './versions.ts';

/** A row that the two sides call otherwise. */
export interface NameConflict {
  readonly table: string;
  readonly base: string | undefined;
  readonly ours: string;
  readonly theirs: string;
}

/** Two different rows that were put in under one id; theirs was given another, references and all. */
export interface Twin {
  /** Row of ours, which keeps the id. */
  readonly table: string;
  readonly id: string;
  readonly theirs: { readonly table: string; readonly id: string };
  /** True where both are new rows of one table, so that theirs may take the place of ours. */
  readonly isRival: boolean;
}

/** Versions in which one row has one name, so that they can be held against each other. */
export interface Aligned {
  readonly versions: Versions;
  readonly names: readonly NameConflict[];
  readonly twins: readonly Twin[];
  /** Rows that one side renamed, by their name now: `part/ring`. */
  readonly renamed: Readonly<Record<Side, ReadonlySet<string>>>;
  /** Rows that both sides put in alike: `part/ring`. */
  readonly alike: ReadonlySet<string>;
}

type Readings = Record<VersionName, FileReading> & Pick<Versions, 'isTaken'>;

function rename(readings: Readings, name: VersionName, { table, from, to }: Renamed): boolean {
  if (from === to || rowsCalled(readings[name], table, from).length === 0) return true;
  const done = applyEdits(readings[name], [
    { kind: 'rename-row', row: { table, id: from }, id: to },
  ]);
  if (done.ok) readings[name] = done.value.reading;
  return done.ok;
}

/** An id that no version has: `ring_2`, `ring_3`… */
function freeName(readings: Readings, id: string): string {
  const stem = id.replace(/_\d+$/, '');
  const taken = (name: string): boolean =>
    readings.isTaken(name) ||
    [readings.base, readings.ours, readings.theirs].some((reading) =>
      [...reading.tables.values()].some((rows) => rows.some((row) => row.id === name)),
    );
  for (let number = 2; ; number++) {
    const name = `${stem}_${String(number)}`;
    if (!taken(name)) return name;
  }
}

/** Names that would get into each other's way (a to b, b to c) take a detour. */
function renameAll(readings: Readings, name: VersionName, renames: readonly Renamed[]): void {
  let waiting = renames.filter(({ from, to }) => from !== to);
  let detours = 0;
  while (waiting.length > 0) {
    const left = waiting.filter((one) => !rename(readings, name, one));
    if (left.length < waiting.length) waiting = left;
    else {
      const [first, ...rest] = left;
      if (first === undefined || ++detours > renames.length) return;
      const via = freeName(readings, first.to);
      rename(readings, name, { ...first, to: via });
      waiting = [...rest, { ...first, from: via }];
    }
  }
}

function rowName(table: string, id: string): string {
  return `${namedRowTables.includes(table) ? '' : `${table}/`}${id}`;
}

type Cells = SourceRow['cells'];

function sameCells(a: Cells, b: Cells): boolean {
  return a.size === b.size && [...a].every(([key, { text }]) => b.get(key)?.text === text);
}

function newRows(before: FileReading, after: FileReading): ReadonlyMap<string, SourceRow> {
  const { added } = matchRows(before, after);
  return new Map(
    added
      .filter((row) => row.occurrence === 0 && row.id !== '')
      .map((row) => [rowName(row.table, row.id), row]),
  );
}

interface NewOnBoth {
  readonly twins: readonly Twin[];
  readonly alike: ReadonlySet<string>;
}

/** Rows that both sides put in under one id: alike, or two rows that have to be told apart. */
function partTwins(readings: Readings): NewOnBoth {
  const ours = newRows(readings.base, readings.ours);
  const twins: Twin[] = [];
  const alike = new Set<string>();
  for (const [name, { table, id, cells }] of newRows(readings.base, readings.theirs)) {
    const own = ours.get(name);
    if (own === undefined) continue;
    if (own.table === table && sameCells(own.cells, cells)) {
      alike.add(`${table}/${id}`);
      continue;
    }
    const to = freeName(readings, id);
    if (!rename(readings, 'theirs', { table, from: id, to })) continue;
    const isRival = own.table === table;
    twins.push({ table: own.table, id, theirs: { table, id: to }, isRival });
  }
  return { twins, alike };
}

interface Renames {
  readonly ours: readonly Renamed[];
  readonly theirs: readonly Renamed[];
  readonly names: readonly NameConflict[];
}

function findRenames({ base, ours, theirs, baseUnknown }: Versions): Renames {
  const byOurs = renamedRows(base, ours);
  const byTheirs = renamedRows(base, theirs);
  const same = (a: Renamed, b: Renamed): boolean => a.table === b.table && a.from === b.from;
  const names = byTheirs.flatMap(({ table, from, to }): NameConflict[] => {
    const own = byOurs.find((one) => same(one, { table, from, to }));
    if (baseUnknown) return [{ table, base: undefined, ours: from, theirs: to }];
    if (own === undefined || own.to === to) return [];
    return [{ table, base: from, ours: own.to, theirs: to }];
  });
  const disputed = (one: Renamed): boolean =>
    names.some(({ table, theirs: name }) => table === one.table && name === one.to);
  return { ours: byOurs, theirs: byTheirs.filter((one) => !disputed(one)), names };
}

/** The row of a version that stands in the way of a name which another version gave. */
function inTheWay(readings: Readings, name: Side, renamed: Renamed): SourceRow | undefined {
  const { table, from, to } = renamed;
  if (rowsCalled(readings.base, table, to).length > 0) return undefined;
  if (rowsCalled(readings[name], table, from).length === 0) return undefined;
  return rowsCalled(readings[name], table, to)[0];
}

/** A row that theirs put in under a name that ours gave to another row gets a free name. */
function clearForOurs(readings: Readings, renames: Renames): readonly Twin[] {
  return renames.ours.flatMap((renamed): Twin[] => {
    const { table, from, to } = renamed;
    const other = inTheWay(readings, 'theirs', renamed);
    const both = renames.theirs.some((one) => one.from === from && one.to === to);
    if (other === undefined || both) return [];
    const id = freeName(readings, to);
    rename(readings, 'theirs', { table: other.table, from: to, to: id });
    return [{ table, id: to, theirs: { table: other.table, id }, isRival: false }];
  });
}

/** A name of theirs that ours has given to a new row is not given: the row keeps the name it had. */
function refusedNames(readings: Readings, renames: Renames): readonly NameConflict[] {
  return renames.theirs.flatMap((renamed): NameConflict[] => {
    const { table, from, to } = renamed;
    const both = renames.ours.some((one) => one.from === from && one.to === to);
    if (both || inTheWay(readings, 'ours', renamed) === undefined) return [];
    rename(readings, 'theirs', { table, from: to, to: from });
    return [{ table, base: from, ours: from, theirs: to }];
  });
}

function renamedNames(renames: readonly Renamed[]): ReadonlySet<string> {
  return new Set(renames.map(({ table, to }) => `${table}/${to}`));
}

/**
 * Gives each row one name in all versions: a renaming of one side is done in the others, with the
 * references there, so that what remains are changes of cells.
 */
export function alignNames(versions: Versions): Aligned {
  const renames = findRenames(versions);
  const readings: Readings = {
    base: versions.base,
    ours: versions.ours,
    theirs: versions.theirs,
    isTaken: versions.isTaken,
  };
  for (const { table, ours, theirs } of renames.names) {
    rename(readings, 'theirs', { table, from: theirs, to: ours });
  }
  const cleared = clearForOurs(readings, renames);
  const refused = refusedNames(readings, renames);
  const moved = renames.theirs.filter(
    ({ table, to }) => !refused.some((one) => one.table === table && one.theirs === to),
  );
  renameAll(readings, 'ours', moved);
  renameAll(readings, 'theirs', renames.ours);
  if (versions.baseUnknown) readings.base = readings.ours;
  else renameAll(readings, 'base', [...renames.ours, ...moved]);
  const { twins, alike } = partTwins(readings);
  return {
    versions: { ...readings, baseUnknown: versions.baseUnknown },
    names: [...renames.names, ...refused],
    twins: [...cleared, ...twins],
    alike,
    renamed: { ours: renamedNames(renames.ours), theirs: renamedNames(moved) },
  };
}

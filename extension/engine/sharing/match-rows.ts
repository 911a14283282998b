import { applyEdits } from '../job/apply-edits.ts';
import type { FileReading, SourceRow } from '../job/source.ts';

/** Which row of a later version is which row of an earlier one. */
export interface RowMatch {
  /** Rows of the earlier version with what became of them. */
  readonly pairs: ReadonlyMap<SourceRow, SourceRow>;
  readonly added: readonly SourceRow[];
  readonly gone: readonly SourceRow[];
}

function sameCell(a: SourceRow, b: SourceRow, key: string): boolean {
  return a.cells.get(key)?.text === b.cells.get(key)?.text;
}

/** How much two rows have in common: 1 where all cells and the number of its place are the same. */
function likeness(a: SourceRow, b: SourceRow): number {
  const keys = new Set([...a.cells.keys(), ...b.cells.keys()]);
  const same = [...keys].filter((key) => sameCell(a, b, key)).length;
  return (same + (a.order === b.order ? 1 : 0)) / (keys.size + 1);
}

function rowsById(rows: readonly SourceRow[]): Map<string, SourceRow[]> {
  const byId = new Map<string, SourceRow[]>();
  for (const row of rows) {
    const known = byId.get(row.id);
    if (known === undefined) byId.set(row.id, [row]);
    else known.push(row);
  }
  return byId;
}

/** Pairs rows of one id: where there are several, those that are most alike. */
function pairAlike(
  before: readonly SourceRow[],
  after: readonly SourceRow[],
): readonly (readonly [SourceRow, SourceRow])[] {
  const ranked = before
    .flatMap((old) => after.map((row) => ({ old, row, like: likeness(old, row) })))
    .sort((a, b) => b.like - a.like || a.old.occurrence - b.old.occurrence);
  const taken = new Set<SourceRow>();
  const pairs: (readonly [SourceRow, SourceRow])[] = [];
  for (const { old, row } of ranked) {
    if (taken.has(old) || taken.has(row)) continue;
    taken.add(old).add(row);
    pairs.push([old, row]);
  }
  return pairs;
}

/** Pairs the rows of two versions by table and id. */
export function matchRows(before: FileReading, after: FileReading): RowMatch {
  const pairs = new Map<SourceRow, SourceRow>();
  const added: SourceRow[] = [];
  const gone: SourceRow[] = [];
  for (const table of new Set([...before.tables.keys(), ...after.tables.keys()])) {
    const rows = after.tables.get(table) ?? [];
    const byId = rowsById(rows);
    const old = before.tables.get(table) ?? [];
    const kept = new Set<SourceRow>();
    for (const [id, group] of rowsById(old)) {
      for (const [one, row] of pairAlike(group, byId.get(id) ?? [])) {
        pairs.set(one, row);
        kept.add(row);
      }
    }
    gone.push(...old.filter((row) => !pairs.has(row)));
    added.push(...rows.filter((row) => !kept.has(row)));
  }
  return { pairs, added, gone };
}

/** A row that one version calls otherwise. */
export interface Renamed {
  readonly table: string;
  readonly from: string;
  readonly to: string;
}

/** A name that no row has, to find the cells that speak of another. */
const passing = 'zz_passing_name';

/** A cell that speaks of a row, as it would read if that row had the passing name. */
export interface Mention {
  readonly row: SourceRow;
  readonly key: string;
  readonly text: string;
}

/** Cells of links and formulas that speak of a row. */
export function mentionsOf(before: FileReading, target: SourceRow): readonly Mention[] {
  const { table, id } = target;
  const rows = [...before.tables.values()].flat();
  const named = rows.some((row) => [...row.cells.values()].some(({ text }) => text.includes(id)));
  if (!named) return [];
  const done = applyEdits(before, [
    { kind: 'rename-row', row: { table, id, occurrence: target.occurrence }, id: passing },
  ]);
  if (!done.ok) return [];
  const after = new Map(
    [...done.value.reading.tables.values()].flat().map((row) => [row.block, row]),
  );
  return rows.flatMap((row) => {
    const cells = after.get(row.block)?.cells ?? row.cells;
    if (cells === row.cells) return [];
    return [...cells]
      .filter(([key, { text }]) => text !== row.cells.get(key)?.text)
      .map(([key, { text }]) => ({ row, key, text }));
  });
}

/** How many cells that spoke of a row speak of it by a new name, and how many kept the old one. */
function followers(
  mentions: readonly Mention[],
  match: RowMatch,
  to: string,
): { readonly follow: number; readonly stay: number } {
  let follow = 0;
  let stay = 0;
  for (const { row, key, text } of mentions) {
    const now = match.pairs.get(row);
    if (now?.cells.get(key)?.text === text.replaceAll(passing, to)) follow++;
    else if (now !== undefined && sameCell(row, now, key)) stay++;
  }
  return { follow, stay };
}

/** The row above in the file that both versions have; a row that is renamed stays below it. */
function rowAbove(
  reading: FileReading,
  row: SourceRow,
  shared: ReadonlySet<SourceRow>,
): SourceRow | undefined {
  let above: SourceRow | undefined;
  for (const one of reading.tables.get(row.table) ?? []) {
    if (one.block >= row.block || !shared.has(one)) continue;
    if (above === undefined || one.block > above.block) above = one;
  }
  return above;
}

function standsTheSame(
  versions: readonly [FileReading, FileReading],
  match: RowMatch,
  rows: readonly [SourceRow, SourceRow],
): boolean {
  const [before, after] = versions;
  const above = rowAbove(before, rows[0], new Set(match.pairs.keys()));
  const now = rowAbove(after, rows[1], new Set(match.pairs.values()));
  return above === undefined ? now === undefined : match.pairs.get(above) === now;
}

/** A row that went and one that came, with what speaks of the first. */
interface Candidate {
  readonly old: SourceRow;
  readonly row: SourceRow;
  readonly like: number;
  readonly mentions: () => readonly Mention[];
}

function isRenamed(
  versions: readonly [FileReading, FileReading],
  match: RowMatch,
  candidate: Candidate,
): boolean {
  const { old, row, like } = candidate;
  const { follow, stay } = followers(candidate.mentions(), match, row.id);
  if (stay > 0) return false;
  if (follow > 0) return true;
  const inPlace = standsTheSame(versions, match, [old, row]);
  return inPlace ? like >= 0.5 : like === 1 && old.cells.size > 1;
}

function candidates(before: FileReading, match: RowMatch): readonly Candidate[] {
  return match.gone
    .filter((old) => old.id !== '')
    .flatMap((old) => {
      let known: readonly Mention[] | undefined;
      const mentions = (): readonly Mention[] => (known ??= mentionsOf(before, old));
      return match.added
        .filter((row) => row.table === old.table && row.id !== '')
        .map((row) => ({ old, row, like: likeness(old, row), mentions }));
    })
    .filter(({ like }) => like >= 0.3)
    .sort((a, b) => b.like - a.like || a.old.block - b.old.block);
}

/**
 * Rows that the later version calls otherwise. A row counts as renamed, not as one taken out and
 * another put in, where the cells that speak of it follow, or where it stands where it stood and says
 * mostly what it said.
 */
export function renamedRows(before: FileReading, after: FileReading): readonly Renamed[] {
  const match = matchRows(before, after);
  const taken = new Set<SourceRow>();
  const renamed: Renamed[] = [];
  for (const candidate of candidates(before, match)) {
    const { old, row } = candidate;
    if (taken.has(old) || taken.has(row)) continue;
    if (!isRenamed([before, after], match, candidate)) continue;
    taken.add(old).add(row);
    renamed.push({ table: old.table, from: old.id, to: row.id });
  }
  return renamed;
}

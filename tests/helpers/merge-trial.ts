import { readFile } from '../../extension/engine/job/read-file.ts';
import { mergeJobs, type MergedJob } from '../../extension/engine/sharing/merge-jobs.ts';
import {
  cellTexts,
  chanceOf,
  differences,
  randomBranch,
  withGestures,
  type Branch,
} from './merge-pairs.ts';

/** Two branches of one job. */
export interface Pair {
  readonly base: string;
  readonly ours: Branch;
  readonly theirs: Branch;
}

export function pairOf(base: string, seed: number): Pair {
  return {
    base,
    ours: randomBranch(base, chanceOf(seed * 2)),
    theirs: randomBranch(base, chanceOf(seed * 2 + 1)),
  };
}

export function mergedPair({ base, ours, theirs }: Pair): MergedJob {
  const merged = mergeJobs(base, ours.text, theirs.text);
  if (merged === undefined) throw new Error('A branch is no job.');
  return merged;
}

function rowOf(cell: string): string {
  return cell.split('/').slice(0, 2).join('/');
}

interface Touched {
  readonly cells: ReadonlySet<string>;
  readonly rows: ReadonlySet<string>;
  /** Ids of rows that are there no more. */
  readonly gone: readonly string[];
  /** What was written, as one text. */
  readonly words: string;
}

function setCells(branch: Branch): readonly string[] {
  return branch.gestures.flat().flatMap((edit) => {
    if (edit.kind === 'set-head') return [`job/${edit.key}`];
    if (edit.kind !== 'set-cell') return [];
    const { table, id, occurrence = 0 } = edit.row;
    return [`${table}/${id}#${String(occurrence)}/${edit.column}`];
  });
}

function touched(base: string, branch: Branch): Touched {
  const before = cellTexts(base);
  const after = cellTexts(branch.text);
  // A cell that was set and set back counts too: its gestures, done again, would touch it.
  const cells = [...new Set([...differences(before, after), ...setCells(branch)])];
  const rows = cells.filter((cell) => rowOf(cell) === cell && before.has(cell));
  return {
    cells: new Set(cells),
    rows: new Set(cells.map(rowOf)),
    gone: rows.filter((row) => !after.has(row)),
    words: cells.map((cell) => after.get(cell) ?? '').join('\n'),
  };
}

/**
 * True where the branches touched different cells: none that both changed, no row that one took out
 * (or renamed) and the other touched or named.
 */
export function isDisjoint({ base, ours, theirs }: Pair): boolean {
  const a = touched(base, ours);
  const b = touched(base, theirs);
  if ([...a.cells].some((cell) => b.cells.has(cell))) return false;
  const meets = (one: Touched, other: Touched): boolean =>
    one.gone.some((row) => {
      const id = row.replaceAll(/^\w+\/|#\d+$/g, '');
      return other.rows.has(row) || new RegExp(`\\b${id}\\b`).test(other.words);
    });
  return !meets(a, b) && !meets(b, a);
}

function renames(branch: Branch): boolean {
  return branch.gestures.flat().some(({ kind }) => kind === 'rename-row');
}

/**
 * The job after both branches' gestures, one after the other; undefined where that cannot be told: both
 * renamed rows, or a gesture of one has lost its row. Renamings come last, so that references follow.
 */
export function bothApplied({ ours, theirs }: Pair): string | undefined {
  if (renames(ours) && renames(theirs)) return undefined;
  const [first, second] = renames(ours) ? [theirs, ours] : [ours, theirs];
  return withGestures(first.text, second.gestures);
}

/** Cells in which a merged job is not what both branches' gestures give; places on the screen aside. */
export function wrongCells(merged: string, pair: Pair): readonly string[] | undefined {
  const both = bothApplied(pair);
  if (both === undefined) return undefined;
  return differences(cellTexts(merged, false), cellTexts(both, false));
}

/** Problems of a merged job that neither branch has. */
export function newProblems(merged: string, { ours, theirs }: Pair): readonly string[] {
  const told = (text: string): readonly string[] =>
    readFile(text).problems.map(({ code, message }) => `${code}: ${message}`);
  const known = new Set([...told(ours.text), ...told(theirs.text)]);
  return told(merged).filter((one) => !known.has(one));
}

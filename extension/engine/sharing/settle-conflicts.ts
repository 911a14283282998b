import type { TextChange } from '../job/source.ts';
import { commonEnd, commonStart } from '../job/common-ends.ts';
import { rowsCalled } from '../job/row-ids.ts';
import { readFile } from '../job/read-file.ts';
import type { Twin } from './align-names.ts';
import { conflictKey, type Choice, type Conflict } from './conflict.ts';
import { conflictHunks, sideOfConflicts, type Hunk } from './conflict-text.ts';
import { mergeJobs, type MergedJob, type MergeOptions } from './merge-jobs.ts';
import { twinOfLabel } from './twin-label.ts';

/** What is open in a file with conflict markers. */
export interface OpenConflicts {
  readonly conflicts: readonly Conflict[];
  /** False where the sides cannot be read as jobs, so that each conflict is a stretch of lines. */
  readonly byCell: boolean;
}

/** Choices by conflict key. */
export type Choices = ReadonlyMap<string, Choice>;

const rowHead = /^\[\[(\w+)\]\]\s*\nid = "([a-z][a-z0-9_]*)"/gm;

function rowsIn(lines: string): readonly { readonly table: string; readonly id: string }[] {
  return [...lines.replaceAll('\r', '').matchAll(rowHead)].map(([, table = '', id = '']) => ({
    table,
    id,
  }));
}

/** Rows that a merge of ours marked because the other side uses them: there one side is as it was. */
function forcedRows(text: string, hunks: readonly Hunk[]): ReadonlySet<string> {
  const keys = hunks.flatMap(({ ours, base, theirs }) => {
    if (base === undefined) return [];
    const [own, old, other] = [ours, base, theirs].map(({ start, end }) => text.slice(start, end));
    const isKept = old !== '' && ((own === '' && other === old) || (other === '' && own === old));
    if (!isKept) return [];
    return rowsIn(old ?? '').map(({ table, id }) =>
      conflictKey({ table, row: id, occurrence: 0, column: undefined }),
    );
  });
  return new Set(keys);
}

/** Rows that a merge of ours told apart. */
function markedTwins(text: string, hunks: readonly Hunk[]): readonly Twin[] {
  const ours = readFile(sideOfConflicts(text, 'ours') ?? '');
  return hunks.flatMap(({ theirs, end }): Twin[] => {
    const told = twinOfLabel(text.slice(theirs.end, end));
    const [row] = rowsIn(text.slice(theirs.start, theirs.end));
    if (told === undefined || row === undefined) return [];
    const { id, isRival } = told;
    const own = rowsCalled(ours, row.table, id)[0];
    return own === undefined ? [] : [{ table: own.table, id, theirs: row, isRival }];
  });
}

function merged(
  text: string,
  before: string | undefined,
  options: Pick<MergeOptions, 'choose'>,
): MergedJob | undefined {
  const hunks = conflictHunks(text);
  const ours = sideOfConflicts(text, 'ours');
  const theirs = sideOfConflicts(text, 'theirs');
  if (hunks.length === 0 || ours === undefined || theirs === undefined) return undefined;
  const base = sideOfConflicts(text, 'base') ?? before;
  const marked = { forced: forcedRows(text, hunks), twins: markedTwins(text, hunks) };
  return mergeJobs(base, ours, theirs, { ...options, before: marked });
}

function linesKey(index: number): string {
  return `lines ${String(index + 1)}`;
}

function lineConflict(text: string, hunk: Hunk, index: number): Conflict {
  const lines = (side: { readonly start: number; readonly end: number } | undefined) =>
    side === undefined || side.start === side.end ? undefined : text.slice(side.start, side.end);
  return {
    key: linesKey(index),
    kind: 'text',
    place: { table: '', row: undefined, occurrence: index, column: undefined },
    base: lines(hunk.base),
    ours: lines(hunk.ours),
    theirs: lines(hunk.theirs),
    baseKnown: hunk.base !== undefined,
    choices: ['ours', 'theirs'],
  };
}

/**
 * The conflicts of a file with markers, made by git or by Panelwright, cell by cell. `before` is the
 * version both came from, where the markers do not tell it. Undefined where the file has no markers.
 */
export function openConflicts(text: string, before?: string): OpenConflicts | undefined {
  const hunks = conflictHunks(text);
  if (hunks.length === 0) return undefined;
  const done = merged(text, before, {});
  if (done !== undefined) return { conflicts: done.conflicts, byCell: true };
  const conflicts = hunks.map((hunk, index) => lineConflict(text, hunk, index));
  return { conflicts, byCell: false };
}

function settledLines(text: string, choices: Choices): string {
  const pieces: string[] = [];
  let at = 0;
  for (const [index, hunk] of conflictHunks(text).entries()) {
    const choice = choices.get(linesKey(index));
    if (choice === undefined || choice === 'both') continue;
    const lines = hunk[choice];
    pieces.push(text.slice(at, hunk.start), text.slice(lines.start, lines.end));
    at = hunk.end;
  }
  pieces.push(text.slice(at));
  return pieces.join('');
}

/**
 * The file with these conflicts settled; those without a choice stay between markers, cell by cell, so
 * that the work can be saved and gone on with.
 */
export function settledText(text: string, choices: Choices, before?: string): string {
  const choose = ({ key }: Conflict): Choice | undefined => choices.get(key);
  return merged(text, before, { choose })?.text ?? settledLines(text, choices);
}

/** The one stretch in which two texts differ, as a change of the first; none where they are the same. */
export function stretchChange(before: string, after: string): readonly TextChange[] {
  if (before === after) return [];
  const start = commonStart(before, after);
  const most = Math.min(before.length, after.length) - start;
  const same = commonEnd(before, after, most);
  return [{ start, end: before.length - same, text: after.slice(start, after.length - same) }];
}

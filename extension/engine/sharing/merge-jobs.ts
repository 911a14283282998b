import { indexed, readChange, readFile } from '../job/read-file.ts';
import type { FileReading } from '../job/source.ts';
import { alignNames } from './align-names.ts';
import { openVerdicts, type Choice, type Conflict } from './conflict.ts';
import { sideOfConflicts } from './conflict-text.ts';
import { usualMarkers, withMarkers, type MarkerStyle } from './markers.ts';
import { mergeRows, settleClashes, type MarkedBefore, type SideMatches } from './merge-rows.ts';
import { mergeSettings } from './merge-cells.ts';
import { emptyPlan } from './plan.ts';
import { changed, writeCells, writeRows, writeSettings } from './write-plan.ts';
import { headBlock } from './block-text.ts';
import { mergeTexts } from './merge-texts.ts';
import { withoutQuietRows } from './quiet-rows.ts';
import { mergedRemarks, type SameBlock } from './remarks.ts';
import type { Versions } from './versions.ts';

export type { Choice, Conflict } from './conflict.ts';

export interface MergeOptions {
  readonly markers?: MarkerStyle;
  /** Settles conflicts; those for which it gives nothing stay open. */
  readonly choose?: (conflict: Conflict) => Choice | undefined;
  /** Conflicts that a merge before found. */
  readonly before?: MarkedBefore;
}

const unmarked: MarkedBefore = { forced: new Set(), twins: [] };

export interface MergedJob {
  /** The merged file, with markers around what is in conflict. */
  readonly text: string;
  readonly conflicts: readonly (Conflict & { readonly line: number })[];
}

/** Texts of blocks that cannot be read, in order: these are held against each other as a whole. */
function brokenBlocks(reading: FileReading): string {
  return indexed(reading)
    .split.parsed.filter(({ broken }) => broken)
    .map(({ text }) => text.trimEnd())
    .sort()
    .join('\n\n');
}

function canMerge(versions: readonly FileReading[]): boolean {
  const [first, ...rest] = versions;
  if (first === undefined || versions.some(({ state }) => state !== 'readable')) return false;
  const broken = brokenBlocks(first);
  return rest.every((one) => brokenBlocks(one) === broken);
}

/** Blocks of the settings and of rows that all versions have. */
function sameBlocks({ base, ours, theirs }: Versions, matches: SideMatches): readonly SameBlock[] {
  const rows = [...matches.ours.pairs].flatMap(([row, { block }]): SameBlock[] => {
    const there = matches.theirs.pairs.get(row);
    return there === undefined ? [] : [{ base: row.block, ours: block, theirs: there.block }];
  });
  const head = { base: headBlock(base), ours: headBlock(ours), theirs: headBlock(theirs) };
  return Object.values(head).includes(-1) ? rows : [head, ...rows];
}

/** The conflicts of a text with the lines of their first markers; both stand in one order. */
function withLines(text: string, conflicts: readonly Conflict[], style: MarkerStyle): MergedJob {
  const first = `${'<'.repeat(style.size)} ${style.ours}`.trimEnd();
  const lines = text.split(/\r?\n/);
  let line = 0;
  const placed = conflicts.map((conflict) => {
    line = lines.indexOf(first, line) + 1;
    return { ...conflict, line };
  });
  return { text, conflicts: placed };
}

interface Merged {
  readonly text: string;
  /** In the order of their markers. */
  readonly conflicts: readonly Conflict[];
}

/** The merged text where a side did nothing, or both the same. */
function sameSide(base: string | undefined, ours: string, theirs: string): string | undefined {
  if (ours === theirs || theirs === base) return ours;
  return ours === base ? theirs : undefined;
}

/** Reads texts that are mostly the same: what they share is read once. */
function readTogether(texts: readonly string[]): readonly FileReading[] {
  const [first = '', ...others] = texts;
  const reading = readFile(first);
  return [reading, ...others.map((text) => readChange(reading, text))];
}

/** Merges readings of ours, theirs and, where it is known, the base. */
function mergeReadings(
  [ours, theirs, base]: readonly FileReading[],
  isTaken: Versions['isTaken'],
  options: MergeOptions,
): Merged {
  const { markers = usualMarkers, choose = () => undefined, before = unmarked } = options;
  const none = readFile('');
  const sides = { ours: ours ?? none, theirs: theirs ?? none };
  const baseUnknown = base === undefined;
  const aligned = alignNames({ ...sides, base: base ?? sides.ours, baseUnknown, isTaken });
  const plan = emptyPlan();
  const verdicts = openVerdicts(choose);
  mergeSettings(aligned.versions, plan, verdicts);
  const matches = mergeRows(aligned, plan, verdicts, before);
  const { versions } = aligned;
  const { reading, clashes } = writeCells(versions.ours, plan.cells);
  const blocks = new Set(clashes.map(({ block }) => block));
  const clashing = [...versions.ours.tables.values()]
    .flat()
    .filter(({ block }) => blocks.has(block));
  settleClashes(versions, clashing, plan, verdicts);
  const heads = plan.cells.filter(({ block }) => block < 0).map(({ key }) => key);
  const settings = new Map(heads.map((key) => [key, versions.theirs.head.get(key)?.text ?? '']));
  const cells = writeSettings(reading, settings);
  const remarked = changed(
    cells,
    mergedRemarks(
      { base: versions.base, merged: cells, theirs: versions.theirs },
      sameBlocks(versions, matches),
    ),
  );
  const merged = mergeTexts(writeRows(remarked, versions.theirs, plan), versions, verdicts);
  return withMarkers(merged, verdicts.open, markers);
}

/**
 * Merges two versions of a job with the one both came from, cell by cell. Rows are known by id, so
 * what changed in different cells merges whatever lines it shares; the rest is a conflict, marked in
 * the text. Undefined where a version cannot be read as a job; a base with markers counts as what
 * stood before its own conflicts.
 */
export function mergeJobs(
  base: string | undefined,
  ours: string,
  theirs: string,
  options: MergeOptions = {},
): MergedJob | undefined {
  const same = options.before === undefined ? sameSide(base, ours, theirs) : undefined;
  if (same !== undefined) return { text: same, conflicts: [] };
  const before = base === undefined ? [] : [sideOfConflicts(base, 'base') ?? base];
  const all = [ours, theirs, ...before];
  const { texts, whole } = withoutQuietRows(all);
  const readings = readTogether(texts);
  if (!canMerge(readings)) return undefined;
  const isTaken = (id: string): boolean => all.some((text) => text.includes(`"${id}"`));
  const { text, conflicts } = mergeReadings(readings, isTaken, options);
  return withLines(whole(text), conflicts, options.markers ?? usualMarkers);
}

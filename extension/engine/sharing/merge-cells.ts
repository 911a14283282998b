import type { FileReading, SourceCell, SourceRow } from '../job/source.ts';
import { headBlock, speltValue } from './block-text.ts';
import {
  conflictKey,
  rowPlace,
  type ConflictPlace,
  type FoundConflict,
  type Verdicts,
} from './conflict.ts';
import type { MergePlan } from './plan.ts';
import type { VersionName, Versions } from './versions.ts';

/** The cells of one row or of the settings in a version. */
interface Cells {
  readonly reading: FileReading;
  readonly block: number;
  readonly cells: ReadonlyMap<string, SourceCell>;
  readonly order: number | undefined;
}

type Three = Readonly<Record<VersionName, Cells>>;

function textOf({ cells, order }: Cells, key: string): string | undefined {
  if (key === 'order') return order === undefined ? undefined : String(order);
  return cells.get(key)?.text;
}

function cellConflict(
  three: Three,
  at: { readonly place: ConflictPlace; readonly key: string; readonly baseKnown: boolean },
): FoundConflict {
  const { key, baseKnown, place } = at;
  const spelt = (name: VersionName): string | undefined =>
    speltValue(three[name].reading, three[name].block, key);
  return {
    key: conflictKey(place),
    kind: 'cell',
    place,
    base: baseKnown ? textOf(three.base, key) : undefined,
    ours: textOf(three.ours, key),
    theirs: textOf(three.theirs, key),
    baseKnown,
    choices: ['ours', 'theirs'],
    spelt: {
      base: baseKnown ? spelt('base') : undefined,
      ours: spelt('ours'),
      theirs: spelt('theirs'),
    },
  };
}

/** What becomes of a cell: it stays, takes theirs, or both changed it. */
function verdict(three: Three, key: string, baseKnown: boolean): 'stays' | 'theirs' | 'conflict' {
  const [base, ours, theirs] = [three.base, three.ours, three.theirs].map((one) =>
    textOf(one, key),
  );
  if (ours === theirs) return 'stays';
  if (!baseKnown) return 'conflict';
  if (theirs === base) return 'stays';
  if (ours === base) return 'theirs';
  // Rows without a number get one when a row is put between them; that is no move.
  if (key === 'order' && base === undefined && ours !== undefined && theirs !== undefined) {
    return Number(theirs) > Number(ours) ? 'theirs' : 'stays';
  }
  return 'conflict';
}

function mergeKeys(
  three: Three,
  placeOf: (key: string) => ConflictPlace,
  merge: { readonly baseKnown: boolean; readonly plan: MergePlan; readonly verdicts: Verdicts },
): void {
  const { baseKnown, plan, verdicts } = merge;
  const { ours, theirs } = three;
  const keys = new Set([...ours.cells.keys(), ...theirs.cells.keys(), 'order']);
  for (const key of keys) {
    const found = verdict(three, key, baseKnown);
    if (found === 'stays') continue;
    const write = { block: ours.block, key, spelt: speltValue(theirs.reading, theirs.block, key) };
    if (found === 'theirs') {
      plan.cells.push(write);
      continue;
    }
    const conflict = cellConflict(three, { place: placeOf(key), key, baseKnown });
    const choice = verdicts.settle(conflict);
    // Where ours has no such line, theirs is written so that the markers have a place.
    const carries = choice === undefined && conflict.spelt.ours === undefined;
    if (choice === 'theirs' || carries) plan.cells.push(write);
  }
}

/** Merges the cells of a row that all versions have. */
export function mergeRowCells(
  versions: Versions,
  rows: Readonly<Record<VersionName, SourceRow>>,
  plan: MergePlan,
  verdicts: Verdicts,
): void {
  const cellsOf = (name: VersionName): Cells => {
    const { block, cells, order } = rows[name];
    return { reading: versions[name], block, cells, order };
  };
  const three = { base: cellsOf('base'), ours: cellsOf('ours'), theirs: cellsOf('theirs') };
  const baseKnown = !versions.baseUnknown;
  mergeKeys(three, (key) => rowPlace(rows.ours, key), { baseKnown, plan, verdicts });
}

/** Merges the settings of `[job]` or `[book]`. */
export function mergeSettings(versions: Versions, plan: MergePlan, verdicts: Verdicts): void {
  const cellsOf = (name: VersionName): Cells => {
    const reading = versions[name];
    return { reading, block: headBlock(reading), cells: reading.head, order: undefined };
  };
  const three = { base: cellsOf('base'), ours: cellsOf('ours'), theirs: cellsOf('theirs') };
  const table = versions.ours.blocks[three.ours.block]?.header?.name ?? 'job';
  const placeOf = (column: string): ConflictPlace => ({
    table,
    row: undefined,
    occurrence: 0,
    column,
  });
  mergeKeys(three, placeOf, { baseKnown: !versions.baseUnknown, plan, verdicts });
}

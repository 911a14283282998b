import { rowAt } from '../job/row-ids.ts';
import type { SourceRow } from '../job/source.ts';
import { quotedText } from '../job/write-value.ts';
import type { Aligned, NameConflict, Twin } from './align-names.ts';
import { blockLines } from './block-text.ts';
import { conflictKey, rowPlace, type FoundConflict, type Verdicts } from './conflict.ts';
import { matchRows, type RowMatch } from './match-rows.ts';
import { mergeRowCells } from './merge-cells.ts';
import type { MergePlan } from './plan.ts';
import { twinLabel } from './twin-label.ts';
import { usedRows, type Gone } from './used-rows.ts';
import type { Versions } from './versions.ts';

interface RowMerge {
  readonly aligned: Aligned;
  readonly ours: RowMatch;
  readonly theirs: RowMatch;
  readonly plan: MergePlan;
  readonly verdicts: Verdicts;
  /** Rows that were told apart in a merge before. */
  readonly twins?: readonly Twin[];
}

function linesOf(
  versions: Versions,
  name: 'base' | 'ours' | 'theirs',
  row: SourceRow | undefined,
): string | undefined {
  return row === undefined ? undefined : blockLines(versions[name], row.block);
}

/** The conflict over a row that one side took out and the other changed or uses. */
function rowConflict(versions: Versions, rows: Gone): FoundConflict | undefined {
  const row = rows.ours ?? rows.theirs;
  if (row === undefined) return undefined;
  const baseKnown = !versions.baseUnknown;
  const lines = {
    base: baseKnown ? linesOf(versions, 'base', rows.base) : undefined,
    ours: linesOf(versions, 'ours', rows.ours),
    theirs: linesOf(versions, 'theirs', rows.theirs),
  };
  const place = rowPlace(row);
  const key = conflictKey(place);
  return {
    key,
    kind: 'row',
    place,
    ...lines,
    baseKnown,
    choices: ['ours', 'theirs'],
    spelt: lines,
  };
}

function settleRow(merge: RowMerge, rows: Gone): void {
  const { aligned, plan, verdicts } = merge;
  const conflict = rowConflict(aligned.versions, rows);
  if (conflict === undefined) return;
  const choice = verdicts.settle(conflict);
  if (rows.ours === undefined) {
    // Where ours has no such row, theirs is written so that the markers have a place.
    if (choice !== 'ours' && rows.theirs !== undefined) plan.in.push(rows.theirs);
  } else if (rows.theirs === undefined && choice === 'theirs') plan.out.push(rows.ours);
}

function cellsDiffer(a: SourceRow, b: SourceRow): boolean {
  const keys = new Set([...a.cells.keys(), ...b.cells.keys()]);
  return [...keys].some((key) => a.cells.get(key)?.text !== b.cells.get(key)?.text);
}

/** True where the side that kept a row changed it: its cells or its name. */
function isChanged(aligned: Aligned, rows: Gone): boolean {
  const side = rows.ours === undefined ? 'theirs' : 'ours';
  const kept = rows[side];
  if (kept === undefined || rows.base === undefined) return true;
  return cellsDiffer(rows.base, kept) || aligned.renamed[side].has(`${kept.table}/${kept.id}`);
}

function mergeGone(merge: RowMerge, forced: ReadonlySet<string>): void {
  const { aligned, ours, theirs, plan } = merge;
  const gone: Gone[] = [];
  for (const base of new Set([...ours.gone, ...theirs.gone])) {
    const rows = { base, ours: ours.pairs.get(base), theirs: theirs.pairs.get(base) };
    if (rows.ours !== undefined || rows.theirs !== undefined) gone.push(rows);
  }
  const { baseUnknown } = aligned.versions;
  const isDisputed = (rows: Gone): boolean => {
    const row = rows.ours ?? rows.theirs;
    const key = row === undefined ? '' : conflictKey(rowPlace(row));
    return baseUnknown || forced.has(key) || isChanged(aligned, rows);
  };
  const disputed = new Set(gone.filter(isDisputed));
  for (const rows of usedRows({ aligned, ours, theirs }, gone, disputed)) disputed.add(rows);
  for (const rows of gone) {
    if (disputed.has(rows)) settleRow(merge, rows);
    else if (rows.ours !== undefined) plan.out.push(rows.ours);
  }
}

function settleTwin(merge: RowMerge, twin: Twin, row: SourceRow): void {
  const { aligned, plan, verdicts } = merge;
  const { versions } = aligned;
  const own = rowAt(versions.ours, twin);
  const place = rowPlace(row);
  const lines = {
    base: undefined,
    ours: linesOf(versions, 'ours', own),
    theirs: linesOf(versions, 'theirs', row),
  };
  const choice = verdicts.settle({
    key: conflictKey(place),
    kind: 'twice',
    place,
    ...lines,
    baseKnown: true,
    choices: twin.isRival ? ['ours', 'theirs', 'both'] : ['ours', 'both'],
    spelt: lines,
    label: twinLabel(twin),
  });
  const { table, id } = row;
  if (choice === 'ours') plan.references.push({ table, from: id, to: twin.id });
  else plan.in.push(row);
  if (choice === 'theirs' && own !== undefined) {
    plan.out.push(own);
    plan.renames.push({ table, from: id, to: twin.id });
  }
}

function mergeAdded(merge: RowMerge): void {
  const { aligned, theirs, plan } = merge;
  const { versions, alike } = aligned;
  const twins = [...aligned.twins, ...(merge.twins ?? [])];
  for (const row of theirs.added) {
    const twin = twins.find((one) => one.theirs.table === row.table && one.theirs.id === row.id);
    const own = alike.has(`${row.table}/${row.id}`) ? rowAt(versions.ours, row) : undefined;
    if (own !== undefined) {
      const isAbove = row.order !== undefined && own.order !== undefined && row.order < own.order;
      if (isAbove) plan.cells.push({ block: own.block, key: 'order', spelt: String(row.order) });
    } else if (twin !== undefined) settleTwin(merge, twin, row);
    else if (versions.baseUnknown) {
      settleRow(merge, { base: undefined, ours: undefined, theirs: row });
    } else plan.in.push(row);
  }
}

function settleName(merge: RowMerge, { table, base, ours, theirs }: NameConflict): void {
  const { aligned, plan, verdicts } = merge;
  const row = rowAt(aligned.versions.ours, { table, id: ours });
  if (row === undefined || rowAt(aligned.versions.theirs, { table, id: ours }) === undefined)
    return;
  const place = rowPlace(row, 'id');
  const choice = verdicts.settle({
    key: conflictKey(place),
    kind: 'name',
    place,
    base,
    ours,
    theirs,
    baseKnown: base !== undefined,
    choices: ['ours', 'theirs'],
    spelt: {
      base: base === undefined ? undefined : quotedText(base),
      ours: quotedText(ours),
      theirs: quotedText(theirs),
    },
  });
  if (choice === 'theirs') plan.renames.push({ table, from: ours, to: theirs });
}

/** Rows of ours whose cells of theirs cannot stand beside what they hold are a choice as a whole. */
export function settleClashes(
  versions: Versions,
  rows: readonly SourceRow[],
  plan: MergePlan,
  verdicts: Verdicts,
): void {
  for (const ours of rows) {
    const theirs = rowAt(versions.theirs, ours);
    const conflict = rowConflict(versions, { base: rowAt(versions.base, ours), ours, theirs });
    if (conflict === undefined || theirs === undefined) continue;
    if (verdicts.settle(conflict) === 'theirs') plan.replaced.push({ row: ours, by: theirs });
  }
}

/** What a merge before found to be conflicts, though the sides by themselves do not show it. */
export interface MarkedBefore {
  /** Rows whose taking out is a choice in any case, by conflict key. */
  readonly forced: ReadonlySet<string>;
  readonly twins: readonly Twin[];
}

/** Rows of the base as either side has them. */
export interface SideMatches {
  readonly ours: RowMatch;
  readonly theirs: RowMatch;
}

/** Merges the rows of all tables into the plan; answers which rows were matched. */
export function mergeRows(
  aligned: Aligned,
  plan: MergePlan,
  verdicts: Verdicts,
  { forced, twins }: MarkedBefore,
): SideMatches {
  const { versions, names } = aligned;
  const ours = matchRows(versions.base, versions.ours);
  const theirs = matchRows(versions.base, versions.theirs);
  const merge = { aligned, ours, theirs, plan, verdicts, twins };
  for (const name of names) settleName(merge, name);
  for (const [base, own] of ours.pairs) {
    const other = theirs.pairs.get(base);
    if (other === undefined) continue;
    mergeRowCells(versions, { base, ours: own, theirs: other }, plan, verdicts);
  }
  mergeGone(merge, forced);
  mergeAdded(merge);
  return { ours, theirs };
}

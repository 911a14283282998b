import { applyEdits } from '../job/apply-edits.ts';
import { startDraft, withChanges, withKeys, type KeyEdit } from '../job/draft.ts';
import { deleteRow, extentOf, insertRow } from '../job/edit-rows.ts';
import { indexed } from '../job/read-file.ts';
import { referenceChanges } from '../job/rename-references.ts';
import { rowAt } from '../job/row-ids.ts';
import type { FileReading, SourceRow, TextChange } from '../job/source.ts';
import { blockLines, withBreaksOf } from './block-text.ts';
import type { CellWrite, MergePlan } from './plan.ts';

/** The reading after changes of its text. */
export function changed(reading: FileReading, changes: readonly TextChange[]): FileReading {
  return withChanges(startDraft(reading), changes).reading;
}

function keyEdit(reading: FileReading, { block, key, spelt }: CellWrite): KeyEdit {
  if (spelt === undefined) return { block, key, text: undefined };
  return { block, key, text: spelt, spelt: withBreaksOf(reading.text, spelt) };
}

/** Cells of one row are written one after the other, those of different rows together. */
function rounds(writes: readonly CellWrite[]): readonly (readonly CellWrite[])[] {
  const made: CellWrite[][] = [];
  const depth = new Map<number, number>();
  for (const write of writes) {
    const round = depth.get(write.block) ?? 0;
    depth.set(write.block, round + 1);
    const list = made[round];
    if (list === undefined) made.push([write]);
    else list.push(write);
  }
  return made;
}

/** A key that cannot stand beside what the row holds is left out, and said. */
export interface Written {
  readonly reading: FileReading;
  readonly clashes: readonly CellWrite[];
}

/** Writes cells; rows keep their blocks. */
export function writeCells(ours: FileReading, writes: readonly CellWrite[]): Written {
  let reading = ours;
  const clashes: CellWrite[] = [];
  const one = (write: CellWrite): void => {
    const done = withKeys(startDraft(reading), [keyEdit(reading, write)]);
    if (done.ok) ({ reading } = done.value);
    else clashes.push(write);
  };
  for (const round of rounds(writes.filter(({ block }) => block >= 0))) {
    const edits = round.map((write) => keyEdit(reading, write));
    const done = withKeys(startDraft(reading), edits);
    if (done.ok) ({ reading } = done.value);
    else round.forEach(one);
  }
  return { reading, clashes };
}

/** Settings for a file that has no head yet. */
export function writeSettings(
  reading: FileReading,
  settings: ReadonlyMap<string, string>,
): FileReading {
  const edits = [...settings].map(([key, text]) => ({ kind: 'set-head', key, text }) as const);
  const done = applyEdits(reading, edits);
  return done.ok ? done.value.reading : reading;
}

function withLines(reading: FileReading, block: number, lines: string): FileReading {
  const { start, end } = extentOf(indexed(reading), block);
  const text = withBreaksOf(reading.text, lines);
  const closed = reading.text.slice(start, end).endsWith('\n') ? text : text.replace(/\r?\n$/, '');
  return changed(reading, [{ start, end, text: closed }]);
}

function withRow(reading: FileReading, theirs: FileReading, row: SourceRow): FileReading {
  const lines = withBreaksOf(reading.text, blockLines(theirs, row.block));
  return changed(reading, [insertRow(indexed(reading), row, lines)]);
}

function withNames(reading: FileReading, plan: MergePlan): FileReading {
  let now = reading;
  for (const { table, from, to } of plan.renames) {
    const done = applyEdits(now, [{ kind: 'rename-row', row: { table, id: from }, id: to }]);
    if (done.ok) now = done.value.reading;
  }
  for (const one of plan.references) now = changed(now, referenceChanges(indexed(now), one));
  return now;
}

/** Takes out, brings in and renames rows, after cells have been written. */
export function writeRows(cells: FileReading, theirs: FileReading, plan: MergePlan): FileReading {
  let reading = cells;
  for (const { row, by } of plan.replaced) {
    reading = withLines(reading, row.block, blockLines(theirs, by.block));
  }
  // From the end of the file on, so that the blocks ahead keep their places.
  const out = plan.out.toSorted((a, b) => b.block - a.block);
  for (const { block } of out) reading = changed(reading, [deleteRow(indexed(reading), block)]);
  for (const row of plan.in) reading = withRow(reading, theirs, row);
  return withNames(reading, plan);
}

/** The row of a merged file that a row of ours or theirs became; undefined where it is not there. */
export function rowNow(
  reading: FileReading,
  place: { readonly table: string; readonly row: string; readonly occurrence: number },
): SourceRow | undefined {
  const { table, row: id, occurrence } = place;
  return rowAt(reading, { table, id, occurrence }) ?? rowAt(reading, { table, id });
}

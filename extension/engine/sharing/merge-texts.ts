import { deleteRow, extentOf } from '../job/edit-rows.ts';
import { indexed } from '../job/read-file.ts';
import type { FileReading, TextChange } from '../job/source.ts';
import { newlineOf } from '../job/text-lines.ts';
import { blockLines, withBreaksOf } from './block-text.ts';
import { conflictKey, type FoundConflict, type Verdicts } from './conflict.ts';
import { changed } from './write-plan.ts';
import type { Versions } from './versions.ts';

/** A block that is no row: what stands above the first header (name ''), or an unknown table. */
interface PlainBlock {
  readonly name: string;
  /** 0 for the first block of this name. */
  readonly place: number;
  readonly index: number;
  readonly lines: string;
}

function plainBlocks(reading: FileReading): ReadonlyMap<string, PlainBlock> {
  const found = new Map<string, PlainBlock>();
  const counts = new Map<string, number>();
  for (const [index, { role, header }] of indexed(reading).split.parsed.entries()) {
    if (role !== 'top' && role !== 'other') continue;
    const name = role === 'top' ? '' : (header?.name ?? '?');
    const place = counts.get(name) ?? 0;
    counts.set(name, place + 1);
    const lines = blockLines(reading, index);
    found.set(`${name}#${String(place)}`, { name, place, index, lines });
  }
  return found;
}

/** Index of the block that a conflict over plain lines stands in; −1 where there is none. */
export function plainBlockAt(reading: FileReading, name: string, place: number): number {
  return plainBlocks(reading).get(`${name}#${String(place)}`)?.index ?? -1;
}

interface ThreeBlocks {
  readonly base: PlainBlock | undefined;
  readonly ours: PlainBlock | undefined;
  readonly theirs: PlainBlock | undefined;
}

function textConflict({ base, ours, theirs }: ThreeBlocks, baseKnown: boolean): FoundConflict {
  const { name = '', place: occurrence = 0 } = ours ?? {};
  const place = { table: name, row: undefined, occurrence, column: undefined };
  const lines = {
    base: baseKnown ? base?.lines : undefined,
    ours: ours?.lines,
    theirs: theirs?.lines,
  };
  return {
    key: `text ${conflictKey(place)}#${String(occurrence)}`,
    kind: 'text',
    place,
    ...lines,
    baseKnown,
    choices: ['ours', 'theirs'],
    spelt: lines,
  };
}

function takenOver(reading: FileReading, { ours, theirs }: ThreeBlocks): TextChange | undefined {
  const { text } = reading;
  const newline = newlineOf(text);
  if (ours === undefined) {
    if (theirs === undefined) return undefined;
    const lines = withBreaksOf(text, theirs.lines);
    if (theirs.name === '') return { start: 0, end: 0, text: lines + newline };
    const gap = text === '' || text.endsWith('\n') ? newline : newline + newline;
    return { start: text.length, end: text.length, text: gap + lines };
  }
  if (theirs === undefined) return deleteRow(indexed(reading), ours.index);
  const { start, end } = extentOf(indexed(reading), ours.index);
  const lines = withBreaksOf(text, theirs.lines);
  const closed = text.slice(start, end).endsWith('\n') ? lines : lines.trimEnd();
  return { start, end, text: closed };
}

/** What becomes of plain lines: they stay, take theirs, or both changed them. */
function verdictOf(three: ThreeBlocks, baseKnown: boolean): 'stays' | 'theirs' | 'conflict' {
  const [base, ours, theirs] = [three.base, three.ours, three.theirs].map((one) =>
    one?.lines.trimEnd(),
  );
  if (ours === theirs || (baseKnown && theirs === base)) return 'stays';
  if (ours !== undefined && theirs !== undefined) {
    return baseKnown && ours === base ? 'theirs' : 'conflict';
  }
  // A block that one side took out and the other changed stays.
  return (ours ?? '') === (base ?? '') || ours === undefined ? 'theirs' : 'stays';
}

/** What is no row and no setting, merged block by block into the merged file. */
export function mergeTexts(
  merged: FileReading,
  versions: Versions,
  verdicts: Verdicts,
): FileReading {
  const base = plainBlocks(versions.base);
  const theirs = plainBlocks(versions.theirs);
  const baseKnown = !versions.baseUnknown;
  let reading = merged;
  const names = new Set([...plainBlocks(merged).keys(), ...theirs.keys()]);
  // Those that come last first, so that the others keep their places.
  for (const name of [...names].reverse()) {
    const ours = plainBlocks(reading).get(name);
    const three = { base: base.get(name), ours, theirs: theirs.get(name) };
    const found = verdictOf(three, baseKnown);
    if (found === 'stays') continue;
    const isOpen =
      found === 'conflict' && verdicts.settle(textConflict(three, baseKnown)) !== 'theirs';
    const change = isOpen ? undefined : takenOver(reading, three);
    if (change !== undefined) reading = changed(reading, [change]);
  }
  return reading;
}

import { extentOf } from '../job/edit-rows.ts';
import { indexed } from '../job/read-file.ts';
import type { FileReading, TextChange } from '../job/source.ts';
import { changedText } from '../job/text-changes.ts';
import { isBlankLine, lineAbove, lineBelow, newlineOf } from '../job/text-lines.ts';
import { keyText } from '../job/write-value.ts';
import { headBlock, withBreaksOf } from './block-text.ts';
import type { FoundConflict } from './conflict.ts';
import { plainBlockAt } from './merge-texts.ts';
import { rowNow } from './write-plan.ts';

/** How conflict markers are written. */
export interface MarkerStyle {
  /** Letters of a marker; git asks for more where one conflict may stand inside another. */
  readonly size: number;
  readonly ours: string;
  readonly base: string;
  readonly theirs: string;
}

export const usualMarkers: MarkerStyle = { size: 7, ours: 'ours', base: 'base', theirs: 'theirs' };

interface Sides {
  readonly base: string | undefined;
  readonly ours: string;
  readonly theirs: string;
  readonly label: string | undefined;
}

function markedLines(sides: Sides, style: MarkerStyle, newline: string): string {
  const line = (sign: string, label: string): string =>
    sign.repeat(style.size) + (label === '' ? '' : ` ${label}`) + newline;
  const closed = (text: string): string =>
    text === '' || text.endsWith('\n') ? text : text + newline;
  return [
    line('<', style.ours),
    closed(sides.ours),
    ...(sides.base === undefined ? [] : [line('|', style.base), closed(sides.base)]),
    line('=', ''),
    closed(sides.theirs),
    line('>', style.theirs + (sides.label ?? '')),
  ].join('');
}

interface Stretch {
  readonly start: number;
  readonly end: number;
}

function blockAt(reading: FileReading, conflict: FoundConflict): number {
  const { table, row, occurrence } = conflict.place;
  if (conflict.kind === 'text') return plainBlockAt(reading, table, occurrence);
  if (row === undefined) return headBlock(reading);
  return rowNow(reading, { table, row, occurrence })?.block ?? -1;
}

function keyStretch(reading: FileReading, block: number, key: string): Stretch | undefined {
  const { split } = indexed(reading);
  const entry = split.parsed[block]?.entries.find((one) => one.key === key);
  const start = split.starts[block] ?? 0;
  return entry && { start: start + entry.lineStart, end: start + entry.lineEnd };
}

interface Gap {
  /** The stretch with the blank line that goes where a side has no such row. */
  readonly gap: Stretch;
  readonly above: string;
  readonly below: string;
}

/** The blank line that parts a row from the next, or, for the last one, from the row before. */
function gapOf(text: string, stretch: Stretch, kind: FoundConflict['kind']): Gap {
  const { start, end } = stretch;
  const none = { gap: stretch, above: '', below: '' };
  if (kind !== 'row' && kind !== 'twice') return none;
  if (isBlankLine(text, end)) {
    const after = lineBelow(text, end);
    return { gap: { start, end: after }, above: '', below: text.slice(end, after) };
  }
  const before = lineAbove(text, start);
  if (before === undefined || !isBlankLine(text, before)) return none;
  return { gap: { start: before, end }, above: text.slice(before, start), below: '' };
}

function marked(
  reading: FileReading,
  conflict: FoundConflict,
  style: MarkerStyle,
): TextChange | undefined {
  const { place, kind, baseKnown, spelt } = conflict;
  const newline = newlineOf(reading.text);
  const block = blockAt(reading, conflict);
  if (block < 0) return undefined;
  const whole = place.column === undefined;
  const stretch = whole
    ? extentOf(indexed(reading), block)
    : keyStretch(reading, block, place.column);
  if (stretch === undefined) return undefined;
  const { gap, above, below } = gapOf(reading.text, stretch, kind);
  const now = reading.text.slice(stretch.start, stretch.end);
  const side = (name: 'base' | 'ours' | 'theirs'): string => {
    const value = spelt[name];
    if (value === undefined) return '';
    if (name === 'ours' && kind !== 'twice') return above + now + below;
    if (whole) return above + withBreaksOf(reading.text, value) + below;
    return `${keyText(place.column)} = ${withBreaksOf(reading.text, value)}${newline}`;
  };
  const sides = {
    base: baseKnown ? side('base') : undefined,
    ours: kind === 'twice' ? '' : side('ours'),
    theirs: kind === 'twice' ? above + now + below : side('theirs'),
    label: conflict.label,
  };
  return { ...gap, text: markedLines(sides, style, newline) };
}

/**
 * Writes open conflicts into a merged file, each between markers around its lines; they are given back
 * in the order in which they stand.
 */
export function withMarkers(
  reading: FileReading,
  conflicts: readonly FoundConflict[],
  style: MarkerStyle,
): { readonly text: string; readonly conflicts: readonly FoundConflict[] } {
  const found = conflicts
    .flatMap((conflict) => {
      const change = marked(reading, conflict, style);
      return change === undefined ? [] : [{ conflict, change }];
    })
    .sort((a, b) => a.change.start - b.change.start);
  const changes = found.map(({ change }) => change);
  return {
    text: changedText(reading.text, changes),
    conflicts: found.map(({ conflict }) => conflict),
  };
}

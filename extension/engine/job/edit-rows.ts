import { tablePlace } from './columns.ts';
import type { IndexedReading } from './read-file.ts';
import type { TextChange } from './source.ts';
import type { ParsedBlock } from './parse-block.ts';
import {
  afterBlankLines,
  beforeBlankLines,
  insertedLines,
  isBlankLine,
  lineAbove,
  newlineOf,
  withCommentsAbove,
  withCommentsBelow,
} from './text-lines.ts';

/** Where a row's lines begin and end, with the comments that belong to it. */
export interface Extent {
  readonly start: number;
  readonly end: number;
}

/** End of the last line of a block that is not blank or a comment. */
function contentEnd(reading: IndexedReading, index: number): number {
  const block = reading.split.parsed[index];
  const start = reading.split.starts[index] ?? 0;
  const ends = block?.entries.map((entry) => entry.lineEnd) ?? [];
  return start + Math.max(block?.headerEnd ?? 0, ...ends);
}

/** The lines of a block with the comments that belong to it, without blank lines around. */
export function extentOf(reading: IndexedReading, index: number): Extent {
  const { split, text } = reading;
  const start = split.starts[index] ?? 0;
  const top = index === 0 ? 0 : contentEnd(reading, index - 1);
  const first = split.parsed[index]?.header === undefined;
  return {
    start: first ? start : withCommentsAbove(text, start, top),
    end: withCommentsBelow(text, contentEnd(reading, index)),
  };
}

/** Takes a row out with the comments that belong to it and the blank lines it leaves behind. */
export function deleteRow(reading: IndexedReading, index: number): TextChange {
  const { text } = reading;
  const { start, end } = extentOf(reading, index);
  const next = afterBlankLines(text, end);
  if (next < text.length) {
    const above = lineAbove(text, start);
    const parted = above === undefined || isBlankLine(text, above);
    return { start, end: parted ? next : end, text: '' };
  }
  let from = beforeBlankLines(text, start);
  if (!text.endsWith('\n') && from > 0) from -= text.endsWith('\r\n', from) ? 2 : 1;
  return { start: from, end: next, text: '' };
}

interface Place {
  readonly index: number;
  readonly side: 'before' | 'after';
}

/** Index of the last block that must stand above a table's rows. */
function lastEarlier(reading: IndexedReading, table: string): number {
  const wanted = tablePlace(table) ?? Infinity;
  return reading.split.parsed.findLastIndex(({ role, header }) => {
    if (role === 'head' || role === 'top') return true;
    return role === 'row' && (tablePlace(header?.name ?? '') ?? Infinity) < wanted;
  });
}

/** The block next to which a new row belongs: ids in order within a table, tables in their order. */
function placeOf(reading: IndexedReading, table: string, id: string): Place {
  const { parsed } = reading.split;
  const own = (block: ParsedBlock): boolean => block.role === 'row' && block.header?.name === table;
  const smaller = parsed.findLastIndex((block) => own(block) && block.id <= id);
  if (smaller !== -1) return { index: smaller, side: 'after' };
  const first = parsed.findIndex(own);
  if (first !== -1) return { index: first, side: 'before' };
  const earlier = lastEarlier(reading, table);
  return earlier === -1 ? { index: 0, side: 'before' } : { index: earlier, side: 'after' };
}

function insertBlock(reading: IndexedReading, place: Place, lines: string): TextChange {
  const { text } = reading;
  const newline = newlineOf(text);
  const extent = extentOf(reading, place.index);
  if (place.side === 'before') {
    return { start: extent.start, end: extent.start, text: lines + newline };
  }
  const { end } = extent;
  const blank = text === '' ? '' : newline;
  const closing = end < text.length && !isBlankLine(text, end) ? newline : '';
  const inserted = insertedLines(text, end, blank + lines + closing, newline);
  return { start: end, end, text: inserted };
}

/** Writes a new row's lines (each with its line break) in the row's place. */
export function insertRow(
  reading: IndexedReading,
  row: { readonly table: string; readonly id: string },
  lines: string,
): TextChange {
  return insertBlock(reading, placeOf(reading, row.table, row.id), lines);
}

/** Writes a head table where the file has none: below the format, above all rows. */
export function insertHead(reading: IndexedReading, lines: string): TextChange {
  const top = reading.split.parsed[0]?.role === 'top';
  return insertBlock(reading, { index: 0, side: top ? 'after' : 'before' }, lines);
}

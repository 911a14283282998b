import { commonEnd, commonStart } from './common-ends.ts';
import { parseBlock, type ParsedBlock } from './parse-block.ts';
import type { TextChange } from './source.ts';
import { isHeaderAt, scanBlock, scanHeader } from './scan-block.ts';

/** Blocks of a file in order, each with its offset. Their texts put together are the file. */
export interface SplitText {
  readonly parsed: readonly ParsedBlock[];
  readonly starts: readonly number[];
}

/** End of the block that begins at an offset: the next header's line or the end of the text. */
function blockEnd(text: string, start: number): number {
  const bodyStart = isHeaderAt(text, start) ? scanHeader(text, start).end : start;
  return scanBlock(text, bodyStart).end;
}

function parsedAt(text: string, start: number, end: number): ParsedBlock {
  return parseBlock(text.slice(start, end), isHeaderAt(text, start));
}

const nextHeader = /\n[ \t]*\[/g;

/** Offset of the first line behind the one at an offset that looks like a table's header. */
function lookedForEnd(text: string, start: number): number {
  nextHeader.lastIndex = start;
  const found = nextHeader.exec(text);
  return found === null ? text.length : found.index + 1;
}

type KnownBlocks = ReadonlyMap<string, ParsedBlock>;

function blocksByText(blocks: readonly ParsedBlock[]): KnownBlocks {
  return new Map(blocks.map((block) => [block.text, block]));
}

/** The block that begins at an offset; one of those known if its text is the same. */
function blockAt(text: string, start: number, known: KnownBlocks): ParsedBlock {
  const block = (end: number): ParsedBlock =>
    known.get(text.slice(start, end)) ?? parsedAt(text, start, end);
  const end = lookedForEnd(text, start);
  const found = block(end);
  // What looks like a header may stand inside a value, which is then cut short: that is a fault.
  if (!found.broken && !found.open) return found;
  const whole = blockEnd(text, start);
  return whole === end ? found : block(whole);
}

/** Splits a whole text into blocks and reads each that is not known already. */
export function splitText(text: string, known: KnownBlocks = new Map()): SplitText {
  const parsed: ParsedBlock[] = [];
  const starts: number[] = [];
  let at = 0;
  do {
    const block = blockAt(text, at, known);
    parsed.push(block);
    starts.push(at);
    at += block.text.length;
  } while (at < text.length);
  return { parsed, starts };
}

/** Index of the first start that is not below an offset; the number of starts where there is none. */
function firstFrom(starts: readonly number[], offset: number, from = 0): number {
  let low = from;
  let high = starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? 0) < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}

export interface Resplit {
  readonly split: SplitText;
  /** Blocks before this index are the same objects as before. */
  readonly ahead: number;
  /** So many blocks at the end are the same objects as before. */
  readonly behind: number;
}

/** Blocks that are read again, up to where the old blocks go on. */
interface Region {
  readonly parsed: readonly ParsedBlock[];
  readonly starts: readonly number[];
  /** Index of the old block that stands next; the number of old blocks where none does. */
  readonly next: number;
}

function readRegion(text: string, from: number, known: KnownBlocks, old: OldStarts): Region {
  const parsed: ParsedBlock[] = [];
  const starts: number[] = [];
  let at = from;
  do {
    const next = firstFrom(old.starts, at - old.shift, old.first);
    if (at > 0 && old.starts[next] === at - old.shift) return { parsed, starts, next };
    const block = blockAt(text, at, known);
    parsed.push(block);
    starts.push(at);
    at += block.text.length;
  } while (at < text.length);
  return { parsed, starts, next: old.starts.length };
}

/** Where the blocks began that may stand unchanged behind the change. */
interface OldStarts {
  readonly starts: readonly number[];
  readonly first: number;
  readonly shift: number;
}

/**
 * Splits a changed text, reading again only the blocks around the change; a block whose text was
 * there before the change is taken over as it was.
 */
export function resplitText(before: SplitText, previous: string, text: string): Resplit {
  const start = commonStart(previous, text);
  const most = Math.min(previous.length, text.length) - start;
  const end = previous.length - commonEnd(previous, text, most);
  // The last block that begins in what is unchanged may reach further now, and the header of the one
  // after it may be half written, so both are scanned again.
  const ahead = Math.max(0, firstFrom(before.starts, start) - 2);
  const kept = before.parsed.slice(0, ahead);
  if (kept.some((block) => block.open)) {
    return { split: splitText(text, blocksByText(before.parsed)), ahead: 0, behind: 0 };
  }
  const shift = text.length - previous.length;
  const first = firstFrom(before.starts, Math.max(end, before.starts[ahead + 1] ?? end));
  const known = blocksByText(before.parsed.slice(ahead, first + 1));
  const from = before.starts[ahead] ?? 0;
  const region = readRegion(text, from, known, { starts: before.starts, first, shift });
  const moved = before.starts.slice(region.next).map((old) => old + shift);
  const split = {
    parsed: kept.concat(region.parsed, before.parsed.slice(region.next)),
    starts: before.starts.slice(0, ahead).concat(region.starts, moved),
  };
  return { split, ahead, behind: before.parsed.length - region.next };
}

/** Index of the block that a stretch of the text lies in; −1 where it runs over a block's end. */
function blockAround(before: SplitText, start: number, end: number): number {
  const index = firstFrom(before.starts, start + 1) - 1;
  const block = before.parsed[index];
  const blockStart = before.starts[index];
  if (block === undefined || blockStart === undefined) return -1;
  return end < blockStart + block.text.length ? index : -1;
}

/**
 * Splits a text in which one stretch of one line was replaced, without looking at the rest of the
 * text; undefined where the change may reach beyond its block.
 */
export function resplitInBlock(before: SplitText, change: TextChange): Resplit | undefined {
  const { start, end } = change;
  const index = blockAround(before, start, end);
  const block = before.parsed[index];
  if (block === undefined || block.open || change.text.includes('\n')) return undefined;
  const from = start - (before.starts[index] ?? 0);
  const to = from + end - start;
  // A header that changes may make another block of it.
  if (from < block.headerEnd || block.text.slice(from, to).includes('\n')) return undefined;
  const text = block.text.slice(0, from) + change.text + block.text.slice(to);
  if (blockEnd(text, 0) !== text.length) return undefined;
  const fresh = parsedAt(text, 0, text.length);
  if (fresh.open) return undefined;
  const shift = text.length - block.text.length;
  const split = {
    parsed: before.parsed.with(index, fresh),
    starts:
      shift === 0
        ? before.starts
        : before.starts.map((old, place) => (place > index ? old + shift : old)),
  };
  return { split, ahead: index, behind: before.parsed.length - index - 1 };
}

import { parseBlock, type ParsedBlock } from './parse-block.ts';
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

type KnownBlocks = ReadonlyMap<string, ParsedBlock>;

function blocksByText(blocks: readonly ParsedBlock[]): KnownBlocks {
  return new Map(blocks.map((block) => [block.text, block]));
}

/** Splits a whole text into blocks and reads each that is not known already. */
export function splitText(text: string, known: KnownBlocks = new Map()): SplitText {
  const parsed: ParsedBlock[] = [];
  const starts: number[] = [];
  let at = 0;
  do {
    const end = blockEnd(text, at);
    parsed.push(known.get(text.slice(at, end)) ?? parsedAt(text, at, end));
    starts.push(at);
    at = end;
  } while (at < text.length);
  return { parsed, starts };
}

/** How many blocks at the beginning stand in the new text as they stood. */
function keptAhead(before: SplitText, text: string): number {
  let at = 0;
  let kept = 0;
  for (const block of before.parsed) {
    if (!text.startsWith(block.text, at)) break;
    at += block.text.length;
    kept++;
  }
  return kept;
}

/** Index of the first block from which on the new text ends as the old one did. */
function keptBehind(before: SplitText, text: string, from: number): number {
  let at = text.length;
  let index = before.parsed.length;
  while (index > from) {
    const block = before.parsed[index - 1];
    if (block === undefined || !text.endsWith(block.text, at)) break;
    at -= block.text.length;
    index--;
  }
  return index;
}

export interface Resplit {
  readonly split: SplitText;
  /** Blocks before this index are the same objects as before. */
  readonly ahead: number;
  /** So many blocks at the end are the same objects as before. */
  readonly behind: number;
}

/**
 * Splits a changed text, reading again only the blocks around the change; a block whose text was
 * there before the change is taken over as it was.
 */
export function resplitText(before: SplitText, text: string): Resplit {
  // The last block that stands unchanged may reach further now, so it is scanned again.
  const ahead = Math.max(0, keptAhead(before, text) - 1);
  const behindFrom = keptBehind(before, text, ahead);
  const parsed = before.parsed.slice(0, ahead);
  if (parsed.some((block) => block.open)) {
    const split = splitText(text, blocksByText(before.parsed));
    return { split, ahead: 0, behind: 0 };
  }
  const starts = before.starts.slice(0, ahead);
  const known = blocksByText(before.parsed.slice(ahead, behindFrom + 1));
  const oldLength = before.parsed.at(-1)?.text.length ?? 0;
  const shift = text.length - ((before.starts.at(-1) ?? 0) + oldLength);
  let at = before.starts[ahead] ?? 0;
  let behind = behindFrom;
  do {
    while (behind < before.starts.length && (before.starts[behind] ?? 0) + shift < at) behind++;
    if (at > 0 && behind < before.starts.length && (before.starts[behind] ?? 0) + shift === at)
      break;
    const end = blockEnd(text, at);
    const blockText = text.slice(at, end);
    parsed.push(known.get(blockText) ?? parsedAt(text, at, end));
    starts.push(at);
    at = end;
  } while (at < text.length);
  if (at >= text.length) return { split: { parsed, starts }, ahead, behind: 0 };
  for (let index = behind; index < before.parsed.length; index++) {
    const block = before.parsed[index];
    if (block === undefined) break;
    parsed.push(block);
    starts.push((before.starts[index] ?? 0) + shift);
  }
  return { split: { parsed, starts }, ahead, behind: before.parsed.length - behind };
}

import { compareRanks, type KeyRank } from './key-rank.ts';
import type { ParsedBlock } from './parse-block.ts';
import type { Entry } from './scan-block.ts';
import type { TextChange } from './source.ts';
import {
  insertedLines,
  isBlankLine,
  lineAbove,
  newlineOf,
  withCommentsAbove,
  withCommentsBelow,
} from './text-lines.ts';
import { keyText } from './write-value.ts';

/** A block of a text, with the ranks of its keys. */
export interface BlockAt {
  readonly text: string;
  readonly block: ParsedBlock;
  readonly start: number;
  readonly rank: (key: string) => KeyRank;
}

/** Replaces the value of a key that stands in the block. */
export function replaceValue(at: BlockAt, entry: Entry, value: string): TextChange[] {
  const { valueStart, valueEnd } = entry;
  if (at.block.text.slice(valueStart, valueEnd) === value) return [];
  return [{ start: at.start + valueStart, end: at.start + valueEnd, text: value }];
}

/** Start of an entry's line, with the comment lines directly above it. */
function entryStart(at: BlockAt, entry: Entry): number {
  const { entries, headerEnd } = at.block;
  const top = entries[entries.findIndex((one) => one.key === entry.key) - 1]?.lineEnd ?? headerEnd;
  return withCommentsAbove(at.text, at.start + entry.lineStart, at.start + top);
}

/**
 * Takes a key out with the comment lines directly above it; where it stood alone between blank lines
 * one of these goes too.
 */
export function removeKey(at: BlockAt, entry: Entry): TextChange {
  const { text } = at;
  let start = entryStart(at, entry);
  const end = at.start + entry.lineEnd;
  const above = lineAbove(text, start);
  const alone = end === at.start + at.block.text.length || isBlankLine(text, end);
  if (above !== undefined && alone && isBlankLine(text, above)) start = above;
  // A file without a last line break stays one.
  if (end === text.length && !text.endsWith('\n') && start > 0) {
    start -= text.endsWith('\r\n', start) ? 2 : 1;
  }
  return { start, end, text: '' };
}

interface Neighbours {
  readonly before?: Entry & { readonly rank: KeyRank };
  readonly after?: Entry & { readonly rank: KeyRank };
}

/** The keys that stand nearest before and after a rank, by rank and not by place in the file. */
function neighbours(at: BlockAt, rank: KeyRank): Neighbours {
  let before: Neighbours['before'];
  let after: Neighbours['after'];
  for (const entry of at.block.entries) {
    const own = at.rank(entry.key);
    if (compareRanks(own, rank) < 0) {
      if (before === undefined || compareRanks(own, before.rank) >= 0) {
        before = { ...entry, rank: own };
      }
    } else if (after === undefined || compareRanks(own, after.rank) < 0) {
      after = { ...entry, rank: own };
    }
  }
  return {
    ...(before === undefined ? {} : { before }),
    ...(after === undefined ? {} : { after }),
  };
}

/** A key as a group of its own, in a block in which its group has no key yet. */
function newGroup(at: BlockAt, before: Entry | undefined, line: string): TextChange {
  const { text, start } = at;
  const newline = newlineOf(text);
  const offset = withCommentsBelow(text, start + (before?.lineEnd ?? at.block.headerEnd));
  const blockEnd = start + at.block.text.length;
  // A block written without blank lines keeps its own manner.
  const crowded = offset < blockEnd && !isBlankLine(text, offset);
  const lines = before === undefined || crowded ? line : newline + line;
  const headerFollows = offset === blockEnd && offset < text.length;
  const closing = headerFollows && before !== undefined ? newline : '';
  return {
    start: offset,
    end: offset,
    text: insertedLines(text, offset, lines + closing, newline),
  };
}

/** Writes a new key in its place: with its group, or as a group of its own between blank lines. */
export function insertKey(at: BlockAt, key: string, value: string): TextChange {
  const { text, start } = at;
  const newline = newlineOf(text);
  const line = `${keyText(key)} = ${value}${newline}`;
  const inserted = (offset: number): TextChange => ({
    start: offset,
    end: offset,
    text: insertedLines(text, offset, line, newline),
  });
  const rank = at.rank(key);
  const { before, after } = neighbours(at, rank);
  if (before?.rank.group === rank.group) return inserted(start + before.lineEnd);
  if (after?.rank.group === rank.group) return inserted(entryStart(at, after));
  return newGroup(at, before, line);
}

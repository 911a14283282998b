import { extentOf } from '../job/edit-rows.ts';
import { indexed } from '../job/read-file.ts';
import type { FileReading, TextChange } from '../job/source.ts';
import { newlineOf, withCommentsAbove } from '../job/text-lines.ts';
import { sameList } from '../units/same-list.ts';
import { withBreaksOf } from './block-text.ts';

/**
 * Where a remark stands in its block: above a key or the header, behind a value or the header, or
 * loose between blank lines below a key.
 */
type Anchor = `${'above' | 'behind' | 'loose'} ${string}`;

interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly raw: string;
  /** Below the last key of its block. */
  readonly last: boolean;
}

type Remarks = ReadonlyMap<Anchor, Stretch>;

/** All places of a block where remarks can stand, with what stands there. */
function remarksOf(reading: FileReading, block: number): Remarks {
  const { split, text } = indexed(reading);
  const parsed = split.parsed[block];
  const places = new Map<Anchor, Stretch>();
  if (parsed === undefined) return places;
  const start = split.starts[block] ?? 0;
  const put = (anchor: Anchor, from: number, to: number, last = false): void => {
    places.set(anchor, { start: from, end: to, raw: text.slice(from, to), last });
  };
  put('above ', extentOf(indexed(reading), block).start, start);
  const header = text.slice(start, start + parsed.headerEnd);
  const bracket = header.lastIndexOf(']', header.indexOf('#') >>> 0) + 1;
  put('behind ', start + bracket, start + parsed.headerEnd);
  let below = start + parsed.headerEnd;
  let above = '';
  for (const { key, lineStart, valueEnd, lineEnd } of parsed.entries) {
    const comments = withCommentsAbove(text, start + lineStart, below);
    put(`loose ${above}`, below, comments);
    put(`above ${key}`, comments, start + lineStart);
    put(`behind ${key}`, start + valueEnd, start + lineEnd);
    below = start + lineEnd;
    above = key;
  }
  const end =
    block + 1 < split.parsed.length ? extentOf(indexed(reading), block + 1).start : text.length;
  put(`loose ${above}`, below, Math.max(below, end), true);
  return places;
}

/** The remarks of a stretch, line by line, without what is around them. */
function wordsOf(stretch: Stretch | undefined): readonly string[] {
  return (stretch?.raw ?? '')
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line.startsWith('#'));
}

/** A stretch of ours with these remarks in it. */
function written(anchor: Anchor, at: Stretch, words: readonly string[], newline: string): string {
  const lines = words.map((line) => line + newline).join('');
  if (anchor.startsWith('behind')) {
    const end = /\r?\n?$/.exec(at.raw)?.[0] ?? '';
    return `${words.map((line) => ` ${line}`).join('')}${end}`;
  }
  if (anchor.startsWith('above')) return lines;
  const blank = /^\s*$/.test(at.raw) ? at.raw : newline;
  if (words.length === 0) return blank;
  return newline + lines + (at.last && at.raw === '' ? '' : newline);
}

function change(at: Stretch, text: string): TextChange[] {
  return text === at.raw ? [] : [{ start: at.start, end: at.end, text }];
}

/** Blocks of three versions that are one row, or the settings. */
export interface SameBlock {
  readonly base: number;
  readonly ours: number;
  readonly theirs: number;
}

/** What is done at one place: nothing, a change, or remarks that have no place any more. */
function atPlace(
  anchor: Anchor,
  places: { readonly base: Remarks; readonly ours: Remarks; readonly theirs: Remarks },
  mergedText: string,
): { readonly changes: readonly TextChange[]; readonly homeless: readonly string[] } {
  const nothing = { changes: [], homeless: [] };
  const at = places.ours.get(anchor);
  const there = places.theirs.get(anchor);
  const old = wordsOf(places.base.get(anchor));
  const theirs = wordsOf(there);
  const own = wordsOf(at);
  if (sameList(theirs, old) || sameList(theirs, own)) return nothing;
  const more = theirs.filter((line) => !old.includes(line) && !own.includes(line));
  if (at === undefined) return { changes: [], homeless: more };
  const newline = newlineOf(mergedText);
  if (!sameList(own, old)) {
    return { ...nothing, changes: change(at, written(anchor, at, [...own, ...more], newline)) };
  }
  const alike = there?.last === at.last && there.raw.endsWith('\n') && at.raw.endsWith('\n');
  const text = alike ? withBreaksOf(mergedText, there.raw) : written(anchor, at, theirs, newline);
  return { ...nothing, changes: change(at, text) };
}

function remarkChanges(
  versions: {
    readonly base: FileReading;
    readonly merged: FileReading;
    readonly theirs: FileReading;
  },
  block: SameBlock,
): readonly TextChange[] {
  const { text } = versions.merged;
  const places = {
    base: remarksOf(versions.base, block.base),
    ours: remarksOf(versions.merged, block.ours),
    theirs: remarksOf(versions.theirs, block.theirs),
  };
  const found = [...new Set([...places.theirs.keys(), ...places.base.keys()])].map((anchor) =>
    atPlace(anchor, places, text),
  );
  const changes = found.flatMap((one) => one.changes);
  const homeless = found.flatMap((one) => one.homeless);
  const last = [...places.ours].find(([, at]) => at.last);
  if (homeless.length === 0 || last === undefined) return changes;
  const [anchor, at] = last;
  if (changes.some(({ start }) => start === at.start)) return changes;
  const words = [...wordsOf(at), ...homeless];
  return [...changes, ...change(at, written(anchor, at, words, newlineOf(text)))];
}

/**
 * Remarks that theirs wrote or took away, as changes of the merged text. Where both changed the
 * remarks of one place, ours stay and what is new in theirs is added.
 */
export function mergedRemarks(
  versions: {
    readonly base: FileReading;
    readonly merged: FileReading;
    readonly theirs: FileReading;
  },
  blocks: readonly SameBlock[],
): readonly TextChange[] {
  const hasRemarks = (reading: FileReading): boolean => reading.text.includes('#');
  if (!hasRemarks(versions.theirs) && !hasRemarks(versions.base)) return [];
  const { theirs, base } = versions;
  return blocks
    .filter((block) => {
      const a = indexed(theirs).split;
      const b = indexed(base).split;
      // Remarks above a header stand in the block before.
      const around = (split: typeof a, index: number): string =>
        (split.parsed[index - 1]?.text ?? '') + (split.parsed[index]?.text ?? '');
      return around(a, block.theirs) !== around(b, block.base);
    })
    .flatMap((block) => remarkChanges(versions, block));
}

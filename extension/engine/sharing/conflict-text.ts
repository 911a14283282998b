import type { VersionName } from './versions.ts';

interface Stretch {
  readonly start: number;
  readonly end: number;
}

/** One stretch between conflict markers, as offsets in the text. */
export interface Hunk extends Stretch {
  readonly ours: Stretch;
  /** Undefined where the markers do not tell what stood before. */
  readonly base: Stretch | undefined;
  readonly theirs: Stretch;
}

const markerLine = /^([<|=>])\1{6,}(?=[ \r\n]|$).*$/gm;

interface OpenHunk {
  readonly start: number;
  readonly size: number;
  readonly oursStart: number;
  oursEnd?: number;
  base?: Stretch;
  baseStart?: number;
  theirsStart?: number;
}

function lineEnd(text: string, from: number): number {
  const found = text.indexOf('\n', from);
  return found === -1 ? text.length : found + 1;
}

/** Takes one marker line into the hunk; gives the hunk where it is complete. */
function takeMarker(hunk: OpenHunk, sign: string, line: Stretch): Hunk | undefined {
  const { start, end } = line;
  if (sign === '|' && hunk.oursEnd === undefined) {
    hunk.oursEnd = start;
    hunk.baseStart = end;
  } else if (sign === '=' && hunk.theirsStart === undefined) {
    if (hunk.baseStart !== undefined) hunk.base = { start: hunk.baseStart, end: start };
    hunk.oursEnd ??= start;
    hunk.theirsStart = end;
  } else if (sign === '>' && hunk.theirsStart !== undefined) {
    return {
      start: hunk.start,
      end,
      ours: { start: hunk.oursStart, end: hunk.oursEnd ?? hunk.oursStart },
      base: hunk.base,
      theirs: { start: hunk.theirsStart, end: start },
    };
  }
  return undefined;
}

/** The conflicts of a text, as git and Panelwright mark them; markers that do not belong together are left. */
export function conflictHunks(text: string): readonly Hunk[] {
  const hunks: Hunk[] = [];
  let open: OpenHunk | undefined;
  for (const found of text.matchAll(markerLine)) {
    const [, sign = ''] = found;
    const start = found.index;
    const end = lineEnd(text, start);
    const size = /^(.)\1*/.exec(found[0])?.[0].length ?? 0;
    if (sign === '<' && open === undefined) open = { start, size, oursStart: end };
    else if (open !== undefined && size === open.size) {
      const hunk = takeMarker(open, sign, { start, end });
      if (hunk === undefined) continue;
      hunks.push(hunk);
      open = undefined;
    }
  }
  return hunks;
}

/**
 * The text as one side has it: each conflict replaced by that side's lines. Undefined where a conflict
 * does not tell what stood before and that is asked for.
 */
export function sideOfConflicts(text: string, side: VersionName): string | undefined {
  const pieces: string[] = [];
  let at = 0;
  for (const hunk of conflictHunks(text)) {
    const lines = hunk[side];
    if (lines === undefined) return undefined;
    pieces.push(text.slice(at, hunk.start), text.slice(lines.start, lines.end));
    at = hunk.end;
  }
  pieces.push(text.slice(at));
  return pieces.join('');
}

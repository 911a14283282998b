import type { Piece } from './sheet.ts';

/**
 * How a rectangle of a sheet is cut apart: left free, a piece, or cut by straight cuts from edge to
 * edge into parts that lie side by side (`across`: cuts run across the length) or one above another
 * (`along`: cuts run along it). Only sizes are kept: where parts lie follows from their order, and
 * parts of one cut may change places.
 */
export type Cut =
  | { readonly way: 'free'; readonly length: number; readonly width: number }
  | {
      readonly way: 'piece';
      readonly length: number;
      readonly width: number;
      readonly piece: Piece;
      readonly turned: boolean;
    }
  | {
      readonly way: 'across' | 'along';
      readonly length: number;
      readonly width: number;
      readonly parts: readonly Cut[];
    };

export type FreeCut = Extract<Cut, { way: 'free' }>;
type Ways = 'across' | 'along';

/** A rectangle that nothing is cut from yet. */
export function freeCut(length: number, width: number): FreeCut {
  return { way: 'free', length, width };
}

/**
 * Parts of a rectangle put together again: free parts beside each other are one, parts cut the same
 * way are cut at once, and a strip that all its parts leave some of hands that back.
 */
export function joined(way: Ways, length: number, width: number, parts: readonly Cut[]): Cut {
  const flat: Cut[] = [];
  let room = 0;
  for (const part of parts) {
    const own = part.way === way ? part.parts : [part];
    for (const one of own) {
      if (one.way === 'free') room += way === 'across' ? one.length : one.width;
      else flat.push(one);
    }
  }
  const [only] = flat;
  if (only === undefined) return freeCut(length, width);
  if (room > 0) flat.push(way === 'across' ? freeCut(room, width) : freeCut(length, room));
  else if (flat.length === 1) return only;
  return handedBack(way, { length, width }, { parts: flat, room });
}

function handedBack(
  way: Ways,
  size: { readonly length: number; readonly width: number },
  { parts, room }: { readonly parts: readonly Cut[]; readonly room: number },
): Cut {
  const { length, width } = size;
  const whole: Cut = { way, length, width, parts };
  const slack = slackOf(way, parts);
  if (slack === 0) return whole;
  const [side, other] = way === 'across' ? [length, width] : [width, length];
  // The strip beyond must be more than what a free part at the end loses.
  if (Math.max(room * (other - slack), side * slack) <= room * other) return whole;
  const narrow = parts.map((part) => narrowed(way, part, slack));
  return way === 'across'
    ? joined('along', length, width, [
        joined(way, length, width - slack, narrow),
        freeCut(length, slack),
      ])
    : joined('across', length, width, [
        joined(way, length - slack, width, narrow),
        freeCut(slack, width),
      ]);
}

/** What every part that is not free leaves free at its end. */
function slackOf(way: Ways, parts: readonly Cut[]): number {
  let slack = Infinity;
  for (const part of parts) {
    if (part.way === 'free') continue;
    if (part.way === 'piece') return 0;
    const last = part.parts[part.parts.length - 1];
    if (last?.way !== 'free') return 0;
    slack = Math.min(slack, way === 'across' ? last.width : last.length);
  }
  return slack === Infinity ? 0 : slack;
}

function narrowed(way: Ways, part: Cut, slack: number): Cut {
  const length = way === 'across' ? part.length : part.length - slack;
  const width = way === 'across' ? part.width - slack : part.width;
  if (part.way === 'free') return freeCut(length, width);
  if (part.way === 'piece') return part;
  const last = part.parts[part.parts.length - 1];
  const rest = part.parts.slice(0, -1);
  const end =
    way === 'across'
      ? freeCut(length, (last?.width ?? 0) - slack)
      : freeCut((last?.length ?? 0) - slack, width);
  return joined(part.way, length, width, [...rest, end]);
}

/** Cuts a piece out of a free rectangle; `across` says which of two possible cuts is made first. */
export function pieceCut(
  free: FreeCut,
  piece: { readonly piece: Piece; readonly turned: boolean },
  across: boolean,
): Cut {
  const { length, width } = free;
  const along = piece.turned ? piece.piece.width : piece.piece.length;
  const deep = piece.turned ? piece.piece.length : piece.piece.width;
  const { piece: itself, turned } = piece;
  const own: Cut = { way: 'piece', length: along, width: deep, piece: itself, turned };
  const beside = length - along;
  const above = width - deep;
  if (beside === 0 && above === 0) return own;
  if (above === 0) return { way: 'across', length, width, parts: [own, freeCut(beside, width)] };
  if (beside === 0) return { way: 'along', length, width, parts: [own, freeCut(length, above)] };
  if (across) {
    const column: Cut = {
      way: 'along',
      length: along,
      width,
      parts: [own, freeCut(along, above)],
    };
    return { way: 'across', length, width, parts: [column, freeCut(beside, width)] };
  }
  const row: Cut = { way: 'across', length, width: deep, parts: [own, freeCut(beside, deep)] };
  return { way: 'along', length, width, parts: [row, freeCut(length, above)] };
}

/** The tree with one of its free rectangles cut up. */
export function withCut(node: Cut, free: FreeCut, fresh: Cut): Cut {
  if (node === free) return fresh;
  if (node.way === 'free' || node.way === 'piece') return node;
  const { way, length, width } = node;
  for (let at = 0; at < node.parts.length; at++) {
    const part = node.parts[at];
    if (part === undefined) continue;
    const next = withCut(part, free, fresh);
    if (next === part) continue;
    const parts = node.parts.slice();
    if (next.way === way) {
      parts.splice(at, 1, ...next.parts);
      // What is free lies last.
      const end = parts.findIndex((one) => one.way === 'free');
      if (end >= 0) parts.push(...parts.splice(end, 1));
    } else parts[at] = next;
    return { way, length, width, parts };
  }
  return node;
}

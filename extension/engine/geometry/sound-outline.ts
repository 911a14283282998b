import { signedArea, type Outline, type Point } from './outline.ts';

/** Points nearer than this are one, in mm. */
const sameMm = 1e-3;

/** Lines nearer than this touch, in mm. */
const touchMm = 1e-6;

/** A turn at a point by more than this is a corner: curves turn less from piece to piece. */
const cornerTurn = Math.PI / 12;

/** What stands in the way of a loop being an outline, and where. */
export type LoopFault =
  { readonly kind: 'doubled' | 'crossing'; readonly at: Point } | { readonly kind: 'without-area' };

function isSame(a: Point, b: Point): boolean {
  return Math.hypot(a.x - b.x, a.y - b.y) <= sameMm;
}

function withoutRepeats(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    const last = kept.at(-1);
    if (last === undefined || !isSame(last, point)) kept.push(point);
  }
  const [first, last] = [kept[0], kept.at(-1)];
  if (kept.length > 1 && first !== undefined && last !== undefined && isSame(first, last))
    kept.pop();
  return kept;
}

/** By how much the loop turns at a point, in radians; positive to the left. */
export function turnAt(points: readonly Point[], index: number): number {
  const count = points.length;
  const [a, b, c] = [points.at(index - 1), points[index], points[(index + 1) % count]];
  if (a === undefined || b === undefined || c === undefined) return 0;
  const [inX, inY, outX, outY] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
  return Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY);
}

/** Indices of the points at which a loop turns sharply. */
export function cornersOf(points: readonly Point[]): readonly number[] {
  return points.flatMap((_, index) =>
    Math.abs(turnAt(points, index)) > cornerTurn ? [index] : [],
  );
}

interface Piece {
  readonly index: number;
  readonly a: Point;
  readonly b: Point;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

function piecesOf(points: readonly Point[]): readonly Piece[] {
  return points.flatMap((a, index) => {
    const b = points[(index + 1) % points.length];
    if (b === undefined) return [];
    const [left, right] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
    return [{ index, a, b, left, right, bottom: Math.min(a.y, b.y), top: Math.max(a.y, b.y) }];
  });
}

/** On which side of a piece a point lies; 0 on its line. */
function side({ a, b }: Piece, point: Point): number {
  const cross = (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x);
  const reach = Math.hypot(b.x - a.x, b.y - a.y) * touchMm;
  return Math.abs(cross) <= reach ? 0 : Math.sign(cross);
}

/** How far along a piece a point is, in mm from its start. */
function along({ a, b }: Piece, point: Point): number {
  const run = Math.hypot(b.x - a.x, b.y - a.y);
  return ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / run;
}

function isOn(piece: Piece, point: Point): boolean {
  const at = along(piece, point);
  return at >= -touchMm && at <= Math.hypot(piece.b.x - piece.a.x, piece.b.y - piece.a.y) + touchMm;
}

function meeting(one: Piece, two: Piece): Point {
  const [dx, dy] = [one.b.x - one.a.x, one.b.y - one.a.y];
  const [ex, ey] = [two.b.x - two.a.x, two.b.y - two.a.y];
  const cross = dx * ey - dy * ex;
  if (cross === 0) return two.a;
  const share = ((two.a.x - one.a.x) * ey - (two.a.y - one.a.y) * ex) / cross;
  return { x: one.a.x + share * dx, y: one.a.y + share * dy };
}

/** How two pieces that are not neighbours touch; undefined where they do not. */
function touch(one: Piece, two: Piece): LoopFault | undefined {
  const [c, d] = [side(one, two.a), side(one, two.b)];
  const [a, b] = [side(two, one.a), side(two, one.b)];
  if (c === 0 && d === 0) {
    const [from, to] = [along(one, two.a), along(one, two.b)];
    const end = Math.min(along(one, one.b), Math.max(from, to));
    if (end - Math.max(0, Math.min(from, to)) > touchMm) return { kind: 'doubled', at: two.a };
  }
  if (c * d < 0 && a * b < 0) return { kind: 'crossing', at: meeting(one, two) };
  const ends: readonly (readonly [number, Piece, Point])[] = [
    [c, one, two.a],
    [d, one, two.b],
    [a, two, one.a],
    [b, two, one.b],
  ];
  const on = ends.find(([which, piece, point]) => which === 0 && isOn(piece, point));
  return on === undefined ? undefined : { kind: 'crossing', at: on[2] };
}

/** A piece that runs back over the one before it. */
function foldedBack(points: readonly Point[]): LoopFault | undefined {
  const at = points.find((_, index) => Math.PI - Math.abs(turnAt(points, index)) < 1e-6);
  return at === undefined ? undefined : { kind: 'doubled', at };
}

/** Where a loop crosses or touches itself; undefined where it does not. */
export function crossingOf(points: readonly Point[]): LoopFault | undefined {
  const pieces = piecesOf(points);
  const sorted = [...pieces].sort((a, b) => a.left - b.left || a.index - b.index);
  const isNext = (a: number, b: number): boolean => {
    const gap = Math.abs(a - b);
    return gap <= 1 || gap === pieces.length - 1;
  };
  for (const [place, one] of sorted.entries()) {
    for (let later = place + 1; later < sorted.length; later++) {
      const two = sorted[later];
      if (two === undefined || two.left > one.right + touchMm) break;
      if (two.bottom > one.top + touchMm || two.top < one.bottom - touchMm) continue;
      if (isNext(one.index, two.index)) continue;
      const fault = touch(one, two);
      if (fault !== undefined) return fault;
    }
  }
  return undefined;
}

/** Whether all points lie on one line. */
function isFlat(points: readonly Point[]): boolean {
  return points.every((_, index) => Math.abs(Math.sin(turnAt(points, index))) < 1e-9);
}

/**
 * A loop of points, in mm, as an outline: counter-clockwise, its corners marked; or what is wrong with it.
 */
export function soundOutline(loop: readonly Point[]): Outline | LoopFault {
  const points = withoutRepeats(loop);
  const area = signedArea(points);
  if (points.length < 3) return { kind: 'without-area' };
  const fault = foldedBack(points) ?? crossingOf(points);
  if (fault !== undefined) return isFlat(points) ? { kind: 'without-area' } : fault;
  const turned = area > 0 ? points : [...points].reverse();
  return { points: turned, corners: cornersOf(turned) };
}

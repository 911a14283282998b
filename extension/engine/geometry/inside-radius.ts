import type { Outline, Point } from './outline.ts';
import { isPlain, type Shape } from './shape.ts';
import { shapeOutline } from './shape-outline.ts';
import { turnAt } from './sound-outline.ts';

/** On which side of an outline a cutter runs: round a part, or within an opening. */
export type CutterSide = 'outside' | 'inside';

/** The tightest place that a cutter must get into. */
export interface TightPlace {
  /** Radius in mm; 0 at a sharp corner. */
  readonly radius: number;
  readonly at: Point;
}

/** Curves are looked at over this length either way, in mm. */
const leastMm = 0.25;

/** Turns smaller than this are the noise of straight pieces, in radians. */
const leastTurn = 1e-6;

/**
 * Radius of the circle through three points in a row, in mm.
 *
 * @source geometry: a·b·c over four times the area of the triangle
 */
function circumradius(a: Point, b: Point, c: Point): number {
  const twice = Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  const sides =
    Math.hypot(b.x - a.x, b.y - a.y) *
    Math.hypot(c.x - b.x, c.y - b.y) *
    Math.hypot(a.x - c.x, a.y - c.y);
  return twice === 0 ? Infinity : sides / (2 * twice);
}

/** The next point of a loop that is far enough away to tell a curve from the noise of its pieces. */
function neighbour(points: readonly Point[], index: number, step: 1 | -1): Point | undefined {
  const from = points[index];
  for (let away = 1; away < points.length && from !== undefined; away++) {
    const found = points.at((index + step * away) % points.length);
    if (found !== undefined && Math.hypot(found.x - from.x, found.y - from.y) >= leastMm)
      return found;
  }
  return undefined;
}

function radiusAt({ points }: Outline, index: number): number {
  const [a, b, c] = [neighbour(points, index, -1), points[index], neighbour(points, index, 1)];
  return a === undefined || b === undefined || c === undefined ? Infinity : circumradius(a, b, c);
}

/**
 * The tightest inside radius that a cutter or its bearing meets along an outline, and where; undefined
 * where it meets none. A bearing of a larger radius does not reach into it and leaves it rounded.
 *
 * @source geometry: a tool of radius r follows no hollow of a smaller radius
 */
export function tightestInsideRadius(
  outline: Outline,
  side: CutterSide = 'outside',
): TightPlace | undefined {
  const corners = new Set(outline.corners);
  let tightest: TightPlace | undefined;
  for (const [index, at] of outline.points.entries()) {
    // The outline runs counter-clockwise, so it turns to the right in the hollows of a part.
    const turn = turnAt(outline.points, index) * (side === 'outside' ? -1 : 1);
    if (turn <= leastTurn) continue;
    const radius = corners.has(index) ? 0 : radiusAt(outline, index);
    if (tightest === undefined || radius < tightest.radius) tightest = { radius, at };
  }
  return tightest;
}

/** The tightest inside radius of a shape, exact for plain ones; as for an outline. */
export function shapeInsideRadius(shape: Shape, side: CutterSide): TightPlace | undefined {
  if (isPlain(shape) && side === 'outside') return undefined;
  if (shape.kind === 'circle') {
    return { radius: shape.diameter / 2, at: { x: shape.diameter / 2, y: 0 } };
  }
  if (shape.kind !== 'roundrect' || shape.radius === 0) {
    return tightestInsideRadius(shapeOutline(shape), side);
  }
  const { length, width, radius } = shape;
  return { radius, at: { x: length / 2, y: width / 2 } };
}

import type { Outline, Point } from './outline.ts';
import { isPlain, shapeLength, shapeWidth, type PlainShape, type Shape } from './shape.ts';

/** Points of a quarter ellipse about a centre, from `from` quarter turns on, without its last point. */
function quarter(
  centre: Point,
  half: { readonly x: number; readonly y: number },
  from: number,
  pieces: number,
): readonly Point[] {
  return Array.from({ length: pieces }, (_, index) => {
    const angle = (from + index / pieces) * (Math.PI / 2);
    return { x: centre.x + half.x * Math.cos(angle), y: centre.y + half.y * Math.sin(angle) };
  });
}

/** How many straight pieces a quarter turn of this radius takes, so that none is further off than `tolerance`. */
function piecesOfQuarter(radius: number, tolerance: number): number {
  if (radius <= tolerance) return 1;
  return Math.max(4, Math.ceil(Math.PI / 2 / (2 * Math.acos(1 - tolerance / radius))));
}

/** Outlines drawn last: an edit asks for those of the same rings and mouths again. */
const drawn = new Map<string, Outline>();
const mostDrawn = 200;
/** One of more points is of no ring of a car, and is not kept. */
const mostPoints = 4000;

/**
 * Outline of a shape in mm: of a plain one about its own middle, of a free one about its own zero, as
 * it was drawn. Straight pieces of a plain one stray at most `tolerance` mm from it (of an oval: from
 * the circle over its longer axis).
 */
export function shapeOutline(shape: Shape, tolerance = 0.01): Outline {
  if (!isPlain(shape)) return shape.outline;
  const radius = shape.kind === 'roundrect' ? shape.radius : 0;
  const size = `${String(shapeLength(shape))} ${String(shapeWidth(shape))} ${String(radius)}`;
  const key = `${shape.kind} ${size} ${String(tolerance)}`;
  const known = drawn.get(key);
  if (known !== undefined) return known;
  const outline = plainOutline(shape, tolerance);
  if (outline.points.length > mostPoints) return outline;
  if (drawn.size >= mostDrawn) drawn.clear();
  drawn.set(key, outline);
  return outline;
}

function plainOutline(shape: PlainShape, tolerance: number): Outline {
  const half = { x: shapeLength(shape) / 2, y: shapeWidth(shape) / 2 };
  if (shape.kind === 'circle' || shape.kind === 'oval') {
    const pieces = piecesOfQuarter(Math.max(half.x, half.y), tolerance);
    const points = [0, 1, 2, 3].flatMap((from) => quarter({ x: 0, y: 0 }, half, from, pieces));
    return { points, corners: [] };
  }
  const radius = shape.kind === 'roundrect' ? shape.radius : 0;
  const centres: readonly Point[] = [
    { x: half.x - radius, y: half.y - radius },
    { x: radius - half.x, y: half.y - radius },
    { x: radius - half.x, y: radius - half.y },
    { x: half.x - radius, y: radius - half.y },
  ];
  if (radius === 0) return { points: centres, corners: [0, 1, 2, 3] };
  const pieces = piecesOfQuarter(radius, tolerance);
  const round = { x: radius, y: radius };
  const points = centres.flatMap((centre, from) => [
    ...quarter(centre, round, from, pieces),
    ...quarter(centre, round, from + 1, 1),
  ]);
  return { points: withoutRepeats(points), corners: [] };
}

/** Where a straight side has no length, its two ends are one point. */
function withoutRepeats(points: readonly Point[]): readonly Point[] {
  return points.filter((point, index) => {
    const next = points[(index + 1) % points.length];
    return next === undefined || Math.hypot(next.x - point.x, next.y - point.y) > 1e-9;
  });
}

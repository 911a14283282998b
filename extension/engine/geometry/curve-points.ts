import type { Point } from './outline.ts';

/** A curve by its parameter, between two values of it. */
export interface Curve {
  readonly at: (parameter: number) => Point;
  readonly from: number;
  readonly to: number;
}

/** Curves are looked at in so many pieces at least, so that no wave of one is missed. */
const firstPieces = 8;

/** A piece is halved at most so often. */
const mostHalvings = 12;

function distanceToLine(point: Point, from: Point, to: Point): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const run = Math.hypot(dx, dy);
  if (run === 0) return Math.hypot(point.x - from.x, point.y - from.y);
  return Math.abs((point.x - from.x) * dy - (point.y - from.y) * dx) / run;
}

/**
 * Points of a curve after its first, its last among them: straight pieces between them stray at most
 * `tolerance` from it, in the unit of the curve.
 */
export function curvePoints({ at, from, to }: Curve, tolerance: number): readonly Point[] {
  const points: Point[] = [];
  function add(start: number, end: number, halvings: number): void {
    const [a, b] = [at(start), at(end)];
    const strays = [0.25, 0.5, 0.75].some(
      (share) => distanceToLine(at(start + (end - start) * share), a, b) > tolerance,
    );
    if (!strays || halvings === 0) {
      points.push(b);
      return;
    }
    const middle = (start + end) / 2;
    add(start, middle, halvings - 1);
    add(middle, end, halvings - 1);
  }
  for (let piece = 0; piece < firstPieces; piece++) {
    const step = (to - from) / firstPieces;
    const end = piece === firstPieces - 1 ? to : from + step * (piece + 1);
    add(from + step * piece, end, mostHalvings);
  }
  return points;
}

/** A curve of Bézier through its two ends and drawn by its two handles. */
export function cubic(a: Point, b: Point, c: Point, d: Point): Curve {
  const along = (t: number, key: 'x' | 'y'): number => {
    const rest = 1 - t;
    return (
      rest ** 3 * a[key] +
      3 * rest * rest * t * b[key] +
      3 * rest * t * t * c[key] +
      t ** 3 * d[key]
    );
  };
  return { at: (t) => ({ x: along(t, 'x'), y: along(t, 'y') }), from: 0, to: 1 };
}

/**
 * An arc of an ellipse: `long` and `short` are its half axes as vectors; the angle, in radians, runs
 * from the first to the second.
 */
export function ellipseArc(
  centre: Point,
  axes: { readonly long: Point; readonly short: Point },
  turn: { readonly from: number; readonly to: number },
): Curve {
  const { long, short } = axes;
  return {
    at: (angle) => ({
      x: centre.x + long.x * Math.cos(angle) + short.x * Math.sin(angle),
      y: centre.y + long.y * Math.cos(angle) + short.y * Math.sin(angle),
    }),
    ...turn,
  };
}

/** An arc of a circle; `turn` as for an ellipse. */
export function circleArc(
  centre: Point,
  radius: number,
  turn: { readonly from: number; readonly to: number },
): Curve {
  return ellipseArc(centre, { long: { x: radius, y: 0 }, short: { x: 0, y: radius } }, turn);
}

import { failed, ok, type Result } from '../result.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { cubic, curvePoints, type Curve } from './curve-points.ts';
import type { Outline, Point } from './outline.ts';
import { faultProblem } from './outline-in-drawing.ts';
import type { TracePoint } from './read-trace.ts';
import { soundOutline } from './sound-outline.ts';

/** From the point before to this one: straight, or as a curve of Bézier with two handles. */
export interface TracePiece {
  readonly to: Point;
  readonly handles?: readonly [Point, Point];
}

/** An outline from measured points: the way it is drawn, and as an outline. */
export interface Trace {
  readonly start: Point;
  readonly pieces: readonly TracePiece[];
  readonly outline: Outline;
}

/** Curves of a trace become straight pieces that stray at most this far, in mm. */
const strayMm = 0.01;

function mixed(...parts: readonly (readonly [number, Point])[]): Point {
  const sum = (key: 'x' | 'y'): number =>
    parts.reduce((total, [share, point]) => total + share * point[key], 0);
  return { x: sum('x'), y: sum('y') };
}

/** Root of a distance: what centripetal curves count their parameter by. */
function rootApart(a: Point, b: Point): number {
  return Math.sqrt(Math.hypot(a.x - b.x, a.y - b.y));
}

/**
 * The handle after a point, towards the next, so that the curve leaves as it came from the one before.
 *
 * @source Yuksel, Schaefer and Keyser, "Parameterization and applications of Catmull-Rom curves" (the
 *   centripetal curve, which makes no loops and no cusps, as curves of Bézier)
 */
function handleAfter(before: Point | undefined, from: Point, to: Point): Point {
  if (before === undefined) return mixed([2 / 3, from], [1 / 3, to]);
  const [a, b] = [rootApart(before, from), rootApart(from, to)];
  const whole = 3 * a * (a + b);
  return mixed(
    [(a * a) / whole, to],
    [(-b * b) / whole, before],
    [(2 * a * a + 3 * a * b + b * b) / whole, from],
  );
}

function smoothPieces(points: readonly TracePoint[]): readonly TracePiece[] {
  const at = (index: number): TracePoint | undefined => points.at(index % points.length);
  return points.flatMap((from, index): readonly TracePiece[] => {
    const [to, after] = [at(index + 1), at(index + 2)];
    if (to === undefined || after === undefined) return [];
    // At a corner the curve does not know what lies beyond it.
    const before = from.corner ? undefined : points.at(index - 1);
    if (from.corner && to.corner) return [{ to }];
    const beyond = to.corner ? undefined : after;
    return [{ to, handles: [handleAfter(before, from, to), handleAfter(beyond, to, from)] }];
  });
}

function curveOf(from: Point, { to, handles }: TracePiece): Curve | undefined {
  return handles && cubic(from, handles[0], handles[1], to);
}

/**
 * The outline through measured points: with corners at each of them, or smooth through all but those
 * that are corners; or what is wrong with it and where.
 */
export function tracedThrough(
  points: readonly TracePoint[],
  smooth: boolean,
  settings: UnitSettings,
): Result<Trace> {
  const [start] = points;
  const straight = points.slice(1).map((to): TracePiece => ({ to }));
  const pieces = smooth
    ? smoothPieces(points)
    : [...straight, ...(start === undefined ? [] : [{ to: start }])];
  let from = start ?? { x: 0, y: 0 };
  const line: Point[] = [];
  for (const piece of pieces) {
    const curve = curveOf(from, piece);
    line.push(...(curve === undefined ? [piece.to] : curvePoints(curve, strayMm)));
    from = piece.to;
  }
  const outline = soundOutline(line);
  if ('kind' in outline) return failed(faultProblem(outline, 'The outline', settings));
  return ok({ start: start ?? { x: 0, y: 0 }, pieces, outline });
}

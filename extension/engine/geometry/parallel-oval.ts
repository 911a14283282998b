import { curvePoints, type Curve } from './curve-points.ts';
import { ellipsePerimeter, ellipseTightestRadius } from './ellipse.ts';
import type { Point } from './outline.ts';
import { soundOutline } from './sound-outline.ts';
import { traced, type TracedOutline } from './traced-outline.ts';

/** Straight pieces stray at most this far from the true curve, in mm. */
const strayMm = 1e-3;

/** The upper half of the true curve at a distance along the normals of an ellipse. */
function upperHalf(halfLength: number, halfWidth: number, distance: number): Curve {
  return {
    from: 0,
    to: Math.PI,
    at: (angle) => {
      const [x, y] = [halfLength * Math.cos(angle), halfWidth * Math.sin(angle)];
      const normal = { x: x / (halfLength * halfLength), y: y / (halfWidth * halfWidth) };
      const share = distance / Math.hypot(normal.x, normal.y);
      return { x: x + normal.x * share, y: y + normal.y * share };
    },
  };
}

/** Where the line from one point to the next comes to the longer axis. */
function onAxis(above: Point, below: Point): Point {
  const share = above.y / (above.y - below.y);
  return { x: above.x + (below.x - above.x) * share, y: 0 };
}

/**
 * Points of the upper half, from its right end to its left on the axis. Inside an oval, at more than
 * its tightest radius, the curve runs over itself there, and what lies below the axis is cut off.
 */
function halfPoints(curve: Curve): readonly Point[] {
  const points = [curve.at(curve.from), ...curvePoints(curve, strayMm)];
  const first = points.findIndex(({ y }) => y > strayMm);
  const last = points.findLastIndex(({ y }) => y > strayMm);
  const [before, start] = [points[first - 1], points[first]];
  const [end, after] = [points[last], points[last + 1]];
  if (before === undefined || start === undefined || end === undefined || after === undefined) {
    return [];
  }
  return [onAxis(start, before), ...points.slice(first, last + 1), onAxis(end, after)];
}

/**
 * The outline at a distance outside an oval (inside it where the distance is negative), in mm. Its
 * measures are exact while it does not run over itself.
 *
 * @source Steiner's formula for parallel curves: area + perimeter × d + π d²
 * @returns undefined where nothing is left
 */
export function parallelOval(
  length: number,
  width: number,
  distance: number,
): TracedOutline | undefined {
  const [long, short] = [Math.max(length, width) / 2, Math.min(length, width) / 2];
  if (distance <= -short) return undefined;
  const half = halfPoints(upperHalf(long, short, distance));
  const lower = half.slice(1, -1).map(({ x, y }) => ({ x: -x, y: -y }));
  const turned = [...half, ...lower].map(({ x, y }) =>
    length >= width ? { x, y } : { x: -y, y: x },
  );
  const sound = soundOutline(turned);
  if ('kind' in sound) return undefined;
  if (distance < -ellipseTightestRadius(long, short)) return traced(sound);
  const perimeter = ellipsePerimeter(long, short);
  return traced(sound, {
    area: Math.PI * long * short + perimeter * distance + Math.PI * distance * distance,
    perimeter: perimeter + 2 * Math.PI * distance,
  });
}

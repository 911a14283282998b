import type { Curve } from './curve-points.ts';
import type { Group } from './dxf-groups.ts';

/** A control point with its weight, multiplied in: x·w, y·w, w. */
type Weighted = readonly [number, number, number];

interface Spline {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly points: readonly Weighted[];
}

function splineOf(groups: readonly Group[]): Spline | undefined {
  const all = (code: number): number[] =>
    groups.filter((group) => group.code === code).map(({ value }) => Number(value));
  const [xs, ys, weights, knots] = [all(10), all(20), all(41), all(40)];
  const degree = all(71)[0] ?? 3;
  const points = xs.map((x, index): Weighted => {
    const weight = weights.length === xs.length ? (weights[index] ?? 1) : 1;
    return [x * weight, (ys[index] ?? 0) * weight, weight];
  });
  const fits = points.length > degree && knots.length === points.length + degree + 1;
  return degree >= 1 && fits ? { degree, knots, points } : undefined;
}

/**
 * The point of a spline at a parameter within one of its spans.
 *
 * @source de Boor's algorithm on weighted points (rational B-splines)
 */
function pointOn({ degree, knots, points }: Spline, span: number, at: number): Weighted {
  let row = points.slice(span - degree, span + 1);
  for (let level = 1; level <= degree; level++) {
    row = row.slice(1).map((point, index): Weighted => {
      const first = span - degree + level + index;
      const low = knots[first] ?? 0;
      const width = (knots[first + degree + 1 - level] ?? 0) - low;
      const share = width === 0 ? 0 : (at - low) / width;
      const before = row[index] ?? point;
      const mix = (key: 0 | 1 | 2): number => before[key] * (1 - share) + point[key] * share;
      return [mix(0), mix(1), mix(2)];
    });
  }
  return row[0] ?? [0, 0, 1];
}

/** The curves of a SPLINE between its knots; none where it tells only points that it passes through. */
export function splineSpans(groups: readonly Group[]): readonly Curve[] {
  const spline = splineOf(groups);
  if (spline === undefined) return [];
  const { degree, knots, points } = spline;
  const curves: Curve[] = [];
  for (let span = degree; span < points.length; span++) {
    const [from = 0, to = 0] = [knots[span], knots[span + 1]];
    if (!(to > from)) continue;
    const at = (parameter: number): { x: number; y: number } => {
      const [x, y, weight] = pointOn(spline, span, parameter);
      return { x: x / weight, y: y / weight };
    };
    curves.push({ at, from, to });
  }
  return curves;
}

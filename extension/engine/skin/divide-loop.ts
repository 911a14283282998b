import type { Outline, Point } from '../geometry/outline.ts';

/** A loop divided anew, with the index each new point's own loop had it at: for heights along with it. */
export interface DividedLoop {
  readonly points: readonly Point[];
  /** For each point: between which old points it lies, and how far. */
  readonly places: readonly {
    readonly from: number;
    readonly to: number;
    readonly share: number;
  }[];
}

function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

/** Length from old point `from` to each of the `count` points after it. */
function lengthsAlong(points: readonly Point[], from: number, count: number): readonly number[] {
  const lengths: number[] = [0];
  for (let step = 0; step < count; step++) {
    const a = points[(from + step) % points.length];
    const b = points[(from + step + 1) % points.length];
    lengths.push((lengths[step] ?? 0) + (a && b ? distance(a, b) : 0));
  }
  return lengths;
}

/** Places at equal steps along the stretch that begins at old point `from` and has `count` pieces. */
function divideStretch(
  points: readonly Point[],
  from: number,
  count: number,
  wanted: (length: number) => number,
): DividedLoop['places'] {
  const around = (index: number): number => index % points.length;
  const lengths = lengthsAlong(points, from, count);
  const whole = lengths[count] ?? 0;
  const pieces = Math.max(1, wanted(whole));
  const places: DividedLoop['places'][number][] = [];
  let at = 0;
  for (let piece = 0; piece < pieces; piece++) {
    const along = (whole * piece) / pieces;
    while (at < count - 1 && (lengths[at + 1] ?? 0) <= along) at += 1;
    const [start, end] = [lengths[at] ?? 0, lengths[at + 1] ?? 0];
    places.push({
      from: around(from + at),
      to: around(from + at + 1),
      share: end > start ? (along - start) / (end - start) : 0,
    });
  }
  return places;
}

/**
 * Divides a loop into pieces of about equal length, in mm; corners stay points of it.
 *
 * @param least pieces of the whole loop at least, so that a small one keeps its roundness
 */
export function divideLoop(loop: Outline, size: number, least: number): DividedLoop {
  const { points } = loop;
  const starts = loop.corners.length > 0 ? loop.corners : [0];
  const whole = points.reduce((sum, point, index) => {
    const next = points[(index + 1) % points.length];
    return sum + (next === undefined ? 0 : distance(point, next));
  }, 0);
  const step = Math.min(size, whole / least);
  const wanted = (length: number): number => Math.round(length / step);
  const places = starts.flatMap((start, index) => {
    const next = starts[index + 1] ?? (starts[0] ?? 0) + points.length;
    return divideStretch(points, start, next - start, wanted);
  });
  return { places, points: places.map((place) => between(points, place)) };
}

function between(points: readonly Point[], place: DividedLoop['places'][number]): Point {
  const [a, b] = [points[place.from], points[place.to]];
  if (a === undefined || b === undefined) return { x: 0, y: 0 };
  return { x: a.x + place.share * (b.x - a.x), y: a.y + place.share * (b.y - a.y) };
}

/** Values that belong to a loop's old points, at its new ones. */
export function valuesAlong(values: readonly number[], divided: DividedLoop): readonly number[] {
  return divided.places.map(({ from, to, share }) => {
    const [a, b] = [values[from] ?? 0, values[to] ?? 0];
    return a + share * (b - a);
  });
}

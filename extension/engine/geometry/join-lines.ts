import type { Point } from './outline.ts';

/** A line as points, open or closed. */
export interface PointLine {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** What is wrong with lines that should be loops, and where. */
export type JoinFault =
  | { readonly kind: 'open'; readonly from: Point; readonly to: Point; readonly gap: number }
  | { readonly kind: 'branches'; readonly at: Point }
  | { readonly kind: 'doubled'; readonly at: Point };

/** Ends nearer to each other than this are one point, in mm: finer than any saw. */
export const joinMm = 0.05;

function apart(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

function meets(a: Point, b: Point): boolean {
  return apart(a, b) <= joinMm;
}

function firstOf(points: readonly Point[]): Point {
  return points[0] ?? { x: 0, y: 0 };
}

function lastOf(points: readonly Point[]): Point {
  return points.at(-1) ?? { x: 0, y: 0 };
}

function isLoop({ points, closed }: PointLine): boolean {
  return closed || (points.length > 2 && meets(firstOf(points), lastOf(points)));
}

/** The point half-way along a line, counted in points: the same from either end. */
function middleOf(points: readonly Point[]): Point {
  const half = (points.length - 1) / 2;
  const [a, b] = [points[Math.floor(half)], points[Math.ceil(half)]];
  const [one, two] = [a ?? firstOf(points), b ?? firstOf(points)];
  return { x: (one.x + two.x) / 2, y: (one.y + two.y) / 2 };
}

/** Whether two lines run between the same ends through the same middle. */
function isSameLine(a: readonly Point[], b: readonly Point[]): boolean {
  const [from, to, first, last] = [firstOf(a), lastOf(a), firstOf(b), lastOf(b)];
  const ends = (meets(from, first) && meets(to, last)) || (meets(from, last) && meets(to, first));
  return ends && meets(middleOf(a), middleOf(b));
}

/** The end of another line that is nearest to a point: the other side of a gap. */
function acrossGap(from: Point, start: Point, rest: readonly PointLine[]): Point {
  const ends = rest.flatMap(({ points }) => [firstOf(points), lastOf(points)]);
  return ends.reduce((best, end) => (apart(end, from) < apart(best, from) ? end : best), start);
}

/** Follows the lines from the first of them until they come home, taking them out of the rest. */
function chained(first: PointLine, rest: PointLine[]): readonly Point[] | JoinFault {
  const points = [...first.points];
  let before = first;
  for (;;) {
    const [start, end] = [firstOf(points), lastOf(points)];
    const here = rest.filter(
      (line) => meets(firstOf(line.points), end) || meets(lastOf(line.points), end),
    );
    const isHome = points.length > 2 && meets(start, end);
    if (here.length > (isHome ? 0 : 1)) {
      const lines = [before, first, ...here];
      const twin = lines.some((one, index) =>
        lines.slice(index + 1).some((two) => one !== two && isSameLine(one.points, two.points)),
      );
      return { kind: twin ? 'doubled' : 'branches', at: end };
    }
    if (isHome) return points;
    const [next] = here;
    if (next === undefined) {
      const to = acrossGap(end, start, rest);
      return { kind: 'open', from: end, to, gap: apart(end, to) };
    }
    if (isSameLine(before.points, next.points)) return { kind: 'doubled', at: end };
    rest.splice(rest.indexOf(next), 1);
    before = next;
    const forward = meets(firstOf(next.points), end);
    points.push(...(forward ? next.points : [...next.points].reverse()).slice(1));
  }
}

/** Joins lines, in mm, whose ends meet, to loops; or says where they do not. */
export function joinedLoops(
  lines: readonly PointLine[],
): readonly (readonly Point[])[] | JoinFault {
  const loops = lines.filter(isLoop).map(({ points }) => points);
  const rest = lines.filter((line) => !isLoop(line));
  for (let first = rest.shift(); first !== undefined; first = rest.shift()) {
    const points = chained(first, rest);
    if ('kind' in points) return points;
    loops.push(points);
  }
  return loops;
}

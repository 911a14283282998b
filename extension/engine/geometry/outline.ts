/** A point of a plane, in mm: x to the right (rearward on a panel), y up. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * A closed loop in mm, counter-clockwise, drawn as short straight pieces; its last point joins the
 * first, which is not repeated.
 */
export interface Outline {
  readonly points: readonly Point[];
  /** Indices of the points at which it turns sharply: they stay whenever the loop is divided anew. */
  readonly corners: readonly number[];
}

/** A box along the axes, in mm. */
export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** The pieces of a loop as pairs of neighbours. */
function pairs(points: readonly Point[]): readonly (readonly [Point, Point])[] {
  return points.flatMap((from, index) => {
    const to = points[(index + 1) % points.length];
    return to === undefined ? [] : [[from, to] as const];
  });
}

/** Area inside a loop, in mm²; negative where it runs clockwise. */
export function signedArea(points: readonly Point[]): number {
  return pairs(points).reduce((sum, [a, b]) => sum + (a.x * b.y - b.x * a.y) / 2, 0);
}

/** Length of a loop, in mm. */
export function loopLength(points: readonly Point[]): number {
  return pairs(points).reduce((sum, [a, b]) => sum + Math.hypot(b.x - a.x, b.y - a.y), 0);
}

/** The smallest box around points; a box without size at the origin where there are none. */
export function boxAround(points: readonly Point[]): Box {
  const first = points[0];
  if (first === undefined) return { left: 0, bottom: 0, right: 0, top: 0 };
  let { x: left, y: bottom } = first;
  let [right, top] = [left, bottom];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, bottom, right, top };
}

/** Whether a point lies inside a loop (on its edge: either). */
export function inside(point: Point, points: readonly Point[]): boolean {
  let within = false;
  // Asked of every point of a mesh: no list of pairs is made for it.
  let a = points.at(-1);
  for (const b of points) {
    if (a !== undefined && a.y > point.y !== b.y > point.y) {
      if (point.x < a.x + ((point.y - a.y) / (b.y - a.y)) * (b.x - a.x)) within = !within;
    }
    a = b;
  }
  return within;
}

/** The loop as its mirror image about the upright axis, counter-clockwise again: the other hand's. */
export function mirrored({ points, corners }: Outline): Outline {
  const last = points.length - 1;
  return {
    points: points.map(({ x, y }) => ({ x: -x, y })).reverse(),
    corners: corners.map((index) => last - index).sort((a, b) => a - b),
  };
}

import type { Outline, Point } from '../geometry/outline.ts';
import { shapeOutline } from '../geometry/shape-outline.ts';
import { shapeLength, shapeWidth, type PlainShape } from '../geometry/shape.ts';
import type { PlacedRing } from './panel.ts';

/** A point of space in the panel's frame, in mm: x to the rear, y up, z out of the panel. */
export interface SpacePoint extends Point {
  readonly z: number;
}

/** A closed loop in space whose plan is an outline; `heights[i]` belongs to point i. */
export interface SpaceLoop extends Outline {
  readonly heights: readonly number[];
}

/**
 * How much longer the plan of a ring's lip is along its lean than the shape it is made of.
 *
 * @source geometry: a flat lip that leans is foreshortened; a tube's cut keeps the tube's plan
 */
function lipLength({ build, tilt }: PlacedRing): number {
  return build === 'round_tube' ? 1 : Math.cos(tilt);
}

/** A point given along and across the lean of a ring, in the panel's plan. */
export function fromLean(ring: PlacedRing, along: number, across: number): Point {
  const [x, y] = [Math.cos(ring.lean), Math.sin(ring.lean)];
  return {
    x: ring.centre.x + along * x - across * y,
    y: ring.centre.y + along * y + across * x,
  };
}

/** How far a point of the plan lies from a ring's centre along and across its lean, in mm. */
export function alongLean(ring: PlacedRing, point: Point): { along: number; across: number } {
  const [x, y] = [Math.cos(ring.lean), Math.sin(ring.lean)];
  const [dx, dy] = [point.x - ring.centre.x, point.y - ring.centre.y];
  return { along: dx * x + dy * y, across: dy * x - dx * y };
}

/**
 * Height of the plane of a ring's lip over a point of the plan, above the base plane, in mm.
 *
 * @source geometry: the plane falls towards the low side by the tangent of the tilt
 */
export function lipHeight(ring: PlacedRing, point: Point): number {
  return ring.depth - Math.tan(ring.tilt) * alongLean(ring, point).along;
}

/** The shape inside a ring's wall: what is left of it `wall` further in; undefined where nothing is. */
export function insideWall(shape: PlainShape, wall: number): PlainShape | undefined {
  const [length, width] = [shapeLength(shape) - 2 * wall, shapeWidth(shape) - 2 * wall];
  if (length <= 0 || width <= 0) return undefined;
  switch (shape.kind) {
    case 'circle':
      return { kind: 'circle', diameter: length };
    case 'roundrect':
      return { kind: 'roundrect', length, width, radius: Math.max(0, shape.radius - wall) };
    case 'oval':
    case 'rect':
      return { kind: shape.kind, length, width };
    default:
      return undefined;
  }
}

function loopOf(ring: PlacedRing, shape: PlainShape, tolerance: number): SpaceLoop {
  const { points, corners } = shapeOutline(shape, tolerance);
  const along = lipLength(ring);
  const placed = points.map(({ x, y }) => fromLean(ring, x * along, y));
  return { points: placed, corners, heights: placed.map((point) => lipHeight(ring, point)) };
}

/**
 * The lip of a ring: the edge over which the cloth bends, seen in plan, with its heights.
 *
 * @source geometry of the three builds; see `RingBuild`
 */
export function lipLoop(ring: PlacedRing, tolerance = 0.01): SpaceLoop {
  return loopOf(ring, ring.shape, tolerance);
}

/** The inner edge of a ring's lip: the mouth that its baffle fills; undefined where there is none. */
export function mouthLoop(ring: PlacedRing, tolerance = 0.01): SpaceLoop | undefined {
  const shape = insideWall(ring.shape, ring.wall);
  return shape === undefined ? undefined : loopOf(ring, shape, tolerance);
}

/**
 * Where the wall of a ring stands on the base, whose front is `thickness` above the base plane. An
 * upright wall stands under its lip; one that is square to the lip comes out further on the high side.
 *
 * @source geometry
 */
export function footLoop(ring: PlacedRing, thickness: number, tolerance = 0.01): Outline {
  if (ring.build !== 'square_wall') return lipLoop(ring, tolerance);
  const { points, corners } = shapeOutline(ring.shape, tolerance);
  const shift = (ring.depth - thickness) * Math.tan(ring.tilt);
  const along = 1 / Math.cos(ring.tilt);
  return { points: points.map(({ x, y }) => fromLean(ring, x * along - shift, y)), corners };
}

/** A place on a ring's developed strip, in mm along it and of its height. */
export interface StripStation {
  readonly along: number;
  readonly height: number;
}

/**
 * A shape's outline begun where a ray from its middle, in a ring's plan, leaves it; at the high side where
 * no direction is given.
 */
function begunAt(ring: PlacedRing, points: readonly Point[], seam?: number): readonly Point[] {
  if (seam === undefined) {
    const highest = points.reduce((least, { x }) => Math.min(least, x), Infinity);
    const start = points.findIndex(({ x }) => x === highest);
    return [...points.slice(start), ...points.slice(0, start)];
  }
  const [rayX, rayY] = [Math.cos(seam - ring.lean) / lipLength(ring), Math.sin(seam - ring.lean)];
  const beside = ({ x, y }: Point): number => rayX * y - rayY * x;
  for (let at = 0; at < points.length; at++) {
    const [from, to] = [points[at], points[(at + 1) % points.length]];
    if (from === undefined || to === undefined) break;
    const [before, after] = [beside(from), beside(to)];
    const isAhead = rayX * from.x + rayY * from.y > 0;
    if (before > 0 || after <= 0 || !isAhead) continue;
    const share = before / (before - after);
    const place = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
    const rest = [...points.slice(at + 1), ...points.slice(0, at + 1)];
    return share === 0 ? [from, ...rest.slice(0, -1)] : [place, ...rest];
  }
  return points;
}

/**
 * Where the seam of a ring's strip stands on its lip, along and across its lean from its centre, in mm.
 *
 * @param seam direction in the panel's plan, counter-clockwise from the rear; the high side where it is
 *   left out
 * @source geometry
 */
export function seamOnLip(ring: PlacedRing, seam?: number): { along: number; across: number } {
  if (seam === undefined)
    return { along: (-lipLength(ring) * shapeLength(ring.shape)) / 2, across: 0 };
  const [place = { x: 0, y: 0 }] = begunAt(ring, shapeOutline(ring.shape, 0.005).points, seam);
  return { along: place.x * lipLength(ring), across: place.y };
}

/**
 * Whether the wall of a ring that is no round or oval one bends where a seam would stand.
 *
 * @param seam direction in the panel's plan, counter-clockwise from the rear
 * @source geometry
 */
export function isInCorner(ring: PlacedRing, seam: number): boolean {
  const { shape } = ring;
  if (shape.kind !== 'rect' && shape.kind !== 'roundrect') return false;
  const [place = { x: 0, y: 0 }] = begunAt(ring, shapeOutline(shape, 0.005).points, seam);
  const radius = shape.kind === 'rect' ? 0 : shape.radius;
  const near = 1e-6;
  return (
    Math.abs(place.x) > shape.length / 2 - radius - near &&
    Math.abs(place.y) > shape.width / 2 - radius - near
  );
}

/** Heights of a ring's strip at equal steps round it, and how long it is; all in mm. */
export interface StripEdge {
  readonly round: number;
  readonly heights: Float64Array;
}

/**
 * Height of a ring's strip above the base at equal steps along it, from the seam round to the seam again. The
 * strip is laid flat at its outside.
 *
 * For a round tube the top edge is a sine over the girth; a round baffle's wall follows its oval foot.
 * A wall that is square to the lip is as long as the lip and as high as its own slant.
 *
 * @param stations how many equal steps round the lip
 * @param seam where the strip meets itself: direction in the panel's plan, counter-clockwise from the
 *   rear; the high side where it is left out
 * @source geometry (the cut tube as in Apostol and Mnatsakanian, "Unwrapping Curves from Cylinders and
 *   Cones", American Mathematical Monthly 114)
 */
export function stripEdge(
  ring: PlacedRing,
  thickness: number,
  stations: number,
  seam?: number,
): StripEdge {
  const points = begunAt(ring, shapeOutline(ring.shape, 0.005).points, seam);
  const foot = ring.build === 'round_baffle' ? Math.cos(ring.tilt) : 1;
  const fall = ring.build === 'round_baffle' ? Math.sin(ring.tilt) : Math.tan(ring.tilt);
  const middle =
    (ring.depth - thickness) / (ring.build === 'square_wall' ? Math.cos(ring.tilt) : 1);
  // Numbers in rows: an edit of a ring walks round it, and hundreds of small objects would be in its way.
  const [walked, heights] = [
    new Float64Array(points.length + 1),
    new Float64Array(points.length + 1),
  ];
  let along = 0;
  let before = points.at(-1);
  for (let step = 0; step <= points.length; step++) {
    const here = points[step % points.length];
    if (here === undefined || before === undefined) break;
    const dx = here.x * foot - before.x * foot;
    const dy = here.y - before.y;
    if (step > 0) along += Math.sqrt(dx * dx + dy * dy);
    walked[step] = along;
    heights[step] = middle - here.x * fall;
    before = here;
  }
  return { round: along, heights: evenly(walked, heights, stations) };
}

/** Walked heights at equal steps of length. */
function evenly(walked: Float64Array, heights: Float64Array, stations: number): Float64Array {
  const whole = walked.at(-1) ?? 0;
  const even = new Float64Array(stations + 1);
  let at = 1;
  for (let index = 0; index <= stations; index++) {
    const along = (whole * index) / stations;
    while (at < walked.length - 1 && (walked[at] ?? 0) < along) at += 1;
    const from = walked[at - 1] ?? 0;
    const to = walked[at] ?? from;
    const low = heights[at - 1] ?? 0;
    const high = heights[at] ?? low;
    even[index] = low + (to === from ? 0 : (along - from) / (to - from)) * (high - low);
  }
  return even;
}

/** The same as places along it. */
export function stripStations(
  ring: PlacedRing,
  thickness: number,
  stations: number,
  seam?: number,
): readonly StripStation[] {
  const { round, heights } = stripEdge(ring, thickness, stations, seam);
  return Array.from(heights, (height, step) => ({ along: (round * step) / stations, height }));
}

/**
 * Middle of the opening that a leaning driver needs in the base. Its axis runs back along the ring's
 * own axis, so it passes the base's front and its deepest point at two places towards the high side;
 * the opening lies midway between them. Without tilt it is the ring's centre.
 *
 * @param thickness height of the base's front above the base plane, in mm
 * @param reach depth of the driver below its seat, in mm
 * @source geometry
 */
export function cutoutCentre(ring: PlacedRing, thickness: number, reach: number): Point {
  const front = (ring.depth - thickness) * Math.tan(ring.tilt);
  const deepest = Math.max(front, reach * Math.sin(ring.tilt));
  return fromLean(ring, -(front + deepest) / 2, 0);
}

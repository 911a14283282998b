import Constrainautor from '@kninnug/constrainautor';
import Delaunator from 'delaunator';
import { nearestSquared, piecesOf } from './nearest.ts';
import { add, real, whole } from './numbers.ts';
import { boxAround, inside, type Point } from '../geometry/outline.ts';

/** Region of a triangle that lies outside the panel's outline. */
const outside = -1;
/** Region of a triangle of the skin itself; lid of ring n is region n + 1. */
export const skinRegion = 0;

/**
 * A plan divided into triangles. Points are x, y one after the other, in mm: first those of the loops
 * in order, then those between. Triangles run counter-clockwise.
 */
export interface PlanMesh {
  readonly points: Float64Array;
  /** How many points lie on each loop: the outline, then the lips. */
  readonly loops: readonly number[];
  readonly triangles: Uint32Array;
  /** For each triangle `skinRegion`, or n + 1 within loop n + 1. */
  readonly regions: Int16Array;
}

/** Points of the loops and what lies between, while a mesh is made. */
interface Cloud {
  readonly loops: readonly (readonly Point[])[];
  /** x, y of all points. */
  readonly xy: Float64Array;
  readonly fixed: number;
}

/** Points of a lattice of equal triangles inside the outline, away from every loop. */
function latticePoints(loops: readonly (readonly Point[])[], size: number): number[] {
  const [outline = []] = loops;
  const { left, right, bottom, top } = boxAround(outline);
  const pieces = piecesOf(loops);
  const clear = (0.7 * size) ** 2;
  const rise = size * Math.sqrt(0.75);
  const found: number[] = [];
  const rows = Math.ceil((top - bottom) / rise);
  for (let row = 0; row <= rows; row++) {
    const y = bottom + (row + 0.5) * rise;
    const shift = row % 2 === 0 ? 0.25 : 0.75;
    for (let x = left + shift * size; x < right; x += size) {
      if (inside({ x, y }, outline) && nearestSquared(x, y, pieces) > clear) found.push(x, y);
    }
  }
  return found;
}

/** Key of an edge without direction. */
function edgeKey(a: number, b: number, count: number): number {
  return a < b ? a * count + b : b * count + a;
}

/** Edges of the loops, each with the number of its loop. */
function loopEdges({ loops, xy }: Cloud): ReadonlyMap<number, number> {
  const edges = new Map<number, number>();
  let start = 0;
  loops.forEach((loop, number) => {
    for (let at = 0; at < loop.length; at++) {
      const to = start + ((at + 1) % loop.length);
      edges.set(edgeKey(start + at, to, xy.length / 2), number);
    }
    start += loop.length;
  });
  return edges;
}

interface Triangulation {
  readonly triangles: Uint32Array;
  readonly regions: Int16Array;
}

/** Delaunay triangles that keep the edges of the loops, and the region of each. */
function triangulated(cloud: Cloud): Triangulation {
  const made = new Delaunator(cloud.xy);
  const keep = new Constrainautor(made);
  const edges = loopEdges(cloud);
  const count = cloud.xy.length / 2;
  for (const key of edges.keys()) keep.constrainOne(Math.floor(key / count), key % count);
  keep.delaunify(true);
  const { triangles, halfedges } = made;
  return regionsOf({ triangles, halfedges, edges, count });
}

/** What lies on the other side of an edge of loop `number`. */
function across(region: number, number: number): number {
  if (number === 0) return region === outside ? skinRegion : outside;
  return region === number ? skinRegion : number;
}

/** Floods from outside the hull inwards; each edge of a loop leads into another region. */
function regionsOf(parts: {
  readonly triangles: Uint32Array;
  readonly halfedges: Int32Array;
  readonly edges: ReadonlyMap<number, number>;
  readonly count: number;
}): Triangulation {
  const { triangles, halfedges, edges, count } = parts;
  const unknown = -2;
  const regions = new Int16Array(triangles.length / 3).fill(unknown);
  const next = (edge: number): number => (edge % 3 === 2 ? edge - 2 : edge + 1);
  const through = (edge: number, region: number): number => {
    const loop = edges.get(edgeKey(triangles[edge] ?? 0, triangles[next(edge)] ?? 0, count));
    return loop === undefined ? region : across(region, loop);
  };
  const open: number[] = [];
  const enter = (triangle: number, region: number): void => {
    if (regions[triangle] !== unknown) return;
    regions[triangle] = region;
    open.push(triangle);
  };
  halfedges.forEach((twin, edge) => {
    if (twin < 0) enter(Math.floor(edge / 3), through(edge, outside));
  });
  for (let triangle = open.pop(); triangle !== undefined; triangle = open.pop()) {
    for (let edge = triangle * 3; edge < triangle * 3 + 3; edge++) {
      const twin = halfedges[edge] ?? -1;
      if (twin >= 0) enter(Math.floor(twin / 3), through(edge, regions[triangle] ?? outside));
    }
  }
  return kept(triangles, regions);
}

/** The triangles within the outline, counter-clockwise. */
function kept(triangles: Uint32Array, regions: Int16Array): Triangulation {
  const corners: number[] = [];
  const within: number[] = [];
  regions.forEach((region, triangle) => {
    if (region < skinRegion) return;
    const at = triangle * 3;
    // Delaunator's triangles run clockwise where y points up.
    corners.push(triangles[at] ?? 0, triangles[at + 2] ?? 0, triangles[at + 1] ?? 0);
    within.push(region);
  });
  return { triangles: Uint32Array.from(corners), regions: Int16Array.from(within) };
}

/** A node of a mesh in its plan. */
export function nodeAt({ points }: Pick<PlanMesh, 'points'>, node: number): Point {
  return { x: real(points, 2 * node), y: real(points, 2 * node + 1) };
}

/** Twice the area of a triangle of the plan; positive where it runs counter-clockwise. */
export function twiceArea(xy: Float64Array, a: number, b: number, c: number): number {
  const [x, y] = [real(xy, 2 * a), real(xy, 2 * a + 1)];
  return (
    (real(xy, 2 * b) - x) * (real(xy, 2 * c + 1) - y) -
    (real(xy, 2 * c) - x) * (real(xy, 2 * b + 1) - y)
  );
}

/** Points between the loops moved to the middle of what lies round them, by area. */
function smoothed({ xy, fixed }: Cloud, triangles: Uint32Array): Float64Array {
  const sums = new Float64Array(xy.length);
  const weights = new Float64Array(xy.length / 2);
  for (let at = 0; at < triangles.length; at += 3) {
    const corners = [0, 1, 2].map((corner) => whole(triangles, at + corner));
    const [a = 0, b = 0, c = 0] = corners;
    const area = Math.abs(twiceArea(xy, a, b, c));
    for (const axis of [0, 1]) {
      const middle = corners.reduce((sum, corner) => sum + real(xy, 2 * corner + axis), 0) / 3;
      for (const corner of corners) add(sums, 2 * corner + axis, area * middle);
    }
    for (const corner of corners) add(weights, corner, area);
  }
  return xy.map((old, at) => {
    const weight = real(weights, at >> 1);
    return at < 2 * fixed || weight === 0 ? old : real(sums, at) / weight;
  });
}

/** Sweeps of smoothing; more change the angles no further. */
const sweeps = 3;

/**
 * Divides the plan inside the first loop into triangles of about this size, in mm; every edge of every
 * loop is kept, and what lies inside a further loop is a region of its own.
 *
 * Loops must not cross or touch; where they do, this throws.
 *
 * @source constrained Delaunay triangulation over a lattice of equal triangles, smoothed to the
 *   middle of what lies around (area-weighted Laplace smoothing)
 */
export function meshPlan(loops: readonly (readonly Point[])[], size: number): PlanMesh {
  const onLoops = loops.flatMap((loop) => loop.flatMap(({ x, y }) => [x, y]));
  const fixed = onLoops.length / 2;
  let cloud: Cloud = {
    loops,
    xy: Float64Array.from([...onLoops, ...latticePoints(loops, size)]),
    fixed,
  };
  let made = triangulated(cloud);
  for (let sweep = 0; sweep < sweeps; sweep++) {
    cloud = { ...cloud, xy: smoothed(cloud, made.triangles) };
    made = triangulated(cloud);
  }
  return { points: cloud.xy, loops: loops.map(({ length }) => length), ...made };
}

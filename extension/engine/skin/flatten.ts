import { boxAround, type Point } from '../geometry/outline.ts';
import type { PlanMesh } from './mesh.ts';
import { add, real, whole } from './numbers.ts';
import { entryOf, factored, matrixFor, solveLinear, type SymmetricMatrix } from './sparse.ts';

/** A surface laid flat: where each node of its mesh comes to lie, and how the triangles are stretched from there. */
export interface Flattened {
  /** x, y of each node, in mm. */
  readonly points: Float64Array;
  /** For each triangle, the larger and the smaller stretch of the flat blank to the surface. */
  readonly larger: Float64Array;
  readonly smaller: Float64Array;
  /** Plan area of each triangle of the blank, in mm². */
  readonly areas: Float64Array;
}

/** A triangle of the surface laid into a plane by itself: x, y of its corners. */
type Corners = readonly [Point, Point, Point];

function laid(mesh: PlanMesh, heights: Float64Array, triangle: number): Corners {
  const node = (corner: number): readonly [number, number, number] => {
    const at = whole(mesh.triangles, 3 * triangle + corner);
    return [real(mesh.points, 2 * at), real(mesh.points, 2 * at + 1), real(heights, at)];
  };
  const [a, b, c] = [node(0), node(1), node(2)];
  const side = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
  const other = [c[0] - a[0], c[1] - a[1], c[2] - a[2]] as const;
  const length = Math.hypot(...side);
  const along = (side[0] * other[0] + side[1] * other[1] + side[2] * other[2]) / length;
  const across = Math.sqrt(Math.max(0, Math.hypot(...other) ** 2 - along * along));
  return [
    { x: 0, y: 0 },
    { x: length, y: 0 },
    { x: along, y: across },
  ];
}

/** Cotangents of the angles of a triangle at its corners. */
function cotangents([a, b, c]: Corners): readonly [number, number, number] {
  const at = (p: Point, q: Point, r: Point): number => {
    const [ux, uy, vx, vy] = [q.x - p.x, q.y - p.y, r.x - p.x, r.y - p.y];
    return (ux * vx + uy * vy) / (ux * vy - uy * vx || 1e-12);
  };
  return [at(a, b, c), at(b, c, a), at(c, a, b)];
}

interface Job {
  readonly mesh: PlanMesh;
  readonly corners: readonly Corners[];
  readonly weights: readonly (readonly [number, number, number])[];
  readonly matrix: SymmetricMatrix;
}

function edgesOf(triangles: Uint32Array): [number, number][] {
  const pairs: [number, number][] = [];
  for (let at = 0; at < triangles.length; at++) {
    const next = at % 3 === 2 ? at - 2 : at + 1;
    pairs.push([whole(triangles, at), whole(triangles, next)]);
  }
  return pairs;
}

/** The edge of each triangle that lies across from a corner, as two corners. */
const facing = [
  [1, 2],
  [2, 0],
  [0, 1],
] as const;

/** Cotangent weights of the edges, with node 0 held where it is. */
function jobFor(mesh: PlanMesh, heights: Float64Array): Job {
  const { triangles, points } = mesh;
  const count = triangles.length / 3;
  const corners = Array.from({ length: count }, (_, triangle) => laid(mesh, heights, triangle));
  const weights = corners.map(cotangents);
  const matrix = matrixFor(points.length / 2, edgesOf(triangles));
  weights.forEach((three, triangle) => {
    facing.forEach(([from, to], corner) => {
      const a = whole(triangles, 3 * triangle + from);
      const b = whole(triangles, 3 * triangle + to);
      const weight = (three[corner] ?? 0) / 2;
      add(matrix.diagonal, a, weight);
      add(matrix.diagonal, b, weight);
      add(matrix.values, entryOf(matrix, a, b), -weight);
    });
  });
  // One node is tied down, or the blank could lie anywhere.
  add(matrix.diagonal, 0, real(matrix.diagonal, 0));
  return { mesh, corners, weights, matrix };
}

/** Angle by which a laid triangle is turned to fit its place in the blank best. */
function turnOf(job: Job, flat: Float64Array, triangle: number): number {
  let [cos, sin] = [0, 0];
  const { triangles } = job.mesh;
  const three = job.corners[triangle];
  const weights = job.weights[triangle];
  if (three === undefined || weights === undefined) return 0;
  facing.forEach(([from, to], corner) => {
    const a = whole(triangles, 3 * triangle + from);
    const b = whole(triangles, 3 * triangle + to);
    const [ux, uy] = [
      real(flat, 2 * a) - real(flat, 2 * b),
      real(flat, 2 * a + 1) - real(flat, 2 * b + 1),
    ];
    const [p, q] = [three[from], three[to]];
    const [vx, vy] = [p.x - q.x, p.y - q.y];
    const weight = weights[corner] ?? 0;
    cos += weight * (ux * vx + uy * vy);
    sin += weight * (uy * vx - ux * vy);
  });
  return Math.atan2(sin, cos);
}

/** What the edges of all turned triangles ask of the nodes, along x and along y. */
function pulls(job: Job, flat: Float64Array): readonly [Float64Array, Float64Array] {
  const { triangles } = job.mesh;
  const x = new Float64Array(job.matrix.size);
  const y = new Float64Array(job.matrix.size);
  job.corners.forEach((three, triangle) => {
    const angle = turnOf(job, flat, triangle);
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    facing.forEach(([from, to], corner) => {
      const weight = (job.weights[triangle]?.[corner] ?? 0) / 2;
      const [p, q] = [three[from], three[to]];
      const dx = weight * (cos * (p.x - q.x) - sin * (p.y - q.y));
      const dy = weight * (sin * (p.x - q.x) + cos * (p.y - q.y));
      const a = whole(triangles, 3 * triangle + from);
      const b = whole(triangles, 3 * triangle + to);
      add(x, a, dx);
      add(x, b, -dx);
      add(y, a, dy);
      add(y, b, -dy);
    });
  });
  return [x, y];
}

/** Rounds of turning and laying; stretches change by less than 0.3 % after them. */
const rounds = 20;

/**
 * Lays a surface flat with as little stretch as can be, both ways alike: the shape of the blank that it
 * is pulled from. It begins at the plan, so the blank lies along the same axes.
 *
 * @source as-rigid-as-possible parameterisation: Liu, Zhang, Xu, Gotsman and Gortler, "A local/global
 *   approach to mesh parameterization" (Computer Graphics Forum 27, 2008)
 */
export function flattened(mesh: PlanMesh, heights: Float64Array): Flattened {
  const job = jobFor(mesh, heights);
  const factor = factored(job.matrix);
  const flat = mesh.points.slice();
  const held = [real(flat, 0), real(flat, 1)] as const;
  const tie = real(job.matrix.diagonal, 0) / 2;
  const way = [0, 1].map((axis) => flat.filter((_, at) => at % 2 === axis));
  for (let round = 0; round < rounds; round++) {
    pulls(job, flat).forEach((b, axis) => {
      const x = way[axis] ?? new Float64Array(b.length);
      add(b, 0, tie * (held[axis] ?? 0));
      solveLinear(job.matrix, factor, { b, x, tolerance: 1e-5 });
      x.forEach((value, node) => (flat[2 * node + axis] = value));
    });
  }
  return { points: flat, ...stretches(job, flat) };
}

/**
 * Stretches along and across of each triangle from the blank to the surface: the singular values of
 * the map between them.
 */
function stretches({ mesh, corners }: Job, flat: Float64Array): Omit<Flattened, 'points'> {
  const count = corners.length;
  const larger = new Float64Array(count);
  const smaller = new Float64Array(count);
  const areas = new Float64Array(count);
  corners.forEach(([a, b, c], triangle) => {
    const node = (corner: number): number => whole(mesh.triangles, 3 * triangle + corner);
    const [i, j, k] = [node(0), node(1), node(2)];
    const u = [
      real(flat, 2 * j) - real(flat, 2 * i),
      real(flat, 2 * j + 1) - real(flat, 2 * i + 1),
    ];
    const v = [
      real(flat, 2 * k) - real(flat, 2 * i),
      real(flat, 2 * k + 1) - real(flat, 2 * i + 1),
    ];
    const [ux = 0, uy = 0] = u;
    const [vx = 0, vy = 0] = v;
    const twice = ux * vy - vx * uy;
    const along = (p: number, q: number): readonly [number, number] => [
      (p * vy - q * uy) / twice,
      (q * ux - p * vx) / twice,
    ];
    const [m, n] = along(b.x - a.x, c.x - a.x);
    const [o, p] = along(b.y - a.y, c.y - a.y);
    const half = Math.hypot(m + p, o - n) / 2;
    const rest = Math.hypot(m - p, o + n) / 2;
    larger[triangle] = half + rest;
    smaller[triangle] = Math.abs(half - rest);
    areas[triangle] = Math.abs(twice) / 2;
  });
  return { larger, smaller, areas };
}

/** The value that this share of the whole weight stays below. */
function quantile(values: Float64Array, weights: Float64Array, share: number): number {
  const order = Array.from(values, (_, index) => index).sort(
    (a, b) => real(values, a) - real(values, b) || a - b,
  );
  const goal = share * weights.reduce((sum, weight) => sum + weight, 0);
  let passed = 0;
  for (const index of order) {
    passed += real(weights, index);
    if (passed >= goal) return real(values, index);
  }
  return real(values, order[order.length - 1] ?? 0);
}

/**
 * How many times its own length the most stretched part of the cloth must reach for the least stretched
 * not to wrinkle, over all but the last hundredth of the blank at either end.
 */
export function stretchRange({ larger, smaller, areas }: Flattened): number {
  return quantile(larger, areas, 0.99) / quantile(smaller, areas, 0.01);
}

/** Extent of a blank along x and along y, in mm. */
export function blankSize({ points }: Flattened): {
  readonly length: number;
  readonly width: number;
} {
  const all: Point[] = [];
  for (let at = 0; at < points.length; at += 2)
    all.push({ x: real(points, at), y: real(points, at + 1) });
  const { left, right, bottom, top } = boxAround(all);
  return { length: right - left, width: top - bottom };
}

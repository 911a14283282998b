import { equationsFor, slopeOf, surfaceArea, type Elements, type Equations } from './elements.ts';
import { add, dot, real, whole } from './numbers.ts';
import { factored, solveLinear } from './sparse.ts';

/** How a skin came to rest. */
export interface Rest {
  readonly heights: Float64Array;
  /** Steps of Newton's method that were taken. */
  readonly steps: number;
  readonly settled: boolean;
}

/** Steps after which a skin that can come to rest has done so (16 were the most ever seen). */
const mostSteps = 60;
/** A step that would change the area by less than this share of it is the last. */
const nothingMore = 1e-13;

/** Fills in the slopes of the area by each unknown height, and the matrix of how these change. */
function assemble(
  elements: Elements,
  { matrix, unknowns, entries }: Equations,
  heights: Float64Array | undefined,
): Float64Array {
  const { areas, slopes } = elements;
  const gradient = new Float64Array(matrix.size);
  matrix.values.fill(0);
  matrix.diagonal.fill(0);
  for (let triangle = 0; triangle < areas.length; triangle++) {
    const [gx, gy] = heights === undefined ? [0, 0] : slopeOf(elements, triangle, heights);
    const stretch = Math.sqrt(1 + gx * gx + gy * gy);
    const weight = real(areas, triangle) / stretch;
    for (let corner = 0; corner < 3; corner++) {
      const row = unknowns[3 * triangle + corner] ?? -1;
      if (row < 0) continue;
      const at = 6 * triangle + 2 * corner;
      const [x, y] = [real(slopes, at), real(slopes, at + 1)];
      const along = (x * gx + y * gy) / stretch;
      add(gradient, row, weight * along * stretch);
      add(matrix.diagonal, row, weight * (x * x + y * y - along * along));
      const entry = entries[3 * triangle + corner] ?? -1;
      if (entry < 0) continue;
      const to = 6 * triangle + 2 * ((corner + 1) % 3);
      const [nx, ny] = [real(slopes, to), real(slopes, to + 1)];
      const next = (nx * gx + ny * gy) / stretch;
      add(matrix.values, entry, weight * (x * nx + y * ny - along * next));
    }
  }
  return gradient;
}

/** Heights moved by a share of a step. */
function moved(
  heights: Float64Array,
  { nodes }: Equations,
  step: Float64Array,
  share: number,
): Float64Array {
  const next = heights.slice();
  for (let row = 0; row < step.length; row++) add(next, whole(nodes, row), share * real(step, row));
  return next;
}

/** The step towards rest from here: the linear system of Newton's method. */
function stepFrom(equations: Equations, gradient: Float64Array, tolerance: number): Float64Array {
  const { matrix } = equations;
  const b = gradient.map((value) => -value);
  return solveLinear(matrix, factored(matrix), { b, x: new Float64Array(matrix.size), tolerance });
}

/** Heights of the linear membrane over the given ones: where Newton's method begins. */
function membrane(elements: Elements, equations: Equations, given: Float64Array): Float64Array {
  const { matrix, nodes, unknowns } = equations;
  const heights = given.slice();
  for (const node of nodes) heights[node] = 0;
  assemble(elements, equations, undefined);
  const b = new Float64Array(matrix.size);
  const { areas, slopes } = elements;
  areas.forEach((area, triangle) => {
    const [gx, gy] = slopeOf(elements, triangle, heights);
    for (let corner = 0; corner < 3; corner++) {
      const row = unknowns[3 * triangle + corner] ?? -1;
      const at = 6 * triangle + 2 * corner;
      if (row >= 0) add(b, row, -area * (gx * real(slopes, at) + gy * real(slopes, at + 1)));
    }
  });
  const x = new Float64Array(matrix.size);
  solveLinear(matrix, factored(matrix), { b, x, tolerance: 1e-3 });
  return moved(heights, equations, x, 1);
}

/** Heights along a step whose area is less enough; undefined where no share of it lowers the area. */
function lowered(
  elements: Elements,
  from: {
    readonly equations: Equations;
    readonly heights: Float64Array;
    readonly step: Float64Array;
    readonly area: number;
    readonly fall: number;
  },
): { readonly heights: Float64Array; readonly area: number } | undefined {
  for (let share = 1; share > 1e-6; share /= 2) {
    const heights = moved(from.heights, from.equations, from.step, share);
    const area = surfaceArea(elements, heights);
    if (area < from.area - 1e-4 * share * from.fall) return { heights, area };
  }
  return undefined;
}

/** Newton's method with a line search on the area, which is convex in the heights. */
function newton(elements: Elements, equations: Equations, begin: Float64Array): Rest {
  let heights = begin;
  let area = surfaceArea(elements, heights);
  for (let steps = 0; steps < mostSteps; steps++) {
    const gradient = assemble(elements, equations, heights);
    const step = stepFrom(equations, gradient, steps < 1 ? 1e-1 : 1e-3);
    const fall = -dot(gradient, step);
    if (!(fall > nothingMore * area)) return { heights, steps, settled: true };
    const next = lowered(elements, { equations, heights, step, area, fall });
    if (next === undefined) return { heights, steps, settled: fall < 1e-9 * area };
    ({ heights, area } = next);
  }
  return { heights, steps: mostSteps, settled: false };
}

/** What the skin is stretched over, on a mesh. */
export interface Support {
  /** Height of each node, in mm; of given nodes as they stay, of the others ignored. */
  readonly heights: Float64Array;
  readonly given: (node: number) => boolean;
  /** Heights that nodes may not fall below; `-Infinity` where nothing stands. */
  readonly floor?: Float64Array;
  /** Heights to begin with: those of the skin before an edit. */
  readonly begin?: Float64Array;
}

/** Rounds of laying nodes on walls and lifting them off again. */
const mostRounds = 40;

/** Nodes that rest on what stands below them after a solution, and those that must be let go. */
function contacts(
  elements: Elements,
  floor: Float64Array,
  found: { readonly heights: Float64Array; readonly resting: ReadonlySet<number> },
): ReadonlySet<number> {
  const all = equationsFor(elements, (node) => !found.resting.has(node));
  const pull = assemble(elements, all, found.heights);
  const resting = new Set<number>();
  all.nodes.forEach((node, row) => {
    // The skin pulls down on what holds it up.
    if (real(pull, row) > 0) resting.add(node);
  });
  for (const node of new Set(elements.corners)) {
    if (!found.resting.has(node) && real(found.heights, node) < real(floor, node) - 1e-9) {
      resting.add(node);
    }
  }
  return resting;
}

function sameSet(a: ReadonlySet<number>, b: ReadonlySet<number>): boolean {
  return a.size === b.size && [...a].every((one) => b.has(one));
}

/**
 * The least surface over a plan that takes the given heights on its edges and stays above what stands
 * under it. The area of a graph is convex in its heights, so there is one answer and any start leads to
 * it. Where no smooth one exists the cloth lies against the wall: the steepest triangles stand for it.
 *
 * @returns heights in mm of all nodes; `settled` is false where Newton's method did not come to rest
 * @source minimal surface as a graph by linear elements: Newton's method with a line search, systems by
 *   conjugate gradients; obstacles by a primal active set
 */
export function stretched(
  elements: Elements,
  support: Support,
): Rest & { readonly resting: ReadonlySet<number> } {
  const { given, floor } = support;
  let resting: ReadonlySet<number> = new Set();
  let steps = 0;
  let begin = support.begin;
  for (let round = 0; ; round++) {
    const held = resting;
    const equations = equationsFor(elements, (node) => given(node) || held.has(node));
    const fixed = support.heights.slice();
    for (const node of held) fixed[node] = real(floor ?? fixed, node);
    const start = begin === undefined ? membrane(elements, equations, fixed) : fixed.slice();
    if (begin !== undefined) for (const node of equations.nodes) start[node] = real(begin, node);
    const rest = newton(elements, equations, start);
    steps += rest.steps;
    if (floor === undefined) return { ...rest, steps, resting };
    const next = contacts(elements, floor, { heights: rest.heights, resting });
    if (sameSet(next, resting) || round === mostRounds) {
      return { ...rest, steps, resting, settled: rest.settled && round < mostRounds };
    }
    resting = next;
    begin = rest.heights;
  }
}

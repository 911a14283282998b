import { signedArea } from '../geometry/outline.ts';
import { divideLoop, valuesAlong } from './divide-loop.ts';
import { elementsOf, type Elements } from './elements.ts';
import { floorUnder } from './floor.ts';
import { meshPlan, nodeAt, type PlanMesh } from './mesh.ts';
import { whole } from './numbers.ts';
import type { Panel } from './panel.ts';
import { lipHeight, lipLoop } from './ring-plan.ts';
import { stretched } from './solve.ts';

/** A skin at rest on its mesh. */
export interface SkinMesh {
  readonly mesh: PlanMesh;
  readonly elements: Elements;
  /** Heights of the nodes above the base's front, in mm; lids lie in the planes of their lips. */
  readonly heights: Float64Array;
  readonly settled: boolean;
  /** Nodes that rest on a wall or a block under them. */
  readonly resting: ReadonlySet<number>;
}

/** Curves of the plan are followed within this, in mm. */
const tolerance = 0.002;
/** Pieces of a loop at least. */
const leastPieces = 24;
/** Size of triangle that divides a plan into about so many, in mm. */
function triangleSize(panel: Panel, triangles: number): number {
  const area = signedArea(panel.outline.points);
  return Math.sqrt((4 * area) / (Math.sqrt(3) * triangles));
}

/**
 * Finds the skin that comes to rest over a panel. The panel has no faults (`panelFaults`).
 *
 * @param begin a rest of the same mesh before an edit that moved no plan: found again sooner
 */
export function restOver(panel: Panel, triangles: number, begin?: SkinMesh): SkinMesh {
  const size = triangleSize(panel, triangles);
  const outline = divideLoop(panel.outline, size, leastPieces);
  const lips = panel.rings.map((ring) => {
    const loop = lipLoop(ring, tolerance);
    const divided = divideLoop(loop, size, leastPieces);
    return { points: divided.points, heights: valuesAlong(loop.heights, divided) };
  });
  const mesh = begin?.mesh ?? meshPlan([outline.points, ...lips.map(({ points }) => points)], size);
  const elements = begin?.elements ?? elementsOf(mesh);
  const heights = new Float64Array(mesh.points.length / 2);
  let at = outline.points.length;
  for (const lip of lips) {
    for (const height of lip.heights) heights[at++] = height - panel.thickness;
  }
  const onLoops = at;
  layLids(panel, mesh, heights);
  const floor = floorUnder(panel, mesh);
  const rest = stretched(elements, {
    heights,
    given: (node) => node < onLoops,
    ...(floor && { floor }),
    ...(begin && { begin: begin.heights }),
  });
  return { mesh, elements, ...clamped(rest, onLoops) };
}

/** The least surface stays above its lowest edge; blunt triangles may dip below it by a hair. */
function clamped<Rest extends { readonly heights: Float64Array }>(
  rest: Rest,
  onLoops: number,
): Rest {
  const heights = rest.heights.map((height, node) =>
    node < onLoops ? height : Math.max(0, height),
  );
  return { ...rest, heights };
}

function layLids(panel: Panel, mesh: PlanMesh, heights: Float64Array): void {
  mesh.regions.forEach((region, triangle) => {
    const ring = panel.rings[region - 1];
    if (ring === undefined) return;
    for (const corner of [0, 1, 2]) {
      const node = whole(mesh.triangles, 3 * triangle + corner);
      const point = nodeAt(mesh, node);
      heights[node] = lipHeight(ring, point) - panel.thickness;
    }
  });
}

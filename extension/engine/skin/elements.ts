import { skinRegion, twiceArea, type PlanMesh } from './mesh.ts';
import { real, whole } from './numbers.ts';
import { entryOf, matrixFor, type SymmetricMatrix } from './sparse.ts';

/**
 * The triangles of the skin with what never changes about them: plan areas, and how the slope follows
 * from the heights of the corners.
 */
export interface Elements {
  readonly corners: Uint32Array;
  readonly areas: Float64Array;
  /** For each corner of each triangle, x and y of the slope that a height of 1 there gives. */
  readonly slopes: Float64Array;
}

/** The triangles of the skin of a mesh; those under the lids are left out. */
export function elementsOf(mesh: PlanMesh): Elements {
  const { points, triangles, regions } = mesh;
  const corners: number[] = [];
  regions.forEach((region, triangle) => {
    if (region === skinRegion) corners.push(...triangles.subarray(3 * triangle, 3 * triangle + 3));
  });
  const count = corners.length / 3;
  const areas = new Float64Array(count);
  const slopes = new Float64Array(6 * count);
  for (let triangle = 0; triangle < count; triangle++) {
    const nodes = corners.slice(3 * triangle, 3 * triangle + 3);
    const [a = 0, b = 0, c = 0] = nodes;
    const twice = twiceArea(points, a, b, c);
    areas[triangle] = twice / 2;
    for (const corner of [0, 1, 2]) {
      const next = nodes[(corner + 1) % 3] ?? 0;
      const last = nodes[(corner + 2) % 3] ?? 0;
      const at = 6 * triangle + 2 * corner;
      slopes[at] = (real(points, 2 * next + 1) - real(points, 2 * last + 1)) / twice;
      slopes[at + 1] = (real(points, 2 * last) - real(points, 2 * next)) / twice;
    }
  }
  return { corners: Uint32Array.from(corners), areas, slopes };
}

/** The unknown heights, and where each triangle's share of the equations goes. */
export interface Equations {
  /** Node of each unknown. */
  readonly nodes: Uint32Array;
  readonly matrix: SymmetricMatrix;
  /** Unknown of each corner of each triangle; -1 where the height is given. */
  readonly unknowns: Int32Array;
  /** Entry of the matrix for corners 0-1, 1-2, 2-0 of each triangle; -1 where there is none. */
  readonly entries: Int32Array;
}

/** The equations for the nodes of the skin of which `given` does not say that their height is known. */
export function equationsFor(elements: Elements, given: (node: number) => boolean): Equations {
  const { corners } = elements;
  const nodes = [...new Set(corners)].filter((node) => !given(node)).sort((a, b) => a - b);
  const numbers = new Map(nodes.map((node, index) => [node, index]));
  const unknowns = Int32Array.from(corners, (node) => numbers.get(node) ?? -1);
  const pairs: [number, number][] = [];
  const edge = (triangle: number, corner: number): [number, number] => [
    unknowns[3 * triangle + corner] ?? -1,
    unknowns[3 * triangle + ((corner + 1) % 3)] ?? -1,
  ];
  const count = corners.length / 3;
  for (let at = 0; at < corners.length; at++) {
    const pair = edge(Math.floor(at / 3), at % 3);
    if (pair[0] >= 0 && pair[1] >= 0) pairs.push(pair);
  }
  const matrix = matrixFor(nodes.length, pairs);
  const entries = new Int32Array(3 * count).map((_, at) => {
    const [a, b] = edge(Math.floor(at / 3), at % 3);
    return a < 0 || b < 0 ? -1 : entryOf(matrix, a, b);
  });
  return { nodes: Uint32Array.from(nodes), matrix, unknowns, entries };
}

/** The slope of a triangle of the skin, x and y. */
export function slopeOf(
  { corners, slopes }: Elements,
  triangle: number,
  heights: Float64Array,
): readonly [number, number] {
  let [x, y] = [0, 0];
  for (let corner = 0; corner < 3; corner++) {
    const height = real(heights, whole(corners, 3 * triangle + corner));
    x += height * real(slopes, 6 * triangle + 2 * corner);
    y += height * real(slopes, 6 * triangle + 2 * corner + 1);
  }
  return [x, y];
}

/** Area of the skin over its triangles, in mm². */
export function surfaceArea(elements: Elements, heights: Float64Array): number {
  let sum = 0;
  elements.areas.forEach((area, triangle) => {
    const [x, y] = slopeOf(elements, triangle, heights);
    sum += area * Math.sqrt(1 + x * x + y * y);
  });
  return sum;
}

import { describe, expect, test } from 'vitest';
import type { Outline, Point } from '../../../extension/engine/geometry/outline.ts';
import { signedArea } from '../../../extension/engine/geometry/outline.ts';
import { divideLoop } from '../../../extension/engine/skin/divide-loop.ts';
import { elementsOf, surfaceArea } from '../../../extension/engine/skin/elements.ts';
import { meshPlan } from '../../../extension/engine/skin/mesh.ts';
import { stretched } from '../../../extension/engine/skin/solve.ts';
import { curve } from './panels.ts';

/** A known minimal surface over a plan: its edges with their heights, and its area. */
interface Known {
  readonly loops: readonly Outline[];
  readonly height: (point: Point) => number;
  readonly area: number;
  readonly floor?: (point: Point) => number;
}

/** Area over a mesh of this size, with what straight edges leave out of the plan put right. */
function areaOver(known: Known, size: number): number {
  const divided = known.loops.map((loop) => divideLoop(loop, size, 12).points);
  const mesh = meshPlan(divided, size);
  const elements = elementsOf(mesh);
  const nodes = Array.from({ length: mesh.points.length / 2 }, (_, node) => ({
    x: mesh.points[2 * node] ?? 0,
    y: mesh.points[2 * node + 1] ?? 0,
  }));
  const onLoops = divided.reduce((sum, loop) => sum + loop.length, 0);
  const { floor } = known;
  const rest = stretched(elements, {
    heights: Float64Array.from(nodes, (point, node) => (node < onLoops ? known.height(point) : 0)),
    given: (node) => node < onLoops,
    ...(floor && { floor: Float64Array.from(nodes, (point) => floor(point)) }),
  });
  expect(rest.settled).toBe(true);
  const exact = known.loops.reduce(
    (sum, { points }, at) => sum + (at === 0 ? 1 : -1) * signedArea(points),
    0,
  );
  const meshed = elements.areas.reduce((sum, area) => sum + area, 0);
  return surfaceArea(elements, rest.heights) + exact - meshed;
}

function off(known: Known, size: number): number {
  return areaOver(known, size) / known.area - 1;
}

const round = (radius: number, centre = 0): Outline => ({
  points: curve((t) => {
    const angle = 2 * Math.PI * t;
    return { x: centre + radius * Math.cos(angle), y: radius * Math.sin(angle) };
  }, 4000),
  corners: [],
});

const catenoidHeight = ({ x, y }: Point): number => -Math.acosh(Math.max(1, Math.hypot(x, y)));

/** z = −acosh ρ between two radii, as Bourke, "Catenoid", gives it; area π[t + sinh t·cosh t]. */
const catenary: Known = {
  loops: [round(4), round(1.2)],
  height: catenoidHeight,
  area: 50.6959372007,
};

/** The same surface turned by 20° about y: both edges lean. */
function leaning(): Known {
  const lean = (20 * Math.PI) / 180;
  const [cos, sin] = [Math.cos(lean), Math.sin(lean)];
  const level = (radius: number): number => -Math.acosh(radius);
  const edge = (radius: number): Outline => {
    const at = (t: number): Point => {
      const x = radius * Math.cos(2 * Math.PI * t);
      return { x: x * cos + level(radius) * sin, y: radius * Math.sin(2 * Math.PI * t) };
    };
    return { points: curve(at, 4000), corners: [] };
  };
  // Where a point of the plan lies in the plane of an edge, before the turn.
  const along = (point: Point, radius: number): number => (point.x - level(radius) * sin) / cos;
  const offEdge = (point: Point, radius: number): number =>
    Math.abs(Math.hypot(along(point, radius), point.y) - radius);
  const height = (point: Point): number => {
    const radius = offEdge(point, 4) < offEdge(point, 1.6) ? 4 : 1.6;
    return -along(point, radius) * sin + level(radius) * cos;
  };
  return { loops: [edge(4), edge(1.6)], height, area: 45.5845193914 };
}

/** Scherk's surface (MathWorld, "Scherk's Minimal Surfaces"); area by Gauss quadrature. */
const scherk: Known = {
  loops: [
    {
      points: [
        { x: 1.2, y: 1.2 },
        { x: -1.2, y: 1.2 },
        { x: -1.2, y: -1.2 },
        { x: 1.2, y: -1.2 },
      ],
      corners: [0, 1, 2, 3],
    },
  ],
  height: ({ x, y }) => Math.log(Math.cos(y) / Math.cos(x)),
  area: 9.94982499871,
};

/** Enneper's surface over the disc of radius 0.7 of its parameters: area π(R² + R⁴ + R⁶/3). */
function enneper(): Known {
  const radius = 0.7;
  const at = (t: number): { point: Point; height: number } => {
    const [u, v] = [radius * Math.cos(2 * Math.PI * t), radius * Math.sin(2 * Math.PI * t)];
    const point = { x: u - u ** 3 / 3 + u * v * v, y: v - v ** 3 / 3 + v * u * u };
    return { point, height: u * u - v * v };
  };
  const pieces = 8000;
  const edge = Array.from({ length: pieces }, (_, index) => at(index / pieces));
  const angleOf = ({ x, y }: Point): number => (Math.atan2(y, x) + 2 * Math.PI) % (2 * Math.PI);
  const sorted = edge
    .map(({ point, height }) => ({ angle: angleOf(point), height }))
    .sort((a, b) => a.angle - b.angle);
  const height = (point: Point): number => {
    const angle = angleOf(point);
    let [low, high] = [0, sorted.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((sorted[middle]?.angle ?? 0) > angle) high = middle;
      else low = middle;
    }
    const [a, b] = [sorted[low], sorted[high]];
    if (a === undefined || b === undefined) return 0;
    const share = b.angle === a.angle ? 0 : (angle - a.angle) / (b.angle - a.angle);
    return a.height + share * (b.height - a.height);
  };
  const area = Math.PI * (radius ** 2 + radius ** 4 + radius ** 6 / 3);
  return { loops: [{ points: edge.map(({ point }) => point), corners: [] }], height, area };
}

/** A round edge of 6, a lip of 1.25 at 3, over a cone of 60° that the cloth bears on. */
const cone: Known = {
  loops: [round(6), round(1.25)],
  height: ({ x, y }) => (Math.hypot(x, y) > 3 ? 0 : 3),
  floor: ({ x, y }) => 3 - Math.sqrt(3) * (Math.hypot(x, y) - 1.25),
  area: 123.5423976838,
};

describe('stretched', () => {
  test('a flat ring stays flat: 27π', () => {
    const flat: Known = { loops: [round(6), round(3)], height: () => 0, area: 27 * Math.PI };
    expect(Math.abs(off(flat, 0.3))).toBeLessThan(1e-6);
  });

  test.each([
    ['a catenoid', catenary, 1e-4],
    ['a catenoid that leans by 20°', leaning(), 1e-4],
    ['Scherk’s surface', scherk, 3e-4],
    ['Enneper’s surface', enneper(), 6e-4],
    ['cloth that bears on a cone', cone, 2e-4],
  ] as const)('finds %s', (_, known, tolerance) => {
    const plan = known.loops.reduce(
      (sum, { points }, at) => sum + (at === 0 ? 1 : -1) * signedArea(points),
      0,
    );
    const size = Math.sqrt((4 * plan) / (Math.sqrt(3) * 5000));
    expect(Math.abs(off(known, size))).toBeLessThan(tolerance);
  });

  test.each([
    ['the catenoid', catenary],
    ['Scherk’s surface', scherk],
    ['Enneper’s surface', enneper()],
  ] as const)('halving the triangles of %s quarters the error', (_, known) => {
    const plan = known.loops.reduce(
      (sum, { points }, at) => sum + (at === 0 ? 1 : -1) * signedArea(points),
      0,
    );
    const size = Math.sqrt((4 * plan) / (Math.sqrt(3) * 2800));
    const [coarse, fine] = [Math.abs(off(known, size)), Math.abs(off(known, size / 2))];
    expect(Math.log2(coarse / fine)).toBeGreaterThanOrEqual(1.8);
  });
});

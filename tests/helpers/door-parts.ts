import type { OutlinesInstance, Part } from '../../extension/engine/cutting/instance.ts';
import { shapeOutline } from '../../extension/engine/geometry/shape-outline.ts';

type Corner = readonly [number, number];

function disc(diameter: number, x = 0, y = 0): readonly Corner[] {
  return shapeOutline({ kind: 'circle', diameter }, 0.1).points.map((at) => [at.x + x, at.y + y]);
}

function mirrored(loop: readonly Corner[]): readonly Corner[] {
  return loop.map(([x, y]): Corner => [-x, y]).reverse();
}

const base: readonly Corner[] = [
  [0, 0],
  [560, 0],
  [640, 60],
  [640, 210],
  [520, 300],
  [300, 330],
  [90, 300],
  [0, 190],
];
const baseHoles = [disc(150, 180, 150), disc(80, 480, 150)];
const pod: readonly Corner[] = [
  [0, 0],
  [210, 0],
  [240, 70],
  [160, 150],
  [40, 130],
];
const frame: readonly Corner[] = [
  [0, 0],
  [300, 0],
  [300, 200],
  [0, 200],
];
const frameHole: readonly Corner[] = [
  [22, 22],
  [278, 22],
  [278, 178],
  [22, 178],
];
const gusset: readonly Corner[] = [
  [0, 0],
  [90, 0],
  [0, 70],
];

function part(
  id: string,
  count: number,
  points: readonly Corner[],
  holes: readonly (readonly Corner[])[] = [],
): Part {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    id,
    count,
    points,
    holes,
    length: Math.max(...xs) - Math.min(...xs),
    width: Math.max(...ys) - Math.min(...ys),
  };
}

/** Boards of two pairs of doors: bases for either hand with openings, rings, pods, frames, gussets. */
export const doorParts: readonly Part[] = [
  part('base_left', 2, base, baseHoles),
  part('base_right', 2, mirrored(base), baseHoles.map(mirrored)),
  part('baffle', 8, disc(170)),
  part('pod_left', 2, pod),
  part('pod_right', 2, mirrored(pod)),
  part('tweeter', 6, disc(70)),
  part('grille', 4, frame, [frameHole]),
  part('gusset', 16, gusset),
];

/** The same on one size of board, cut with a router bit of 3.2 mm. */
export function doorsOn(length: number, width: number): OutlinesInstance {
  const stocks = [{ id: 'board', length, width, price: 10 }];
  return { kind: 'outlines', stocks, parts: doorParts, kerf: 3.2, trim: 6 };
}

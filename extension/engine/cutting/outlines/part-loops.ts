import { outlineOffset } from '../../geometry/outline-offset.ts';
import { signedArea } from '../../geometry/outline.ts';
import type { Part } from '../instance.ts';
import type { Corner, Loops } from './shape-rows.ts';

function loopOf(points: readonly Corner[]): { points: { x: number; y: number }[] } {
  const at = points.map(([x, y]) => ({ x, y }));
  return { points: signedArea(at) < 0 ? at.reverse() : at };
}

function offset(points: readonly Corner[], distance: number): readonly (readonly Corner[])[] {
  const outline = { ...loopOf(points), corners: [] };
  const { outlines } = outlineOffset(outline, distance, 'square');
  return outlines.map((one) => one.points.map(({ x, y }): Corner => [x, y]));
}

/** The outline of a part with its openings, as drawn; a rectangle where it has none. */
export function partLoops({ points, holes = [], length, width }: Part): Loops {
  const box: readonly Corner[] = [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ];
  return { outer: points ?? box, holes };
}

/** The loops grown by half a kerf on every side: grown parts may touch. */
export function grownLoops(loops: Loops, kerf: number): Loops {
  if (kerf <= 0) return loops;
  const [outer] = offset(loops.outer, kerf / 2);
  return {
    outer: outer ?? loops.outer,
    holes: loops.holes.flatMap((hole) => offset(hole, -kerf / 2)),
  };
}

/** Area of the material in a part, mm². */
export function loopsArea({ outer, holes }: Loops): number {
  const area = (loop: readonly Corner[]): number =>
    Math.abs(signedArea(loop.map(([x, y]) => ({ x, y }))));
  return holes.reduce((sum, hole) => sum - area(hole), area(outer));
}

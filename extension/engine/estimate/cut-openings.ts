import { boxAround, type Point } from '../geometry/outline.ts';
import { shapeOutline } from '../geometry/shape-outline.ts';
import type { Shape } from '../geometry/shape.ts';
import { length } from '../units/dimension.ts';
import type { AnsweredRow, Answers } from '../workbook/answers.ts';
import { partOpening } from '../workbook/part-opening.ts';
import { baseIn, shapeIn, wordIn } from './cells.ts';

type Loop = readonly (readonly [number, number])[];

/** Curves are cut from straight pieces that stray at most this far, mm. */
export const cutTolerance = 0.1;

function loopOf(shape: Shape, { x, y }: Point): Loop {
  return shapeOutline(shape, cutTolerance).points.map((point) => [point.x + x, point.y + y]);
}

/**
 * What falls out of a part when it is cut: the round opening of a baffle, grille frame or bezel in its
 * middle, and the holes that stand on a base, where its own outline says; mm.
 */
export function cutOpenings(row: AnsweredRow, answers: Answers): readonly Loop[] {
  const shape = shapeIn(row, 'shape');
  if (shape === undefined) return [];
  const diameter = partOpening(row, answers) ?? 0;
  if (diameter > 0) {
    const { left, right, bottom, top } = boxAround(shapeOutline(shape, cutTolerance).points);
    const middle = { x: (left + right) / 2, y: (bottom + top) / 2 };
    const fits = diameter < Math.min(right - left, top - bottom);
    return fits ? [loopOf({ kind: 'circle', diameter }, middle)] : [];
  }
  if (row.kind !== 'base') return [];
  return answers.rows('part').flatMap((hole) => {
    if (hole.broken || hole.kind !== 'hole' || wordIn(hole, 'on') !== row.id) return [];
    const own = shapeIn(hole, 'shape');
    const [x, y] = [baseIn(hole, 'at_x', length), baseIn(hole, 'at_y', length)];
    return own === undefined || x === undefined || y === undefined ? [] : [loopOf(own, { x, y })];
  });
}

import { dualsFor } from '../rectangles/duals.ts';
import type { Panel, Roll } from './skyline.ts';

/**
 * Length of roll that no layout can do with less than: the longest panel, or the lengths weighed by a
 * dual feasible function of the widths (panels of more than half the width never lie side by side).
 */
export function leastLength(panels: readonly Panel[], roll: Roll): number {
  let least = 0;
  for (const { along, across, turns } of panels) {
    least = Math.max(least, turns ? Math.min(along, across) : along);
  }
  const shares = panels.flatMap(({ along, across, turns }) =>
    turns ? [across / roll.width, along / roll.width] : [across / roll.width],
  );
  for (const dual of dualsFor(shares.filter((share) => share <= 1))) {
    let sum = 0;
    for (const { along, across, turns } of panels) {
      const straight = across > roll.width ? Infinity : dual(across / roll.width) * along;
      const turned = turns ? dual(along / roll.width) * across : Infinity;
      sum += Math.min(straight, turned);
    }
    least = Math.max(least, sum);
  }
  return Math.ceil(least - 1e-3);
}

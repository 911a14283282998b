import { boxAround, type Point } from '../geometry/outline.ts';
import { isPlain } from '../geometry/shape.ts';
import { shapeIn } from '../workbook/row-cells.ts';
import type { PicturedPanel, PicturedRing } from './pictured-panel.ts';

/** Whether a ring's place is known: it says so itself, or it is alone in the middle of a plain outline. */
function isKnown({ placed }: PicturedRing, { row, rings }: PicturedPanel): boolean {
  const shape = shapeIn(row, 'shape');
  return placed || (rings.length === 1 && shape !== undefined && isPlain(shape));
}

/**
 * A panel for a picture in which rings that do not say where they stand lie side by side, to be dragged
 * to their places, instead of on top of each other; what they are is marked by `placed`.
 */
export function parkedPanel(panel: PicturedPanel): PicturedPanel {
  const open = panel.rings.filter((one) => !isKnown(one, panel));
  if (open.length === 0) return { ...panel, rings: panel.rings.map(known) };
  const { left, right, bottom, top } = boxAround(panel.outline.points);
  const spots = new Map(
    open.map((one, index): [PicturedRing, Point] => [
      one,
      {
        x: left + ((right - left) * (index + 1)) / (open.length + 1),
        y: (bottom + top) / 2,
      },
    ]),
  );
  const rings = panel.rings.map((one) => {
    const centre = spots.get(one);
    return centre === undefined ? known(one) : { ...one, ring: { ...one.ring, centre } };
  });
  const holes = panel.holes.map((hole) => {
    const over = open.find(({ row }) => row === hole.under);
    const spot = over && spots.get(over);
    if (over === undefined || spot === undefined) return hole;
    const { x, y } = over.ring.centre;
    const centre = { x: hole.centre.x + spot.x - x, y: hole.centre.y + spot.y - y };
    return { ...hole, centre };
  });
  return { ...panel, rings, holes };
}

function known(one: PicturedRing): PicturedRing {
  return one.placed ? one : { ...one, placed: true };
}

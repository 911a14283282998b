import { length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import type { Point } from './outline.ts';

/** A length in mm as people see it. */
export function lengthWords(mm: number, settings: UnitSettings): string {
  return showQuantity({ base: mm, dimension: length }, settings).text;
}

/** Where a point is, from the outline's own zero: `(3 in, 4 1/2 in)`. */
export function placeWords({ x, y }: Point, settings: UnitSettings): string {
  return `(${lengthWords(x, settings)}, ${lengthWords(y, settings)})`;
}

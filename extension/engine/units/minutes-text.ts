import { time } from './dimension.ts';
import type { UnitSettings } from './quantity.ts';
import { showQuantity } from './show.ts';

/** Minutes as people read them: `26 h 55 min`. */
export function minutesText(minutes: number, settings: UnitSettings): string {
  return showQuantity({ base: minutes, dimension: time }, settings).text;
}

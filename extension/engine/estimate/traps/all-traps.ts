import { blankTraps, boardTraps } from './board-traps.ts';
import { driverTraps } from './driver-traps.ts';
import { glueTraps } from './glue-traps.ts';
import { mixTraps } from './mix-traps.ts';
import { glassTraps, ounceTraps } from './ounce-traps.ts';
import { outlineTraps } from './outline-traps.ts';
import { priceTraps } from './price-traps.ts';
import { ringTraps } from './ring-traps.ts';
import { shareTraps } from './share-traps.ts';
import { skinTraps } from './skin-traps.ts';
import type { Trap } from './trap.ts';

/** Every trap of the trade that is caught by name. */
export const allTraps: readonly Trap[] = [
  ...ounceTraps,
  ...glassTraps,
  ...mixTraps,
  ...glueTraps,
  ...priceTraps,
  ...shareTraps,
  ...driverTraps,
  ...ringTraps,
  ...boardTraps,
  ...blankTraps,
  ...skinTraps,
  ...outlineTraps,
];

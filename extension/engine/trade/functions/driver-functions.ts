import type { FunctionEntry } from '../../formula/catalogue.ts';
import { angle, length } from '../../units/dimension.ts';
import { needed, optional } from '../arguments.ts';
import { driverClearance, driverReach, ringDepth } from '../driver-room.ts';
import { quantityFunction } from '../quantity-function.ts';
import { shimHeight } from '../rings.ts';

const depthHelp = 'Mounting depth of the driver, seat to back of magnet.';
const behindHelp = 'Room from the base plane back to what is in the way.';
const tilt = needed('tilt', angle, 'How far the ring leans from flat.');
const magnet = needed('magnet', length, 'Diameter of the magnet.');

/** Room for a driver in a leaning ring. */
export const driverFunctions: readonly FunctionEntry[] = [
  quantityFunction({
    name: 'RING.DEPTH',
    group: 'rings',
    help: 'Centre depth of a ring that keeps a driver and the corner of its magnet clear of what lies behind; 0 where no ring is needed.',
    parameters: [
      needed('driver_depth', length, depthHelp),
      needed('behind', length, behindHelp),
      needed('clearance', length, 'Room to keep.'),
      optional(
        { name: 'tilt', dimension: angle, help: 'How far the ring leans; none when left out.' },
        0,
      ),
      optional(
        {
          name: 'magnet',
          dimension: length,
          help: 'Diameter of the magnet; a point when left out.',
        },
        0,
      ),
    ],
    dimension: length,
    example: { formula: '=RING.DEPTH(2 3/4in, 2in, 1/4in, 15deg, 3 1/2in)', shows: '≈ 1 3/8 in' },
    source: 'geometry',
    ranges: { driver_depth: 'positive', tilt: 'tilt', behind: 'any' },
    answer: ({ driver_depth, behind, clearance, tilt, magnet }) =>
      ringDepth({ behind, clearance }, { depth: driver_depth, magnet, tilt }),
  }),
  quantityFunction({
    name: 'SHIM.HEIGHT',
    group: 'rings',
    help: 'Height of a shim under a flat ring that leans, at a station round it.',
    parameters: [
      needed('size', length, 'Outside diameter of the ring.'),
      tilt,
      optional(
        {
          name: 'station',
          dimension: angle,
          help: 'Angle round the ring from its low point; 180deg (the high point) when left out.',
        },
        Math.PI,
      ),
    ],
    dimension: length,
    example: { formula: '=SHIM.HEIGHT(7 1/2in, 15deg)', shows: '1 15/16 in' },
    source: 'geometry',
    ranges: { size: 'positive', tilt: 'tilt', station: 'any' },
    answer: ({ size, tilt: lean, station }) => shimHeight(size, lean, station),
  }),
  quantityFunction({
    name: 'DRIVER.CLEARANCE',
    group: 'rings',
    help: 'Room left between the corner of a driver’s magnet and what lies behind; below nothing where they meet.',
    parameters: [
      needed('centre_depth', length, 'From the base plane to the seat, at the centre.'),
      needed('driver_depth', length, depthHelp),
      magnet,
      tilt,
      needed('behind', length, behindHelp),
    ],
    dimension: length,
    example: {
      formula: '=DRIVER.CLEARANCE(2in, 2 3/4in, 3 1/2in, 15deg, 3in)',
      shows: '≈ 1 7/8 in',
    },
    source: 'geometry',
    ranges: { driver_depth: 'positive', tilt: 'tilt', behind: 'any' },
    answer: ({ centre_depth, driver_depth, magnet: size, tilt: lean, behind }) =>
      driverClearance(centre_depth, behind, { depth: driver_depth, magnet: size, tilt: lean }),
  }),
  quantityFunction({
    name: 'DRIVER.REACH',
    group: 'rings',
    help: 'How far the corner of the magnet swings sideways from the foot of the ring’s axis.',
    parameters: [needed('driver_depth', length, depthHelp), magnet, tilt],
    dimension: length,
    example: { formula: '=DRIVER.REACH(2 3/4in, 3 1/2in, 15deg)', shows: '≈ 2 3/8 in' },
    source: 'geometry',
    ranges: { driver_depth: 'positive', tilt: 'tilt' },
    answer: ({ driver_depth, magnet: size, tilt: lean }) =>
      driverReach({ depth: driver_depth, magnet: size, tilt: lean }),
  }),
];

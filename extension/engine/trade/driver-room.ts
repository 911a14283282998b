/** A driver as it hangs in a leaning ring: sizes in mm, tilt in radians. */
export interface HungDriver {
  /** Mounting depth, from the seat to the back of the magnet. */
  readonly depth: number;
  /** Diameter of the magnet. */
  readonly magnet: number;
  readonly tilt: number;
}

/** How far the lower corner of the magnet lies behind the centre of the seat, in mm. */
function cornerDepth({ depth, magnet, tilt }: HungDriver): number {
  return depth * Math.cos(tilt) + (magnet / 2) * Math.sin(tilt);
}

/**
 * Room between the magnet's lower corner and what lies `behind` the base plane, in mm; below 0 where
 * the two collide.
 *
 * @source geometry
 * @example centre depth 2 in, driver 2 3/4 in deep, magnet 3 1/2 in, 15°, 3 in behind: 1.89077 in
 */
export function driverClearance(centreDepth: number, behind: number, driver: HungDriver): number {
  return behind + centreDepth - cornerDepth(driver);
}

/**
 * Centre depth of a ring that leaves `clearance` between the magnet and what lies `behind` the base
 * plane, in mm; 0 where the driver has that room without a ring.
 *
 * @source geometry; the inverse of `driverClearance`
 */
export function ringDepth(
  room: { readonly behind: number; readonly clearance: number },
  driver: HungDriver,
): number {
  return Math.max(0, cornerDepth(driver) + room.clearance - room.behind);
}

/**
 * How far the corner of the magnet swings sideways from the axis foot of the ring, in mm.
 *
 * @source geometry
 * @example driver 2 3/4 in deep, magnet 3 1/2 in, 15°: 2.40212 in
 */
export function driverReach({ depth, magnet, tilt }: HungDriver): number {
  return depth * Math.sin(tilt) + (magnet / 2) * Math.cos(tilt);
}

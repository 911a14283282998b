import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  driverClearance,
  driverReach,
  ringDepth,
} from '../../../extension/engine/trade/driver-room.ts';

const degrees = Math.PI / 180;
const sizes = fc.double({ min: 1, max: 200, noNaN: true });
const drivers = fc.record({
  depth: sizes,
  magnet: sizes,
  tilt: fc.double({ min: 0, max: 80, noNaN: true }).map((tilt) => tilt * degrees),
});

// Centre depth 2, driver 2.75 deep, magnet 3.5 across, 15°, 3 behind the base; worked by hand.
const worked = { depth: 2.75, magnet: 3.5, tilt: 15 * degrees };

describe('driverClearance', () => {
  test('the worked driver has 1.89077 left behind its magnet', () => {
    expect(Math.abs(driverClearance(2, 3, worked) - 1.89077)).toBeLessThan(1e-5);
  });

  test('without a lean only the depth counts', () => {
    expect(driverClearance(2, 3, { ...worked, tilt: 0 })).toBe(2.25);
  });
});

describe('driverReach', () => {
  test('the corner of the worked magnet swings out 2.40212', () => {
    expect(Math.abs(driverReach(worked) - 2.40212)).toBeLessThan(1e-5);
  });
});

describe('ringDepth', () => {
  test('at its depth the driver has just the clearance, or more where no ring is needed', () => {
    fc.assert(
      fc.property(drivers, sizes, sizes, (driver, behind, clearance) => {
        const depth = ringDepth({ behind, clearance }, driver);
        const left = driverClearance(depth, behind, driver);
        if (depth > 0) expect(left).toBeCloseTo(clearance, 8);
        else expect(left).toBeGreaterThanOrEqual(clearance - 1e-9);
      }),
    );
  });

  test('a deeper driver never takes a shallower ring', () => {
    fc.assert(
      fc.property(drivers, sizes, (driver, more) => {
        const room = { behind: 50, clearance: 6 };
        const deeper = { ...driver, depth: driver.depth + more };
        expect(ringDepth(room, deeper)).toBeGreaterThanOrEqual(ringDepth(room, driver));
      }),
    );
  });
});

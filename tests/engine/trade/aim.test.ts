import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  aimBetween,
  aimDistance,
  aimOffAxis,
  aimTilt,
  aimTurn,
  offAxisLevel,
} from '../../../extension/engine/trade/aim.ts';

const besselValues = [
  [99.9, -0.0788331663241558],
  [100.1, -0.0746888759464873],
  [1000, 0.0047283119070895],
] as const;

const length = fc.integer({ min: -1000, max: 1000 });
const ears = fc.record({ x: length, y: length, z: fc.integer({ min: 1, max: 1000 }) });

describe('aimTilt and aimTurn', () => {
  test('a driver that leans by them points at the ear', () => {
    fc.assert(
      fc.property(ears, (ear) => {
        // The arc cosine of nearly 1 is coarse: a hundred-thousandth of a degree.
        expect(aimOffAxis(ear, aimTilt(ear), aimTurn(ear))).toBeCloseTo(0, 6);
      }),
    );
  });

  test.each([
    ['straight up', { x: 0, y: 9, z: 1 }, 0],
    ['to the rear', { x: 9, y: 0, z: 1 }, 90],
    ['straight down', { x: 0, y: -9, z: 1 }, 180],
    ['to the front', { x: -9, y: 0, z: 1 }, -90],
  ])('an ear %s: turned as a ring is turned, from straight up towards the rear', (_, ear, turn) => {
    expect((aimTurn(ear) * 180) / Math.PI).toBeCloseTo(turn, 12);
  });

  test('straight out of the panel there is no lean', () => {
    expect(aimTilt({ x: 0, y: 0, z: 5 })).toBe(0);
    expect(aimTurn({ x: 0, y: 0, z: 5 })).toBe(0);
  });
});

describe('aimBetween', () => {
  test('both ears are equally far off the axis', () => {
    fc.assert(
      fc.property(ears, ears, (a, b) => {
        const between = aimBetween(a, b);
        const [tilt, turn] = [aimTilt(between), aimTurn(between)];
        expect(aimOffAxis(a, tilt, turn)).toBeCloseTo(aimOffAxis(b, tilt, turn), 6);
      }),
    );
  });
});

describe('aimDistance', () => {
  test('3, 4 and 12 are 13 away', () => {
    expect(aimDistance({ x: 3, y: 4, z: 12 })).toBe(13);
  });
});

describe('offAxisLevel', () => {
  // J1 of 99.9, 100.1 and 1000 by GNU bc's j(1, x): where the series takes over, and far behind.
  test.each(besselValues)('2·J1(x)/x at x = %f', (x, expected) => {
    const wave = 343.2 * 1000 * 60;
    const level = offAxisLevel(x / Math.PI, wave, Math.PI / 2);
    expect(level).toBeCloseTo(20 * Math.log10(Math.abs((2 * expected) / x)), 9);
  });

  test('however large a cone or high a pitch is, there is an answer', () => {
    expect(offAxisLevel(1e12, 1e12, 0.3)).toBeLessThan(-300);
    expect(offAxisLevel(2.54e301, 6e304, 0.2)).toBe(-Infinity);
  });

  test('a larger cone loses more at the same angle, before its first null', () => {
    const twoKilohertz = 2000 * 60;
    const levels = [0, 30, 65, 100, 130].map((cone) => offAxisLevel(cone, twoKilohertz, 0.5));
    expect(levels[0]).toBe(0);
    expect([...levels].sort((a, b) => b - a)).toEqual(levels);
  });

  test('the first null is where x is 3.8317 (first zero of J1)', () => {
    const cone = 100;
    const frequency = (3.8317059702 * 343.2 * 1000 * 60) / (Math.PI * cone);
    expect(offAxisLevel(cone, frequency, Math.PI / 2)).toBeLessThan(-180);
  });
});

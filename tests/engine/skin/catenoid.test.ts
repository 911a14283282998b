import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catenoid, wallLimit } from '../../../extension/engine/skin/catenoid.ts';

/** Area of a meridian z(r) turned about the axis, by Simpson's rule; independent of the closed form. */
function turned(waist: number, from: number, to: number): number {
  const steps = 4000;
  // z = c·acosh(r/c) has an upright tangent at r = c: r = c·cosh t has none.
  const [a, b] = [Math.acosh(from / waist), Math.acosh(to / waist)];
  const at = (t: number): number => 2 * Math.PI * waist * Math.cosh(t) * waist * Math.cosh(t);
  const step = (b - a) / steps;
  let sum = at(a) + at(b);
  for (let index = 1; index < steps; index++)
    sum += (index % 2 === 1 ? 4 : 2) * at(a + index * step);
  return (sum * step) / 3;
}

describe('catenoid', () => {
  test('a 3 3/4 in lip 2 in over an 8 in edge: waist, area, slope and volume', () => {
    const { waist, area, slope, volume } = catenoid(8, 3.75, 2);
    expect(waist).toBeCloseTo(2.3473015025, 9);
    expect(area).toBeCloseTo(172.5074909837, 8);
    expect(slope).toBeCloseTo(0.8026345965, 9);
    expect(volume).toBeCloseTo(202.4635463925, 8);
  });

  test('its area lies between the flat ring and the frustum', () => {
    const frustum = Math.PI * (8 + 3.75) * Math.hypot(8 - 3.75, 2);
    expect(frustum).toBeCloseTo(173.386428416, 8);
    expect(catenoid(8, 3.75, 2).area).toBeLessThan(frustum);
    // The ring itself, π(8² − 3.75²); a sheet of check values prints …1286 for its last digits, a misprint.
    expect(catenoid(8, 3.75, 0).area).toBeCloseTo(156.8832831386, 9);
    expect(Math.PI * (8 ** 2 - 3.75 ** 2)).not.toBeCloseTo(156.8832831286, 9);
  });

  test('a narrow band of a wide ring is a frustum but for millionths', () => {
    expect(catenoid(101, 100, 1).area).toBeCloseTo(893.0157865, 6);
    expect(Math.PI * 201 * Math.SQRT2).toBeCloseTo(893.0194706, 6);
  });

  // Equal rings of radius 1 a distance h apart: two halves, each from the waist to the ring.
  test.each([
    [0.5, 3.108112421, 0.967520846],
    [1, 5.991796976, 0.848337938],
    [1.3, 7.439781377, 0.641607602],
  ])('equal rings %d radii apart have the area %d and the waist %d', (apart, area, waist) => {
    // The waist is where the half-height is c·acosh(1/c); from there the surface leaves a wall upright.
    const half = catenoid(1, waist, waist * Math.acosh(1 / waist));
    expect(2 * waist * Math.acosh(1 / waist)).toBeCloseTo(apart, 7);
    expect(2 * half.area).toBeCloseTo(area, 7);
  });

  test('rings further apart than 1.3255 radii (0.6627 diameters) hold no surface between them', () => {
    const waists = Array.from({ length: 100_000 }, (_, index) => (index + 0.5) / 100_000);
    const furthest = Math.max(...waists.map((waist) => 2 * waist * Math.acosh(1 / waist)));
    expect(furthest).toBeCloseTo(1.3254868387, 8);
    // Brakke, "Catenoids", Susquehanna University: the ratio to the diameter.
    expect(furthest / 2).toBeCloseTo(0.6627434193, 8);
    const widest = 0.5524341245;
    expect(2 * catenoid(1, widest, widest * Math.acosh(1 / widest)).area).toBeCloseTo(
      7.5378032058,
      8,
    );
  });

  test('at 1.0554 radii apart the surface is as large as the two discs (OEIS A253545)', () => {
    let [low, high] = [0.6, 0.95];
    const areaAt = (waist: number): number =>
      2 * catenoid(1, waist, waist * Math.acosh(1 / waist)).area;
    for (let step = 0; step < 100; step++) {
      const middle = (low + high) / 2;
      if (areaAt(middle) > 2 * Math.PI) low = middle;
      else high = middle;
    }
    expect(2 * low * Math.acosh(1 / low)).toBeCloseTo(1.0553947939, 9);
    expect(low * Math.acosh(1 / low)).toBeCloseTo(0.527697397, 9);
  });

  test.each([
    [2, 1.316958],
    [3, 1.762747],
    [8, 2.768659],
  ])(
    'cloth lies on the wall of a lip %d times narrower than its edge from %d radii of height on',
    (ratio, height) => {
      expect(wallLimit(ratio, 1)).toBeCloseTo(height, 6);
      expect(catenoid(ratio, 1, height - 0.001).onWall).toBe(0);
      expect(catenoid(ratio, 1, height + 0.001).onWall).toBeGreaterThan(0);
    },
  );

  test('higher than that it is the steepest surface and so much of wall', () => {
    const limit = wallLimit(3, 1);
    const { area, volume, onWall } = catenoid(3, 1, limit + 0.5);
    expect(onWall).toBeCloseTo(0.5, 12);
    expect(area).toBeCloseTo(catenoid(3, 1, limit).area + Math.PI, 6);
    expect(volume).toBeCloseTo(catenoid(3, 1, limit).volume + 0.5 * Math.PI, 6);
  });

  test('agrees with its meridian turned by quadrature, and grows with its height', () => {
    const sizes = fc.record({
      lip: fc.double({ min: 1, max: 5, noNaN: true }),
      wider: fc.double({ min: 1.2, max: 4, noNaN: true }),
      share: fc.double({ min: 0.05, max: 0.99, noNaN: true }),
    });
    fc.assert(
      fc.property(sizes, ({ lip, wider, share }) => {
        const edge = lip * wider;
        const height = share * wallLimit(edge, lip);
        const { area, waist } = catenoid(edge, lip, height);
        expect(area / turned(waist, lip, edge)).toBeCloseTo(1, 8);
        expect(catenoid(edge, lip, height * 1.01).area).toBeGreaterThan(area);
      }),
    );
  });
});

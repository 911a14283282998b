import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { signedArea } from '../../../extension/engine/geometry/outline.ts';
import { shapeOutline } from '../../../extension/engine/geometry/shape-outline.ts';
import { catenoid } from '../../../extension/engine/skin/catenoid.ts';
import { surfaceArea } from '../../../extension/engine/skin/elements.ts';
import type { Panel } from '../../../extension/engine/skin/panel.ts';
import { panelFaults } from '../../../extension/engine/skin/panel-problems.ts';
import { restOver } from '../../../extension/engine/skin/rest.ts';
import { settleSkin } from '../../../extension/engine/skin/settle.ts';
import { degree, disc, inch, panelOf, roundrect, type RingInches } from './panels.ts';

const door = roundrect(24, 16, 2);

function figures(panel: Panel, triangles = 2000, blank = false) {
  expect(panelFaults(panel)).toEqual([]);
  return settleSkin(panel, { triangles, blank }).figures;
}

const squareInches = (area: number): number => area / inch ** 2;

/** A midbass and a tweeter at one depth and tilt, leaning along x. */
function pair(depth: number, tilt: number): readonly RingInches[] {
  return [
    { radius: 3.75, x: -4.5, y: 0, depth, tilt },
    { radius: 1.25, x: 6.5, y: 2.5, depth, tilt },
  ];
}

describe('settleSkin', () => {
  test('a round ring in the middle of a round panel is a catenoid', () => {
    const panel = panelOf(disc(8), [{ radius: 3.75, depth: 2 }]);
    const { skin, skinError, volume } = figures(panel, 5000);
    const exact = catenoid(8 * inch, 3.75 * inch, 2 * inch);
    expect(Math.abs(skin / exact.area - 1)).toBeLessThan(1e-4);
    expect(Math.abs(skin - exact.area)).toBeLessThan(2 * skinError + 1e-5 * skin);
    expect(Math.abs(volume / exact.volume - 1)).toBeLessThan(5e-4);
  });

  // Regressions of a separate solver at 107,000 triangles, extrapolated; not independent of the method.
  test.each([
    ['a door, rings 1 in deep and level', panelOf(door, pair(1, 0)), 336.23, 0.002],
    ['a door, rings 2 in deep leaning 15°', panelOf(door, pair(2, 15)), 354.34, 0.002],
    ['a door, rings 3 in deep leaning 25°', panelOf(door, pair(3, 25)), 379.55, 0.002],
    [
      'a kick panel, 3 in deep leaning 20°',
      panelOf(roundrect(12, 10, 1.5), [{ radius: 3.75, depth: 3, tilt: 20 }]),
      120.83,
      0.003,
    ],
    [
      'a tweeter pod, 3 in deep leaning 20°',
      panelOf(roundrect(6, 5, 1), [{ radius: 1.25, depth: 3, tilt: 20 }]),
      42.66,
      0.015,
    ],
  ])('%s has its area', (_, panel, area, tolerance) => {
    expect(Math.abs(squareInches(figures(panel).skin) / area - 1)).toBeLessThan(tolerance);
  });

  test('without rings the skin is its base, flat', () => {
    const { skin, skinError, volume, slope } = figures(panelOf(door, []));
    expect(squareInches(skin)).toBeCloseTo(380.566, 2);
    expect(skinError).toBeCloseTo(0, 6);
    expect(volume).toBe(0);
    expect(slope).toBe(0);
  });

  test('lies between its plan and its plan with upright walls', () => {
    const panel = panelOf(door, pair(2, 15));
    const { plan, skin } = figures(panel);
    const walls = 2 * Math.PI * (3.75 + 1.25) * inch * 2 * inch;
    expect(skin).toBeGreaterThan(plan);
    expect(skin).toBeLessThan(plan + walls);
  });

  test('turned in its plane, or mirrored, a panel keeps its skin', () => {
    const turned = (by: number, mirror: 1 | -1): Panel => {
      const panel = panelOf(door, pair(2, 15));
      const [cos, sin] = [Math.cos(by * degree), Math.sin(by * degree)];
      const move = ({ x, y }: { x: number; y: number }) => ({
        x: mirror * (x * cos - y * sin),
        y: x * sin + y * cos,
      });
      const points = panel.outline.points.map(move);
      const lean = (ring: { lean: number }): number =>
        mirror === 1 ? ring.lean + by * degree : Math.PI - ring.lean - by * degree;
      return {
        ...panel,
        outline: { points: mirror === 1 ? points : points.reverse(), corners: [] },
        rings: panel.rings.map((ring) => ({
          ...ring,
          centre: move(ring.centre),
          lean: lean(ring),
        })),
      };
    };
    const { skin } = figures(turned(0, 1));
    for (const [by, mirror] of [
      [30, 1],
      [90, 1],
      [0, -1],
      [17, -1],
    ] as const)
      expect(Math.abs(figures(turned(by, mirror)).skin / skin - 1)).toBeLessThan(3e-4);
  });

  test('twice as large in all it has four times the skin and eight times the room', () => {
    const small = figures(panelOf(door, pair(2, 15)));
    const large = figures(
      panelOf(
        roundrect(48, 32, 4),
        pair(4, 15).map((ring) => ({
          ...ring,
          radius: 2 * ring.radius,
          x: 2 * (ring.x ?? 0),
          y: 2 * (ring.y ?? 0),
        })),
      ),
    );
    expect(large.skin / small.skin).toBeCloseTo(4, 3);
    expect(large.volume / small.volume).toBeCloseTo(8, 2);
    expect(large.slope).toBeCloseTo(small.slope, 2);
  });

  test('the blank of a door 2 in deep leaning 15° is 25 × 16 2/3 in and must give 19 %', () => {
    const found = figures(panelOf(door, pair(2, 15)), 2000, true);
    // Regression of a separate flattening (local/global), stable to 0.3 % from 2,000 to 9,500 triangles.
    expect(found.blankLength / inch).toBeCloseTo(25, 1);
    expect(found.blankWidth / inch).toBeCloseTo(16.66, 1);
    expect(found.stretch).toBeCloseTo(1.19, 2);
  });

  test('cloth over a narrow deep ring lies on its wall, over a wide shallow one it does not', () => {
    const pod = panelOf(roundrect(6, 5, 1), [{ radius: 1.25, depth: 3, tilt: 20 }]);
    expect(figures(pod).hugs).toHaveLength(1);
    expect(figures(panelOf(door, pair(1, 0))).hugs).toEqual([]);
  });

  test('cloth bears on a block that stands higher than it would hang', () => {
    const panel = panelOf(door, [{ radius: 3, x: -6, depth: 2 }]);
    const outline = panelOf(roundrect(4, 4, 0.5), []).outline;
    const at = { points: outline.points.map(({ x, y }) => ({ x: x + 6 * inch, y })), corners: [] };
    const free = figures(panel);
    const held = figures({ ...panel, blocks: [{ id: 'arm', outline: at, height: 1.5 * inch }] });
    expect(free.bears).toEqual([]);
    expect(held.bears).toEqual(['arm']);
    expect(held.skin).toBeGreaterThan(free.skin);
    expect(held.volume).toBeGreaterThan(
      free.volume + 0.9 * signedArea(at.points) * 1.5 * inch * 0.5,
    );
  });

  test('a wall that is square to its lip holds the cloth out on the high side', () => {
    const upright = panelOf(door, [{ radius: 3.75, depth: 3, tilt: 20 }]);
    const square = panelOf(door, [{ radius: 3.75, depth: 3, tilt: 20, build: 'square_wall' }]);
    const [under, out] = [figures(upright), figures(square)];
    expect(out.skin).toBeGreaterThanOrEqual(under.skin - under.skinError);
    expect(out.volume).toBeGreaterThanOrEqual(under.volume * 0.999);
  });

  test('room to a limit is what is over the highest place under it', () => {
    const panel = panelOf(door, [{ radius: 3.75, depth: 2 }]);
    const limit = { id: 'seat', outline: panel.outline, height: 3 * inch };
    const { clearance, limit: nearest } = figures({ ...panel, limits: [limit], build: 0 });
    expect(nearest).toBe('seat');
    expect(clearance / inch).toBeCloseTo(1, 3);
    const thick = figures({ ...panel, limits: [limit], build: 0.25 * inch });
    expect(thick.clearance).toBeLessThan(clearance - 0.25 * inch + 1e-6);
  });

  test('the same panel has the same figures to the last digit', () => {
    const panel = panelOf(door, pair(2, 15));
    expect(figures(panel, 800, true)).toEqual(figures(panel, 800, true));
  });

  test('400 random panels come to rest, each within its bounds', () => {
    const ring = fc.record({
      radius: fc.double({ min: 0.8, max: 3.2, noNaN: true }),
      x: fc.double({ min: -8, max: 8, noNaN: true }),
      y: fc.double({ min: -5, max: 5, noNaN: true }),
      depth: fc.double({ min: 0.3, max: 4, noNaN: true }),
      tilt: fc.double({ min: 0, max: 25, noNaN: true }),
      lean: fc.double({ min: 0, max: 360, noNaN: true }),
      build: fc.constantFrom(
        'round_baffle' as const,
        'round_tube' as const,
        'square_wall' as const,
      ),
    });
    const shape = fc.constantFrom(
      door,
      disc(9),
      { kind: 'oval' as const, length: 24 * inch, width: 15 * inch },
      { kind: 'rect' as const, length: 22 * inch, width: 14 * inch },
    );
    let solved = 0;
    fc.assert(
      fc.property(shape, fc.array(ring, { minLength: 1, maxLength: 3 }), (base, rings) => {
        const panel = { ...panelOf(base, rings), outline: shapeOutline(base, 0.05) };
        // What cannot be built is told before anything is meshed.
        if (panelFaults(panel).length > 0) return;
        const { settled, heights, elements } = restOver(panel, 300);
        solved += 1;
        expect(settled).toBe(true);
        const plan = elements.areas.reduce((sum, area) => sum + area, 0);
        const skin = surfaceArea(elements, heights);
        expect(skin).toBeGreaterThanOrEqual(plan);
        const walls = panel.rings.reduce((sum, { shape, depth, tilt }) => {
          // No higher than the high side, round a foot that a leaning wall stretches.
          const across = shape.kind === 'circle' ? shape.diameter / Math.cos(tilt) : 0;
          return sum + Math.PI * across * (depth + across * Math.tan(tilt)) * 1.2;
        }, 0);
        expect(skin).toBeLessThanOrEqual(plan + walls);
        expect(Math.min(...heights)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 1600, seed: 20261125 },
    );
    expect(solved).toBeGreaterThanOrEqual(400);
  }, 120_000);
});

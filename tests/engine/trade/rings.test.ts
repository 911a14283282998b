import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PlainShape } from '../../../extension/engine/geometry/shape.ts';
import {
  ringBuilds,
  ringHigh,
  ringLeastDepth,
  ringLow,
  ringOutline,
  ringShadowArea,
  ringStripLength,
  ringTightestRadius,
  ringVolume,
  ringWallArea,
  shimHeight,
  type RingForm,
} from '../../../extension/engine/trade/rings.ts';

const degrees = Math.PI / 180;
const sizes = fc.double({ min: 40, max: 400, noNaN: true });
const tilts = fc.double({ min: 0, max: 60, noNaN: true }).map((tilt) => tilt * degrees);
const depths = fc.double({ min: 0, max: 200, noNaN: true });
const shapes: fc.Arbitrary<PlainShape> = fc.oneof(
  sizes.map((diameter): PlainShape => ({ kind: 'circle', diameter })),
  fc.tuple(sizes, sizes).map(([length, width]): PlainShape => ({ kind: 'oval', length, width })),
  fc.tuple(sizes, sizes).map(([length, width]): PlainShape => {
    return { kind: 'roundrect', length, width, radius: Math.min(length, width) / 4 };
  }),
);
const forms: fc.Arbitrary<RingForm> = fc.record({
  shape: shapes,
  tilt: tilts,
  build: fc.constantFrom(...ringBuilds),
});

// Worked by closed forms for radius 3.75, centre depth 2, 15°; the unit does not matter.
const circle: PlainShape = { kind: 'circle', diameter: 7.5 };
const leaning = (build: RingForm['build']): RingForm => ({
  shape: circle,
  tilt: 15 * degrees,
  build,
});

describe('a ring of radius 3.75 that leans 15° over a centre depth of 2', () => {
  test.each([
    ['round_tube', 0.99519, 3.00481, 23.56194, 47.1239],
    ['round_baffle', 1.02943, 2.97057, 23.16226, 46.3245],
    ['square_wall', 1.06574, 3.07536, 23.56194, 48.7862],
  ] as const)('%s: low, high, strip and wall', (build, ...expected) => {
    const [low, high, strip, wall] = expected as [number, number, number, number];
    const form = leaning(build);
    expect(Math.abs(ringLow(2, form) - low)).toBeLessThan(1e-5);
    expect(Math.abs(ringHigh(2, form) - high)).toBeLessThan(1e-5);
    expect(Math.abs(ringOutline(form) - strip)).toBeLessThan(1e-5);
    expect(Math.abs(ringWallArea(2, form) - wall)).toBeLessThan(1e-4);
  });

  test('the wall of a round baffle is tightest at the ends of its long axis', () => {
    expect(ringTightestRadius(leaning('round_baffle'))).toBeCloseTo(
      3.75 * Math.cos(15 * degrees) ** 2,
      12,
    );
    expect(ringTightestRadius(leaning('round_tube'))).toBe(3.75);
  });
});

/** Area of the wall added up from narrow upright slices round the outline, as no formula does it. */
function slicedWall(depth: number, form: RingForm & { shape: { kind: 'circle' } }): number {
  const radius = form.shape.diameter / 2;
  const lean = form.build === 'round_baffle' ? Math.cos(form.tilt) : 1;
  const rise = form.build === 'round_baffle' ? Math.sin(form.tilt) : Math.tan(form.tilt);
  const count = 20_000;
  let area = 0;
  for (let slice = 0; slice < count; slice++) {
    const angle = (2 * Math.PI * (slice + 0.5)) / count;
    const width = Math.hypot(lean * Math.sin(angle), Math.cos(angle)) * ((2 * Math.PI) / count);
    area += radius * width * (depth - radius * rise * Math.cos(angle));
  }
  return area;
}

describe('ringWallArea', () => {
  test.each(['round_baffle', 'round_tube'] as const)(
    'the wall of a %s is the sum of its slices',
    (build) => {
      const shape = { kind: 'circle', diameter: 190 } as const;
      const form = { shape, tilt: 20 * degrees, build };
      expect(ringWallArea(60, form) / slicedWall(60, form)).toBeCloseTo(1, 6);
    },
  );

  test('without a lean it is outline times depth, whatever the build', () => {
    fc.assert(
      fc.property(shapes, depths, (shape, depth) => {
        const [first, ...others] = ringBuilds.map((build) =>
          ringWallArea(depth, { shape, tilt: 0, build }),
        ) as [number, number, number];
        for (const other of others) expect(other).toBeCloseTo(first, 6);
      }),
    );
  });
});

describe('ringLow and ringHigh', () => {
  test('leaning further never makes the high side lower or the low side higher', () => {
    fc.assert(
      fc.property(forms, depths, tilts, (form, depth, other) => {
        const [less, more] = [Math.min(form.tilt, other), Math.max(form.tilt, other)];
        const [flat, steep] = [
          { ...form, tilt: less },
          { ...form, tilt: more },
        ];
        expect(ringHigh(depth, steep)).toBeGreaterThanOrEqual(ringHigh(depth, flat) - 1e-9);
        if (form.build === 'square_wall') return; // its wall itself grows longer as it leans
        expect(ringLow(depth, steep)).toBeLessThanOrEqual(ringLow(depth, flat) + 1e-9);
      }),
    );
  });

  test('low and high are the same distance from the middle', () => {
    fc.assert(
      fc.property(forms, depths, (form, depth) => {
        const middle = form.build === 'square_wall' ? depth / Math.cos(form.tilt) : depth;
        expect((ringLow(depth, form) + ringHigh(depth, form)) / 2).toBeCloseTo(middle, 9);
      }),
    );
  });
});

describe('ringLeastDepth', () => {
  test('at the least depth the low side has just the height that was asked for', () => {
    fc.assert(
      fc.property(forms, depths, (form, low) => {
        expect(ringLow(ringLeastDepth(low, form), form)).toBeCloseTo(low, 8);
      }),
    );
  });
});

describe('ringOutline', () => {
  test('a leaning lip shortens the wall under it, never below the flat shape’s cosine', () => {
    fc.assert(
      fc.property(shapes, tilts, (shape, tilt) => {
        const upright = ringOutline({ shape, tilt, build: 'round_tube' });
        const under = ringOutline({ shape, tilt, build: 'round_baffle' });
        expect(under).toBeLessThanOrEqual(upright * (1 + 1e-9));
        expect(under).toBeGreaterThanOrEqual(upright * Math.cos(tilt) * (1 - 1e-9));
      }),
    );
  });

  test('a rounded rectangle whose corners fill it is a circle', () => {
    const round: PlainShape = { kind: 'roundrect', length: 200, width: 200, radius: 100 };
    const form = { tilt: 20 * degrees, build: 'round_baffle' } as const;
    expect(ringOutline({ ...form, shape: round })).toBeCloseTo(
      ringOutline({ ...form, shape: { kind: 'circle', diameter: 200 } }),
      9,
    );
  });

  test('a rectangle shortens only along its lean', () => {
    const shape: PlainShape = { kind: 'rect', length: 200, width: 100 };
    expect(ringOutline({ shape, tilt: 60 * degrees, build: 'round_baffle' })).toBeCloseTo(400, 9);
    expect(ringTightestRadius({ shape, tilt: 0, build: 'round_tube' })).toBe(0);
  });
});

describe('ringStripLength', () => {
  test('an 8 in ring of 1/8 in strip takes π × 7 7/8 in, and the lap', () => {
    const form: RingForm = {
      shape: { kind: 'circle', diameter: 8 },
      tilt: 0,
      build: 'round_baffle',
    };
    expect(ringStripLength(form, { thickness: 0.125, lap: 0 })).toBeCloseTo(7.875 * Math.PI, 12);
    expect(ringStripLength(form, { thickness: 0.125, lap: 1 })).toBeCloseTo(
      7.875 * Math.PI + 1,
      12,
    );
  });
});

describe('ringShadowArea and ringVolume', () => {
  test('an upright wall encloses what its lip hides, times the depth', () => {
    fc.assert(
      fc.property(forms, depths, (form, depth) => {
        fc.pre(form.build !== 'square_wall');
        const product = ringShadowArea(form) * depth;
        expect(Math.abs(ringVolume(depth, form) - product)).toBeLessThanOrEqual(product * 1e-9);
      }),
    );
  });

  test('a leaning wall encloses its cross-section times its slanting height', () => {
    const form = leaning('square_wall');
    const slant = 2 / Math.cos(15 * degrees);
    expect(ringVolume(2, form)).toBeCloseTo(Math.PI * 3.75 ** 2 * slant, 9);
  });
});

describe('shimHeight', () => {
  // (D/2) sin a (1 − cos θ) for D 7.5 and 15°, worked by hand.
  test.each([
    [0, 0],
    [60, 0.4853],
    [90, 0.9706],
    [120, 1.4559],
    [180, 1.9411],
  ])('at %d° round from the low point it is %d', (station, height) => {
    expect(shimHeight(7.5, 15 * degrees, station * degrees)).toBeCloseTo(height, 4);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { signedArea, type Point } from '../../../extension/engine/geometry/outline.ts';
import { outlineOffset } from '../../../extension/engine/geometry/outline-offset.ts';
import { soundOutline } from '../../../extension/engine/geometry/sound-outline.ts';
import type { Outline } from '../../../extension/engine/geometry/outline.ts';

const inch = 25.4;

function outlineOf(...inches: readonly (readonly [number, number])[]): Outline {
  const sound = soundOutline(inches.map(([x, y]) => ({ x: x * inch, y: y * inch })));
  if ('kind' in sound) throw new Error(sound.kind);
  return sound;
}

function squareInches({ points }: Outline): number {
  return signedArea(points) / inch ** 2;
}

function areaGrown(outline: Outline, inches: number, corners?: 'round' | 'square'): number {
  const { outlines, holes } = outlineOffset(outline, inches * inch, corners);
  expect([outlines.length, holes.length]).toEqual([1, 0]);
  return squareInches(outlines[0] ?? outline);
}

const rectangle = outlineOf([-12, -8], [12, -8], [12, 8], [-12, 8]);

describe('outlineOffset', () => {
  // Steiner's formula for parallel curves: area + perimeter × d + π d².
  test('a 24 × 16 rectangle grown by 1 with round corners has 467.1415926536', () => {
    expect(areaGrown(rectangle, 1) / 467.1415926536 - 1).toBeCloseTo(0, 5);
  });

  test('a triangle of sides 12, 16 and 20 grown by 1 has 147.1415926536', () => {
    const triangle = outlineOf([0, 0], [16, 0], [0, 12]);
    expect(Math.abs(areaGrown(triangle, 1) / 147.1415926536 - 1)).toBeLessThan(4e-6);
  });

  test('a hexagon of radius 5 grown by 2 1/2 has 159.586859', () => {
    const corner = (index: number): readonly [number, number] => {
      const angle = (index * Math.PI) / 3;
      return [5 * Math.cos(angle), 5 * Math.sin(angle)];
    };
    const hexagon = outlineOf(...[0, 1, 2, 3, 4, 5].map(corner));
    expect(Math.abs(areaGrown(hexagon, 2.5) / 159.586859 - 1)).toBeLessThan(8e-6);
  });

  test('with square corners a 24 × 16 rectangle has 468 at 1 and 609 at 2 1/2', () => {
    expect(areaGrown(rectangle, 1, 'square')).toBeCloseTo(468, 3);
    expect(areaGrown(rectangle, 2.5, 'square')).toBeCloseTo(609, 3);
  });

  // Two 8 × 8 squares joined by a neck 4 long and 2 wide; inside by d each is (8 − 2d)² and what the
  // rounded mouth of the neck leaves. Closed form, worked out by hand.
  const dumbbell = outlineOf(
    ...([
      [0, 0],
      [8, 0],
      [8, 3],
      [12, 3],
      [12, 0],
      [20, 0],
      [20, 8],
      [12, 8],
      [12, 5],
      [8, 5],
      [8, 8],
      [0, 8],
    ] as const),
  );

  test.each([
    [1, 36.4292036732],
    [1.1, 34.0010154711],
  ])('a dumbbell falls in two %d inside its outline, of %d each', (distance, area) => {
    const { outlines } = outlineOffset(dumbbell, -distance * inch);
    expect(outlines).toHaveLength(2);
    for (const outline of outlines) {
      expect(Math.abs(squareInches(outline) / area - 1)).toBeLessThan(1e-5);
    }
  });

  test('half the width inside nothing is left', () => {
    expect(outlineOffset(rectangle, -8.01 * inch)).toEqual({ outlines: [], holes: [] });
  });

  test('a hook grown until it closes has a hole', () => {
    const hook = outlineOf(
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
      [0, 6],
      [1, 6],
      [1, 9],
      [9, 9],
      [9, 1],
      [1, 1],
      [1, 5],
      [0, 5],
    );
    expect(outlineOffset(hook, 0.6 * inch).holes).toHaveLength(1);
  });

  test('a convex outline grows by Steiner’s formula, whatever its corners', () => {
    const angles = fc.uniqueArray(fc.integer({ min: 0, max: 71 }), { minLength: 5, maxLength: 20 });
    fc.assert(
      fc.property(angles, fc.integer({ min: 1, max: 60 }), (chosen, distance) => {
        const points = [...chosen]
          .sort((a, b) => a - b)
          .map((step): Point => {
            const angle = (step * Math.PI) / 36;
            return { x: 300 * Math.cos(angle), y: 200 * Math.sin(angle) };
          });
        const sound = soundOutline(points);
        if ('kind' in sound) return;
        const perimeter = sound.points.reduce((sum, a, index) => {
          const b = sound.points[(index + 1) % sound.points.length] ?? a;
          return sum + Math.hypot(b.x - a.x, b.y - a.y);
        }, 0);
        const expected =
          signedArea(sound.points) + perimeter * distance + Math.PI * distance * distance;
        const [grown] = outlineOffset(sound, distance).outlines;
        expect(signedArea(grown?.points ?? []) / expected).toBeCloseTo(1, 4);
      }),
      { numRuns: 60 },
    );
  });
});

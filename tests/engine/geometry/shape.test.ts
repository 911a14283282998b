import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ellipsePerimeter,
  ellipseTightestRadius,
} from '../../../extension/engine/geometry/ellipse.ts';
import {
  shapeArea,
  shapeLength,
  shapePerimeter,
  shapeSizes,
  shapeWidth,
  type PlainShape,
} from '../../../extension/engine/geometry/shape.ts';

const size = fc.double({ min: 0.5, max: 3000, noNaN: true });
const shapes: fc.Arbitrary<PlainShape> = fc.oneof(
  size.map((diameter): PlainShape => ({ kind: 'circle', diameter })),
  fc.tuple(size, size).map(([length, width]): PlainShape => ({ kind: 'oval', length, width })),
  fc.tuple(size, size).map(([length, width]): PlainShape => ({ kind: 'rect', length, width })),
  fc
    .tuple(size, size, fc.double({ min: 0, max: 0.5, noNaN: true }))
    .map(([length, width, share]): PlainShape => {
      return { kind: 'roundrect', length, width, radius: Math.min(length, width) * share };
    }),
);

describe('ellipsePerimeter', () => {
  // Elliptic integral by Gauss's arithmetic-geometric mean, agreed with 4,096-point quadrature.
  test.each([
    [3, 2, 15.8654395893],
    [6, 4, 31.7308791786],
    [2, 1, 9.6884482205],
    [5, 1, 21.0100445397],
    [10, 1, 40.639741801],
  ])('half axes %d and %d: %d', (a, b, perimeter) => {
    expect(Math.abs(ellipsePerimeter(a, b) - perimeter)).toBeLessThan(1e-10);
    expect(ellipsePerimeter(b, a)).toBe(ellipsePerimeter(a, b));
  });

  test('it agrees with the sum of many short chords', () => {
    const count = 200_000;
    const chord = (a: number, b: number) => {
      let sum = 0;
      for (let step = 0; step < count; step++) {
        const [from, to] = [(2 * Math.PI * step) / count, (2 * Math.PI * (step + 1)) / count];
        const x = a * (Math.cos(to) - Math.cos(from));
        sum += Math.hypot(x, b * (Math.sin(to) - Math.sin(from)));
      }
      return sum;
    };
    expect(ellipsePerimeter(7, 1.5) / chord(7, 1.5)).toBeCloseTo(1, 8);
  });

  test('a circle has its own perimeter, a flat one twice its length', () => {
    expect(ellipsePerimeter(4, 4)).toBeCloseTo(8 * Math.PI, 12);
    expect(ellipsePerimeter(4, 0)).toBe(16);
    expect(ellipsePerimeter(0, 0)).toBe(0);
  });

  test('it lies between the circle of its mean and that of its root mean square', () => {
    fc.assert(
      fc.property(size, size, (a, b) => {
        const perimeter = ellipsePerimeter(a, b);
        expect(perimeter).toBeGreaterThanOrEqual(Math.PI * (a + b) * (1 - 1e-12));
        expect(perimeter).toBeLessThanOrEqual(
          Math.PI * Math.sqrt(2 * (a * a + b * b)) * (1 + 1e-12),
        );
      }),
    );
  });
});

describe('ellipseTightestRadius', () => {
  test('at the end of the long axis it is the short half squared by the long', () => {
    expect(ellipseTightestRadius(4, 2)).toBe(1);
    expect(ellipseTightestRadius(2, 4)).toBe(1);
    expect(ellipseTightestRadius(3, 3)).toBe(3);
    expect(ellipseTightestRadius(0, 0)).toBe(0);
  });
});

describe('shapeArea and shapePerimeter', () => {
  test('a 9 × 6 rectangle with 1 1/2 corners: 52.0685834706 and 27.4247779608 (by hand)', () => {
    const shape: PlainShape = { kind: 'roundrect', length: 9, width: 6, radius: 1.5 };
    expect(shapeArea(shape)).toBeCloseTo(54 - (4 - Math.PI) * 2.25, 12);
    expect(Math.abs(shapeArea(shape) - 52.0685834706)).toBeLessThan(1e-10);
    expect(Math.abs(shapePerimeter(shape) - 27.4247779608)).toBeLessThan(1e-10);
  });

  test('a rounded rectangle ends in the rectangle and in the circle', () => {
    expect(shapeArea({ kind: 'roundrect', length: 9, width: 6, radius: 0 })).toBe(54);
    const round: PlainShape = { kind: 'roundrect', length: 8, width: 8, radius: 4 };
    expect(shapeArea(round)).toBeCloseTo(shapeArea({ kind: 'circle', diameter: 8 }), 12);
    expect(shapePerimeter(round)).toBeCloseTo(shapePerimeter({ kind: 'circle', diameter: 8 }), 12);
  });

  test('an oval as long as wide is a circle', () => {
    const oval: PlainShape = { kind: 'oval', length: 8, width: 8 };
    expect(shapeArea(oval)).toBeCloseTo(16 * Math.PI, 12);
    expect(shapePerimeter(oval)).toBeCloseTo(8 * Math.PI, 12);
  });

  test('no outline encloses more than a circle of its length', () => {
    fc.assert(
      fc.property(shapes, (shape) => {
        const bound = shapePerimeter(shape) ** 2 / (4 * Math.PI);
        expect(shapeArea(shape)).toBeLessThanOrEqual(bound * (1 + 1e-9));
        expect(shapeArea(shape)).toBeLessThanOrEqual(
          shapeLength(shape) * shapeWidth(shape) * (1 + 1e-9),
        );
      }),
    );
  });

  test('twice the sizes are four times the area and twice the outline', () => {
    const twice = (shape: PlainShape): PlainShape => {
      if (shape.kind === 'circle') return { ...shape, diameter: 2 * shape.diameter };
      const sides = { length: 2 * shape.length, width: 2 * shape.width };
      return shape.kind === 'roundrect'
        ? { ...shape, ...sides, radius: 2 * shape.radius }
        : { ...shape, ...sides };
    };
    fc.assert(
      fc.property(shapes, (shape) => {
        expect(shapeArea(twice(shape)) / shapeArea(shape)).toBeCloseTo(4, 9);
        expect(shapePerimeter(twice(shape)) / shapePerimeter(shape)).toBeCloseTo(2, 9);
        expect(shapeSizes(twice(shape))).toEqual(shapeSizes(shape).map((one) => 2 * one));
      }),
    );
  });
});

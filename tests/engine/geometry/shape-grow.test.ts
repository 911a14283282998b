import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shapeGrown } from '../../../extension/engine/geometry/shape-grow.ts';
import { shapeArea, shapePerimeter, type Shape } from '../../../extension/engine/geometry/shape.ts';

describe('shapeGrown', () => {
  // Steiner's formula: area + perimeter × d + π d² for round joins.
  test('a 24 × 16 rectangle grown by 1 has 467.1415926536', () => {
    const grown = shapeGrown({ kind: 'rect', length: 24, width: 16 }, 1);
    expect(grown === undefined ? 0 : shapeArea(grown)).toBeCloseTo(467.1415926536, 9);
  });

  test('a circle grows and shrinks by twice the distance, to nothing at its radius', () => {
    expect(shapeGrown({ kind: 'circle', diameter: 8 }, 1)).toEqual({
      kind: 'circle',
      diameter: 10,
    });
    expect(shapeGrown({ kind: 'circle', diameter: 8 }, -4)).toBeUndefined();
  });

  test('a distance of nothing leaves every shape', () => {
    const oval: Shape = { kind: 'oval', length: 9, width: 6 };
    expect(shapeGrown(oval, 0)).toBe(oval);
    expect(shapeGrown(oval, 1)).toBeUndefined();
  });

  test('what grew shrinks back to the same shape', () => {
    const sizes = fc.integer({ min: 10, max: 400 });
    fc.assert(
      fc.property(sizes, sizes, fc.integer({ min: 1, max: 5 }), (length, width, distance) => {
        const shape: Shape = { kind: 'roundrect', length, width, radius: 2 };
        const grown = shapeGrown(shape, distance);
        expect(grown === undefined ? grown : shapeGrown(grown, -distance)).toEqual(shape);
        if (grown === undefined) return;
        const turn = 2 * Math.PI * distance;
        expect(shapePerimeter(grown)).toBeCloseTo(shapePerimeter(shape) + turn, 8);
      }),
    );
  });
});

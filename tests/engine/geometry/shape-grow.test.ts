import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { polygonShape } from '../../../extension/engine/geometry/free-shape.ts';
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
  });

  test('an oval grows to what runs alongside it, and out and out again is out by both', () => {
    const oval: Shape = { kind: 'oval', length: 90, width: 60 };
    const grown = shapeGrown(oval, 3);
    expect(grown).toMatchObject({ kind: 'grown', of: oval, distance: 3, corners: 'round' });
    const twice = grown && shapeGrown(grown, 2);
    expect(twice).toEqual(shapeGrown(oval, 5));
    const back = grown && shapeGrown(grown, -3);
    expect(back && shapeArea(back) / shapeArea(oval)).toBeCloseTo(1, 4);
  });

  test('square corners stay square where a saw cuts them', () => {
    const rect: Shape = { kind: 'rect', length: 24, width: 16 };
    expect(shapeGrown(rect, 1, 'square')).toEqual({ kind: 'rect', length: 26, width: 18 });
    const polygon = polygonShape([0, 0, 240, 0, 240, 160, 0, 160], {
      units: 'mm',
      currency: 'EUR',
    });
    const grown = polygon.ok ? shapeGrown(polygon.value, 10, 'square') : undefined;
    expect(grown && shapeArea(grown)).toBeCloseTo(260 * 180, 1);
    const round = polygon.ok ? shapeGrown(polygon.value, 10) : undefined;
    expect(round && shapeArea(round) / (240 * 160 + 8000 + 100 * Math.PI)).toBeCloseTo(1, 5);
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

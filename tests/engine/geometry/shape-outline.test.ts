import { describe, expect, test } from 'vitest';
import { shapeOutline } from '../../../extension/engine/geometry/shape-outline.ts';

/** How far the straight pieces of a circle's outline stray from it, at most, in mm. */
function stray(diameter: number, tolerance: number): number {
  const { points } = shapeOutline({ kind: 'circle', diameter }, tolerance);
  return Math.max(
    ...points.map(({ x, y }, place) => {
      const next = points[(place + 1) % points.length] ?? { x, y };
      return diameter / 2 - Math.hypot((x + next.x) / 2, (y + next.y) / 2);
    }),
  );
}

describe('shapeOutline', () => {
  test('asked for again, it is the same outline; another size, kind or tolerance has its own', () => {
    const circle = shapeOutline({ kind: 'circle', diameter: 200 });
    expect(shapeOutline({ kind: 'circle', diameter: 200 })).toBe(circle);
    expect(shapeOutline({ kind: 'circle', diameter: 201 }).points[0]).toEqual({ x: 100.5, y: 0 });
    expect(shapeOutline({ kind: 'circle', diameter: 200 }, 1).points.length).toBeLessThan(
      circle.points.length,
    );
    const rect = shapeOutline({ kind: 'rect', length: 200, width: 200 });
    const rounded = shapeOutline({ kind: 'roundrect', length: 200, width: 200, radius: 20 });
    expect(rounded.points.length).toBeGreaterThan(rect.points.length);
    expect(
      shapeOutline({ kind: 'roundrect', length: 200, width: 200, radius: 30 }).points,
    ).not.toEqual(rounded.points);
  });

  test.each([
    [50, 0.01],
    [200, 0.01],
    [200, 0.5],
    [5000, 0.005],
  ])('a circle of %d mm strays no further than %d mm', (diameter, tolerance) => {
    expect(stray(diameter, tolerance)).toBeLessThanOrEqual(tolerance * (1 + 1e-9));
  });

  test('what is larger than any ring of a car is drawn each time', () => {
    const huge = { kind: 'circle', diameter: 1e8 } as const;
    expect(shapeOutline(huge)).not.toBe(shapeOutline(huge));
  });
});

import type { Shape } from './shape.ts';

/**
 * The outline at a distance outside a shape (inside it where the distance is negative), in mm, with
 * round corners where it grows from square ones.
 *
 * @returns undefined where the outline is no plain shape (an oval's is none) or nothing is left
 */
export function shapeGrown(shape: Shape, distance: number): Shape | undefined {
  const grow = 2 * distance;
  if (distance === 0) return shape;
  switch (shape.kind) {
    case 'circle':
      return shape.diameter + grow > 0
        ? { kind: 'circle', diameter: shape.diameter + grow }
        : undefined;
    case 'oval':
      return undefined;
    default: {
      const [length, width] = [shape.length + grow, shape.width + grow];
      if (length <= 0 || width <= 0) return undefined;
      const radius = Math.max(0, (shape.kind === 'rect' ? 0 : shape.radius) + distance);
      return radius === 0
        ? { kind: 'rect', length, width }
        : { kind: 'roundrect', length, width, radius };
    }
  }
}

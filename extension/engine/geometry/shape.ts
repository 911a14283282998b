import { unreachable } from '../result.ts';
import { ellipsePerimeter } from './ellipse.ts';

/** A plain closed shape; sizes in mm. `length` lies along the row's x, `width` along its y. */
export type Shape =
  | { readonly kind: 'circle'; readonly diameter: number }
  | { readonly kind: 'oval'; readonly length: number; readonly width: number }
  | { readonly kind: 'rect'; readonly length: number; readonly width: number }
  | {
      readonly kind: 'roundrect';
      readonly length: number;
      readonly width: number;
      readonly radius: number;
    };

/** The words that make shapes, with the names of their sizes in order. */
export const shapeWords = {
  circle: ['diameter'],
  oval: ['length', 'width'],
  rect: ['length', 'width'],
  roundrect: ['length', 'width', 'radius'],
} as const satisfies Readonly<Record<Shape['kind'], readonly string[]>>;

/** Sizes of a shape in mm, in the order in which they are written. */
export function shapeSizes(shape: Shape): readonly number[] {
  switch (shape.kind) {
    case 'circle':
      return [shape.diameter];
    case 'oval':
    case 'rect':
      return [shape.length, shape.width];
    case 'roundrect':
      return [shape.length, shape.width, shape.radius];
    default:
      return unreachable(shape);
  }
}

/** Extent of a shape along its x, in mm. */
export function shapeLength(shape: Shape): number {
  return shape.kind === 'circle' ? shape.diameter : shape.length;
}

/** Extent of a shape along its y, in mm. */
export function shapeWidth(shape: Shape): number {
  return shape.kind === 'circle' ? shape.diameter : shape.width;
}

/** Area of a shape, in mm². */
export function shapeArea(shape: Shape): number {
  switch (shape.kind) {
    case 'circle':
      return (Math.PI / 4) * shape.diameter ** 2;
    case 'oval':
      return (Math.PI / 4) * shape.length * shape.width;
    case 'rect':
      return shape.length * shape.width;
    case 'roundrect':
      return shape.length * shape.width - (4 - Math.PI) * shape.radius ** 2;
    default:
      return unreachable(shape);
  }
}

/** Length of a shape's outline, in mm. */
export function shapePerimeter(shape: Shape): number {
  switch (shape.kind) {
    case 'circle':
      return Math.PI * shape.diameter;
    case 'oval':
      return ellipsePerimeter(shape.length / 2, shape.width / 2);
    case 'rect':
      return 2 * (shape.length + shape.width);
    case 'roundrect':
      return 2 * (shape.length + shape.width) - (8 - 2 * Math.PI) * shape.radius;
    default:
      return unreachable(shape);
  }
}

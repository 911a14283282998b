import { unreachable } from '../result.ts';
import { ellipsePerimeter } from './ellipse.ts';
import type { TracedOutline } from './traced-outline.ts';

/**
 * A plain closed shape about its own middle; sizes in mm. `length` lies along the row's x, `width`
 * along its y.
 */
export type PlainShape =
  | { readonly kind: 'circle'; readonly diameter: number }
  | { readonly kind: 'oval'; readonly length: number; readonly width: number }
  | { readonly kind: 'rect'; readonly length: number; readonly width: number }
  | {
      readonly kind: 'roundrect';
      readonly length: number;
      readonly width: number;
      readonly radius: number;
    };

/** How an outline goes round the corners that it is grown from. */
export type GrownCorners = 'round' | 'square';

/** A shape that sizes do not tell: its outline is kept with it, about its own zero. */
export type FreeShape =
  /** Points that somebody typed, joined by straight pieces. */
  | { readonly kind: 'polygon'; readonly outline: TracedOutline }
  /** An outline out of a drawing file. */
  | {
      readonly kind: 'path';
      /** File beside the job, and which outline of it: `outlines/door.svg#left`. */
      readonly address: string;
      /** Size of one unit of the drawing in mm, where the job says it. */
      readonly unit?: number;
      readonly outline: TracedOutline;
    }
  /** What runs at a distance outside another shape. */
  | {
      readonly kind: 'grown';
      readonly of: Shape;
      readonly distance: number;
      readonly corners: GrownCorners;
      readonly outline: TracedOutline;
    };

/** Any closed shape. */
export type Shape = PlainShape | FreeShape;

/** Whether sizes alone tell a shape. */
export function isPlain(shape: Shape): shape is PlainShape {
  return Object.hasOwn(shapeWords, shape.kind);
}

/** The words that make plain shapes, with the names of their sizes in order. */
export const shapeWords = {
  circle: ['diameter'],
  oval: ['length', 'width'],
  rect: ['length', 'width'],
  roundrect: ['length', 'width', 'radius'],
} as const satisfies Readonly<Record<PlainShape['kind'], readonly string[]>>;

/** Sizes of a plain shape in mm, in the order in which they are written. */
export function shapeSizes(shape: PlainShape): readonly number[] {
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
  if (!isPlain(shape)) return shape.outline.box.right - shape.outline.box.left;
  return shape.kind === 'circle' ? shape.diameter : shape.length;
}

/** Extent of a shape along its y, in mm. */
export function shapeWidth(shape: Shape): number {
  if (!isPlain(shape)) return shape.outline.box.top - shape.outline.box.bottom;
  return shape.kind === 'circle' ? shape.diameter : shape.width;
}

/** Area of a shape, in mm². */
export function shapeArea(shape: Shape): number {
  if (!isPlain(shape)) return shape.outline.area;
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
  if (!isPlain(shape)) return shape.outline.perimeter;
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

import { outlineOffset } from './outline-offset.ts';
import { parallelOval } from './parallel-oval.ts';
import {
  isPlain,
  type FreeShape,
  type GrownCorners,
  type PlainShape,
  type Shape,
} from './shape.ts';
import { traced, type TracedOutline } from './traced-outline.ts';

type Oval = Extract<PlainShape, { readonly kind: 'oval' }>;

/** What grew and what was grown from in one step: `grown` of the same shape, unless it shrank between. */
function fromOne(shape: Oval | FreeShape, distance: number, corners: GrownCorners): Growing {
  if (shape.kind !== 'grown' || shape.corners !== corners) return { of: shape, distance };
  // Out and out again is out by both together, and so is in and in; out and in again is not.
  if (Math.sign(shape.distance) !== Math.sign(distance)) return { of: shape, distance };
  return { of: shape.of, distance: shape.distance + distance };
}

interface Growing {
  readonly of: Shape;
  readonly distance: number;
}

function grownOutline({ of, distance }: Growing, corners: GrownCorners): TracedOutline | undefined {
  if (isPlain(of)) {
    return of.kind === 'oval' ? parallelOval(of.length, of.width, distance) : undefined;
  }
  const { outlines, holes } = outlineOffset(of.outline, distance, corners);
  const [only] = outlines;
  return only === undefined || outlines.length + holes.length > 1 ? undefined : traced(only);
}

function grownPlain(
  shape: Exclude<PlainShape, Oval>,
  distance: number,
  corners: GrownCorners,
): PlainShape | undefined {
  const grow = 2 * distance;
  if (shape.kind === 'circle') {
    return shape.diameter + grow > 0
      ? { kind: 'circle', diameter: shape.diameter + grow }
      : undefined;
  }
  const [length, width] = [shape.length + grow, shape.width + grow];
  if (length <= 0 || width <= 0) return undefined;
  const before = shape.kind === 'rect' ? 0 : shape.radius;
  const keepsSquare = before === 0 && corners === 'square';
  const radius = keepsSquare ? 0 : Math.max(0, before + distance);
  return radius === 0
    ? { kind: 'rect', length, width }
    : { kind: 'roundrect', length, width, radius };
}

/**
 * The outline at a distance outside a shape (inside it where the distance is negative), in mm. From
 * square corners it grows round ones, as a bearing or cloth goes round them, unless square ones are
 * wanted, as a saw cuts them.
 *
 * @returns undefined where nothing is left, or where it falls into several pieces or closes round a hole
 */
export function shapeGrown(
  shape: Shape,
  distance: number,
  corners: GrownCorners = 'round',
): Shape | undefined {
  if (distance === 0) return shape;
  if (isPlain(shape) && shape.kind !== 'oval') return grownPlain(shape, distance, corners);
  const growing = fromOne(shape, distance, corners);
  const outline = grownOutline(growing, corners);
  return outline && { kind: 'grown', ...growing, corners, outline };
}

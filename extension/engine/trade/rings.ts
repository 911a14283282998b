import { ellipsePerimeter, ellipseTightestRadius } from '../geometry/ellipse.ts';
import { shapeArea, shapeLength, shapePerimeter, type PlainShape } from '../geometry/shape.ts';

/**
 * How a ring stands under a leaning baffle. All sizes in mm, angles in radians, depths from the base
 * plane to the seat of the driver at the ring's centre.
 *
 * - `round_baffle`: a lip of the given shape, and upright walls under it.
 * - `round_tube`: upright walls of the given shape, cut on the slope, so that the lip is stretched.
 * - `square_wall`: a tube of the given shape whose wall stands square to the leaning lip.
 */
export type RingBuild = 'round_baffle' | 'round_tube' | 'square_wall';

/** A ring without its depth. A shape that is not round leans along its length. */
export interface RingForm {
  readonly shape: PlainShape;
  readonly tilt: number;
  readonly build: RingBuild;
}

/** The builds, as written in formulas. */
export const ringBuilds: readonly RingBuild[] = ['round_baffle', 'round_tube', 'square_wall'];

/**
 * How far the seat of a ring lies above and below its centre at the high and low side, in mm; for
 * `square_wall` along the leaning wall.
 *
 * A lip of half length r leaning by a rises r·sin a; cut across an upright tube it rises r·tan a.
 *
 * @source geometry; the slope of a cut tube as in Apostol and Mnatsakanian, "Unwrapping Curves from
 *   Cylinders and Cones", American Mathematical Monthly 114
 */
function halfRise({ shape, tilt, build }: RingForm): number {
  const half = shapeLength(shape) / 2;
  return build === 'round_baffle' ? half * Math.sin(tilt) : half * Math.tan(tilt);
}

/** Height of the wall over the centre: the depth, or along a leaning wall the longer way. */
function middleHeight(depth: number, { tilt, build }: RingForm): number {
  return build === 'square_wall' ? depth / Math.cos(tilt) : depth;
}

/**
 * Height of a ring's wall at its low side, in mm; below 0 where the low side would be under the base.
 *
 * @source geometry
 * @example a 7 1/2 in round baffle leaning 15° over a centre depth of 2 in: 1.02943 in
 */
export function ringLow(depth: number, form: RingForm): number {
  return middleHeight(depth, form) - halfRise(form);
}

/**
 * Height of a ring's wall at its high side, in mm: the width of strip it is cut from.
 *
 * @source geometry
 */
export function ringHigh(depth: number, form: RingForm): number {
  return middleHeight(depth, form) + halfRise(form);
}

/**
 * Smallest centre depth that keeps a height of `low` at the low side, in mm.
 *
 * @source geometry; the inverse of `ringLow`
 */
export function ringLeastDepth(low: number, form: RingForm): number {
  const height = low + halfRise(form);
  return form.build === 'square_wall' ? height * Math.cos(form.tilt) : height;
}

/**
 * Outline of the wall's cross-section, in mm: what a strip is bent round.
 *
 * Seen straight on, a leaning lip is shortened along its lean by cos a; a circle becomes an ellipse and
 * the corners of a rounded rectangle become quarter ellipses.
 *
 * @source geometry
 */
export function ringOutline({ shape, tilt, build }: RingForm): number {
  if (build !== 'round_baffle') return shapePerimeter(shape);
  const lean = Math.cos(tilt);
  switch (shape.kind) {
    case 'circle':
      return ellipsePerimeter((shape.diameter / 2) * lean, shape.diameter / 2);
    case 'oval':
      return ellipsePerimeter((shape.length / 2) * lean, shape.width / 2);
    case 'rect':
      return 2 * (shape.length * lean + shape.width);
    default: {
      const { length, width, radius } = shape;
      const straight = 2 * ((length - 2 * radius) * lean + width - 2 * radius);
      return straight + ellipsePerimeter(radius * lean, radius);
    }
  }
}

/**
 * Length of strip for a ring on its neutral axis, in mm: half its thickness inside the outline, with
 * the lap added. A curve that runs t/2 inside a convex outline is 2π·t/2 shorter.
 *
 * @source geometry (Steiner's formula for parallel curves)
 * @example an 8 in ring of 1/8 in strip: π × 7 7/8 in = 24.740 in
 */
export function ringStripLength(
  form: RingForm,
  strip: { readonly thickness: number; readonly lap: number },
): number {
  return ringOutline(form) - Math.PI * strip.thickness + strip.lap;
}

/**
 * Area of a ring's wall on its outside, in mm². The slope takes from one side what it gives to the
 * other, so it is the outline times the height over the centre.
 *
 * @source geometry; exact for every shape that a half turn maps onto itself
 */
export function ringWallArea(depth: number, form: RingForm): number {
  return ringOutline(form) * middleHeight(depth, form);
}

/**
 * Area of base that the lip of a ring covers, seen straight on, in mm².
 *
 * @source geometry
 */
export function ringShadowArea({ shape, tilt, build }: RingForm): number {
  return build === 'round_tube' ? shapeArea(shape) : shapeArea(shape) * Math.cos(tilt);
}

/**
 * Tightest radius that the strip of a ring is bent to, on the outside, in mm; 0 at a square corner.
 *
 * @source geometry (radius of curvature of an ellipse)
 */
export function ringTightestRadius({ shape, tilt, build }: RingForm): number {
  const lean = build === 'round_baffle' ? Math.cos(tilt) : 1;
  switch (shape.kind) {
    case 'circle':
      return ellipseTightestRadius((shape.diameter / 2) * lean, shape.diameter / 2);
    case 'oval':
      return ellipseTightestRadius((shape.length / 2) * lean, shape.width / 2);
    case 'rect':
      return 0;
    default:
      return ellipseTightestRadius(shape.radius * lean, shape.radius);
  }
}

/**
 * Volume between base plane and lip inside the outline of a ring, in mm³.
 *
 * @source geometry; exact for every shape that a half turn maps onto itself
 */
export function ringVolume(depth: number, form: RingForm): number {
  const area = shapeArea(form.shape);
  return form.build === 'round_baffle'
    ? area * Math.cos(form.tilt) * depth
    : area * middleHeight(depth, form);
}

/**
 * Height of a shim under a flat ring of diameter `size` that leans by `tilt`, at a station counted as
 * an angle round the ring from its low point; all in mm and radians.
 *
 * @source geometry
 * @example a 7 1/2 in ring leaning 15°, at the high point: 1.9411 in
 */
export function shimHeight(size: number, tilt: number, station: number): number {
  return (size / 2) * Math.sin(tilt) * (1 - Math.cos(station));
}

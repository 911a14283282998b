import { comparedValues, roundedTo } from '../units/same-value.ts';

/**
 * Width of the rebate that a cutter leaves when a bearing of another diameter runs along the edge.
 *
 * @source "Cut perfect rabbets", WOOD magazine
 * @example a 1 3/8 in cutter over a 1 1/8 in bearing: 1/8 in
 */
export function bearingOffset(cutter: number, bearing: number): number {
  return (cutter - bearing) / 2;
}

/**
 * Diameter of the bearing that makes a cutter leave a rebate of this width.
 *
 * @source "Cut perfect rabbets", WOOD magazine
 */
export function bearingSize(cutter: number, offset: number): number {
  return cutter - 2 * offset;
}

/** Bearings that fit bits for rebates, as a shop may have them; in mm. */
const usualBearings = [3 / 8, 1 / 2, 5 / 8, 3 / 4, 7 / 8, 15 / 16, 1, 9 / 8, 5 / 4, 11 / 8].map(
  (inches) => inches * 25.4,
);

/**
 * Largest of the usual bearings that is no larger than this, in mm: it leaves what was asked for or a
 * little more. Undefined where all are larger.
 *
 * @source common practice, no source; a set for a 1 3/8 in bit with seven of these: Popular Woodworking, June 2003
 */
export function usualBearing(diameter: number): number | undefined {
  return usualBearings.findLast((bearing) => comparedValues(bearing, diameter) <= 0);
}

/**
 * Distance between a template's edge and the cut when a guide bushing runs along the template.
 *
 * @source common practice in router manuals: half of bushing less bit
 * @example a 3/4 in bushing with a 1/2 in bit: 1/8 in
 */
export function bushingOffset(bushing: number, bit: number): number {
  return (bushing - bit) / 2;
}

/**
 * Size of the template that gives a part or an opening of this size: larger than an opening that is cut
 * `inside` it, smaller than a part that is cut `outside` it.
 *
 * @source common practice in router manuals: hole = template − bushing + bit
 */
export function bushingTemplate(
  size: number,
  tool: { readonly bushing: number; readonly bit: number },
  side: 'inside' | 'outside',
): number {
  const change = tool.bushing - tool.bit;
  return side === 'inside' ? size + change : size - change;
}

/**
 * Distance from the pivot of a circle jig to the centre of the bit: inside the line for a `hole`,
 * outside it for a `disc`, so that the line itself is left.
 *
 * @source geometry; the 6 1/2 in that goreading.org prints for a 13 in disc is to the near edge of the bit
 */
export function jigRadius(diameter: number, bit: number, side: 'hole' | 'disc'): number {
  return side === 'disc' ? (diameter + bit) / 2 : (diameter - bit) / 2;
}

/**
 * Size of a grille's frame that goes into an opening: on each side the layers of covering and the
 * clearance take their room.
 *
 * @source common practice, no source
 */
export function grilleSize(
  opening: number,
  covering: { readonly thickness: number; readonly layers: number },
  clearance: number,
): number {
  return opening - 2 * (covering.thickness * covering.layers + clearance);
}

/** Steps of the stock series of hole saws: up to a diameter, in steps; in mm. */
const holeSawSeries = [
  [1.75 * 25.4, 25.4 / 16],
  [3 * 25.4, 25.4 / 8],
  [6 * 25.4, 25.4 / 4],
] as const;

/**
 * Smallest hole saw of the stock series that cuts a hole of at least this diameter, in mm; undefined
 * above the series.
 *
 * @source from memory, no published list: 1/16 in steps to 1 3/4 in, 1/8 in to 3 in, 1/4 in to 6 in
 */
export function holeSawSize(diameter: number): number | undefined {
  const step = holeSawSeries.find(([most]) => comparedValues(diameter, most) <= 0)?.[1];
  return step === undefined ? undefined : roundedTo(diameter, step, 'up');
}

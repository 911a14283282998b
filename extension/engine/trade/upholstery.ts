import { comparedValues, roundedTo } from '../units/same-value.ts';

/**
 * Size of a blank that wraps a board: its size, and on both sides the edge, the return behind it and
 * what the hands need to hold; in mm.
 *
 * @source common practice, no source
 * @example 24 in with a 1/4 in edge, 1 in return and 1 in grip: 28 1/2 in
 */
export function wrapSize(
  size: number,
  side: { readonly edge: number; readonly turn: number; readonly grip: number },
): number {
  return size + 2 * (side.edge + side.turn + side.grip);
}

/**
 * Area that an adhesive coats, in mm²: net mass in g, share of solids, dry coat in g/mm².
 *
 * @source 3M data sheets of an aerosol and of contact adhesives, whose printed coverage this reproduces
 * @example 500 g of 13 % solids at 0.5 g/sqft: 130 sqft
 */
export function glueCoverage(net: number, solids: number, dryCoat: number): number {
  return (net * solids) / dryCoat;
}

/**
 * Wet adhesive for a bond, in g: area in mm², faces coated (a contact bond coats both), dry coat in g/mm².
 *
 * @source the same identity as `glueCoverage`, turned round
 */
export function glueNeed(
  bond: { readonly area: number; readonly faces: number },
  dryCoat: number,
  solids: number,
): number {
  return (bond.area * bond.faces * dryCoat) / solids;
}

/**
 * Staples round an outline at a spacing, both in mm: whole, and the last gap is never wider.
 *
 * @source common practice, no source
 */
export function stapleCount(perimeter: number, spacing: number): number {
  return roundedTo(perimeter / spacing, 1, 'up');
}

/**
 * Mass of a board, in g: area in mm², thickness in mm, density in g/mm³.
 *
 * @source definition
 * @example 4 × 8 ft of 1/2 in board at 43.5 lb/cuft: 58 lb
 */
export function boardMass(area: number, thickness: number, density: number): number {
  return area * thickness * density;
}

/** Uplift of cloth length by the sum of its repeats: up to so many inches, so large a share. */
const repeatUplifts = [
  [14, 0.1],
  [19, 0.15],
  [27, 0.2],
  [36, 0.25],
  [45, 0.3],
  [54, 0.35],
] as const;

/** Repeats below this are cut out of the usual waste, in inches. */
const leastRepeat = 3;

/** Width of bolt the uplifts are printed for, and the narrowest that the page knows; in inches. */
const usualBolt = 54;
const narrowestBolt = 50;

/**
 * Length of patterned cloth to buy, in mm: the length worked from plain cloth, raised by a share that
 * grows with the sum of the repeats, and by a tenth more for a narrow bolt. Undefined outside the page.
 *
 * @source carrscorner.com, pattern repeat chart for 54 in goods
 * @example 8 yd with repeats of 10 and 17 in: 9.6 yd
 */
export function repeatLength(
  length: number,
  repeat: { readonly across: number; readonly along: number },
  width: number,
): number | undefined {
  const inches = (repeat.across + repeat.along) / 25.4;
  const share = repeatUplifts.find(([most]) => comparedValues(inches, most) <= 0)?.[1];
  if (share === undefined || comparedValues(width / 25.4, narrowestBolt) < 0) return undefined;
  if (comparedValues(inches, leastRepeat) < 0) return length;
  const narrow = comparedValues(width / 25.4, usualBolt) < 0 ? 0.1 : 0;
  return length * (1 + share + narrow);
}

import { roundedTo } from '../units/same-value.ts';

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

import { roundedTo } from '../units/same-value.ts';

/** What a published percent of catalyst is taken of; three customs that differ by up to a fifth. */
export type MixBasis = 'by_mass' | 'by_volume' | 'ml_per_100g';

/** The customs, as written in formulas. */
export const mixBases: readonly MixBasis[] = ['by_mass', 'by_volume', 'ml_per_100g'];

/** cm³ in mm³. */
const cubicCentimetre = 1000;

/**
 * Catalyst by mass of resin: volume in mm³ from grams of resin and the catalyst's density in g/mm³.
 *
 * @source definition; agrees with the cc-per-quart table of G. Orbelian, "Essential Surfing"
 */
export function catalystByMass(resinGrams: number, share: number, catalystDensity: number): number {
  return (resinGrams * share) / catalystDensity;
}

/**
 * Catalyst as millilitres per 100 g of resin, the custom of British charts: volume in mm³.
 *
 * @source East Coast Fibreglass, catalyst addition chart
 * @example 3 kg of resin at 2 %: 60 ml
 */
export function catalystPerHundredGrams(resinGrams: number, share: number): number {
  return resinGrams * share * cubicCentimetre;
}

/**
 * Resin that soaks into cloth, in grams: area in mm², uptake of one layer in g/mm².
 *
 * @source definition; uptakes are shop figures
 */
export function resinSoak(area: number, uptake: number, layers: number): number {
  return area * uptake * layers;
}

/**
 * Resin for glass mat or cloth, in grams: weight of one layer in g/mm², ratio of resin to glass by mass.
 *
 * @source hand lay-up of chopped strand mat takes 2.5 : 1 (UK fibreglass guide; Practical Action, "Fibreglass boats")
 * @example 1 m² of three layers of 600 g mat at 2.5 : 1: 4.5 kg
 */
export function resinForGlass(
  area: number,
  glass: { readonly weight: number; readonly layers: number },
  ratio: number,
): number {
  return area * glass.weight * glass.layers * ratio;
}

/**
 * Mass of a film, in grams: area in mm², thickness in mm, density in g/mm³.
 *
 * @source definition
 */
export function filmMass(area: number, thickness: number, density: number): number {
  return area * thickness * density;
}

/**
 * Share of catalyst in what was mixed, by mass.
 *
 * @source Valspar Composites, mould-making guide (its printed "divide by 100" is a misprint)
 */
export function mixShare(resinGrams: number, catalystGrams: number): number {
  return catalystGrams / resinGrams;
}

/**
 * Thickness of a laminate, in mm: weight of glass in g/mm², share of glass by mass, densities in g/mm³.
 *
 * @source Epoxyworks, "Calculating laminate thickness"
 * @example 10 oz/sqyd cloth at half glass, 2.56 and 1.15 g/cm3: 0.0168 in
 */
export function laminateThickness(
  weight: number,
  glassShare: number,
  densities: { readonly glass: number; readonly resin: number },
): number {
  return weight * (1 / densities.glass + (1 / glassShare - 1) / densities.resin);
}

/**
 * Minutes until a mix gels, from a gel test of the shop: more catalyst and every 10 °C more shorten it.
 *
 * @source planning rule: half the catalyst or 10 °C less doubles the time (System Three for the 10 °C
 *   step of epoxy; for polyester from memory, and it explains East Coast Fibreglass's chart)
 */
export function potLife(
  mix: { readonly share: number; readonly celsius: number },
  test: { readonly minutes: number; readonly share: number; readonly celsius: number },
): number {
  return test.minutes * (test.share / mix.share) * 2 ** ((test.celsius - mix.celsius) / 10);
}

/**
 * Batches to mix for a total, each no larger than the pot and than what is spread before it gels;
 * volumes in mm³ and mm³/min or masses in g and g/min, pot life in min.
 *
 * @source definition
 */
export function batchCount(
  total: number,
  pot: number,
  spread: { readonly rate: number; readonly potLife: number },
): number {
  return roundedTo(total / Math.min(pot, spread.rate * spread.potLife), 1, 'up');
}

import {
  batchCount,
  catalystByMass,
  catalystPerHundredGrams,
  potLife,
  type MixBasis,
} from '../../trade/resin.ts';
import type { MixFacts } from './mix-facts.ts';
import type { Measuring, Pot } from './mix.ts';

/** Densities of resin and catalyst, in g/mm³. */
export interface Densities {
  readonly resin: number;
  readonly catalyst: number;
}

/** Catalyst for so much resin, by one of the three customs, in mm³. */
export function catalystVolume(
  resinGrams: number,
  share: number,
  of: { readonly basis: MixBasis; readonly densities: Densities },
): number {
  if (of.basis === 'by_volume') return (resinGrams / of.densities.resin) * share;
  if (of.basis === 'ml_per_100g') return catalystPerHundredGrams(resinGrams, share);
  return catalystByMass(resinGrams, share, of.densities.catalyst);
}

/** Share of catalyst by mass, whatever the custom: what the limits of makers are about. */
export function shareByMass(
  share: number,
  of: { readonly basis: MixBasis; readonly densities: Densities },
): number {
  return catalystVolume(1, share, of) * of.densities.catalyst;
}

/** Minutes until a pot gels; undefined without a temperature. */
export function potLifeOf(share: number, facts: MixFacts): number | undefined {
  const { celsius, gelTest } = facts;
  return celsius === undefined || share <= 0 ? undefined : potLife({ share, celsius }, gelTest);
}

/**
 * Pots to mix for a coat: no more in one than the shop allows, and than is spread before it gels once it
 * is stirred. Where there are more pots than panels each panel gets as many.
 */
export function potCount(
  grams: number,
  of: { readonly panels: number; readonly potLife: number | undefined; readonly facts: MixFacts },
): number {
  const { panels, facts } = of;
  const life = of.potLife === undefined ? Infinity : of.potLife - facts.stirTime;
  const usable = life > 0 ? life : Infinity;
  const count = Math.max(
    1,
    batchCount(grams, facts.potMost, { rate: facts.spreadRate, potLife: usable }),
  );
  if (!Number.isInteger(panels) || panels < 1 || count <= panels) return count;
  return Math.ceil(count / panels) * panels;
}

function steps(amount: number, step: number): number {
  return Math.max(1, Math.round(amount / step));
}

/** What one pot takes, and what the shop's tools make of it. */
export function potOf(
  grams: number,
  share: number,
  of: { readonly basis: MixBasis; readonly densities: Densities; readonly facts: MixFacts },
): Pot {
  const { densities, facts } = of;
  // The catalyst goes by the resin that was really weighed.
  const resinGrams = steps(grams, facts.scaleStep) * facts.scaleStep;
  const volume = catalystVolume(resinGrams, share, of);
  const wanted = volume * densities.catalyst;
  const measured = (by: Measuring['by'], step: number, amount: number): Measuring => {
    const count = steps(amount, step);
    const really = (count * step) / (by === 'scale' ? 1 : 1 / densities.catalyst);
    const error = wanted === 0 ? 0 : really / wanted - 1;
    return { by, count, step, grams: really, share: share * (1 + error), error };
  };
  const measures = [
    measured('scale', facts.scaleStep, wanted),
    measured('syringe', facts.syringeStep, volume),
    measured('drops', facts.drop, volume),
  ];
  return {
    resinGrams,
    resinVolume: steps(resinGrams / densities.resin, facts.cupStep) * facts.cupStep,
    catalystGrams: wanted,
    catalystVolume: volume,
    drops: volume / facts.drop,
    measures,
  };
}

/** The tool that comes closest; drops only where the shop has counted its own. */
export function bestMeasure(
  { measures }: Pot,
  { dropCounted }: { readonly dropCounted: boolean },
): Measuring | undefined {
  return measures
    .filter(({ by }) => by !== 'drops' || dropCounted)
    .toSorted((one, two) => Math.abs(one.error) - Math.abs(two.error))[0];
}

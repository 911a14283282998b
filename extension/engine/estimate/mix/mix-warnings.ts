import { temperature, time } from '../../units/dimension.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { percentText } from '../../units/percent-text.ts';
import { showQuantity } from '../../units/show.ts';
import type { MixFacts } from './mix-facts.ts';
import type { Coat, Warning } from './mix.ts';
import { bestMeasure } from './pots.ts';

/** Composites Manufacturing, February 2017, and a laminating resin's data: 1.0 to 2.5 % by mass. */
const allowed = { low: 0.01, high: 0.025 };

/** A rounding by more than this is told. */
const coarse = 0.05;

type Told = Omit<Coat, 'warnings'> & { readonly byMass: number };

function rangeWarning({ byMass }: Told): readonly Warning[] {
  const shown = percentText(byMass, 3);
  // Shares on the border belong to the range: 2.5 % is 2.5 % after any conversion.
  const below = (limit: number): boolean => byMass < limit * (1 - 1e-9);
  const above = (limit: number): boolean => byMass > limit * (1 + 1e-9);
  if (below(allowed.low) || above(allowed.high)) {
    const text = `${shown} by mass is outside the range that makers print (1.0 to 2.5 %).`;
    return [{ code: 'unusual-percent', severity: 'warning', text }];
  }
  return [];
}

function temperatureWarning(facts: MixFacts, settings: UnitSettings): readonly Warning[] {
  const { celsius, coldest, hottest } = facts;
  const shown = (base: number): string =>
    showQuantity({ base, dimension: temperature }, settings).text;
  if (celsius === undefined) {
    const text = 'The job has no shop temperature, so nothing says how long a pot lasts.';
    return [{ code: 'no-temperature', severity: 'warning', text }];
  }
  if (celsius < coldest) {
    const text = `${shown(celsius)} is below ${shown(coldest)}: it may not cure through. Warm shop, resin and panel.`;
    return [{ code: 'cold', severity: 'warning', text }];
  }
  if (celsius > hottest) {
    const text = `${shown(celsius)} is above ${shown(hottest)}: small pots, cool resin, less catalyst within its range.`;
    return [{ code: 'hot', severity: 'warning', text }];
  }
  return [];
}

function gelWarning({ potLife, spreading }: Told, settings: UnitSettings): readonly Warning[] {
  if (potLife === undefined || spreading <= potLife) return [];
  const shown = (base: number): string =>
    showQuantity({ base: Math.round(base), dimension: time }, settings, 'min').text;
  const text = `A pot takes ${shown(spreading)} to stir and spread and gels after ${shown(potLife)}: less catalyst within its range, a second person, or a cooler hour.`;
  return [{ code: 'gels-too-soon', severity: 'warning', text }];
}

function roundingWarning({ pot }: Told, facts: MixFacts): readonly Warning[] {
  const best = bestMeasure(pot, facts);
  if (best === undefined || Math.abs(best.error) <= coarse) return [];
  const shown = percentText(best.share, 2);
  const text = `So little catalyst cannot be measured with these tools: the closest comes to ${shown}. A finer syringe, or two coats from one pot.`;
  return [{ code: 'rounding', severity: 'warning', text }];
}

/** Everything that a person at the bench should hear of a coat before mixing it. */
export function mixWarnings(
  coat: Told,
  facts: MixFacts,
  settings: UnitSettings,
): readonly Warning[] {
  return [
    ...rangeWarning(coat),
    ...temperatureWarning(facts, settings),
    ...gelWarning(coat, settings),
    ...roundingWarning(coat, facts),
  ];
}

import { mass, temperature, time, volume, type Dimension } from '../../units/dimension.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { percentText } from '../../units/percent-text.ts';
import { showQuantity } from '../../units/show.ts';
import type { MixFacts } from './mix-facts.ts';
import type { Coat, Measuring, MixPlan } from './mix.ts';
import { bestMeasure } from './pots.ts';

/** What to keep to whenever catalyst is opened: it stands on every card and beside every plan. */
export const mixCaution =
  'What the label and the data sheet say comes first. Goggles and gloves before the bottle is opened. Never near promoter, heat or flame. Stir a full minute, scrape the sides. What is left: outdoors, spread out, until it is cold.';

/** What a percentage is of, as a card says it. */
const basisWords = {
  by_mass: 'of the resin’s weight',
  by_volume: 'of the resin’s volume',
  ml_per_100g: 'ml for 100 g of resin',
} as const;

/** Grams as a bench scale shows them: `12.5 g`; whatever the job's units, resin is weighed in grams. */
export function gramsText(base: number): string {
  return `${String(Math.round(base * 10) / 10)} g`;
}

/** Cubic millimetres as millilitres to a tenth: `12.5 ml`. */
export function millilitresText(base: number): string {
  return `${String(Math.round(base / 100) / 10)} ml`;
}

/** One way of measuring the catalyst of a pot, in words. */
export interface MeasureWords {
  readonly by: Measuring['by'];
  /** `4 g on the scale`. */
  readonly amount: string;
  /** `makes 1.98 %`. */
  readonly makes: string;
  /** How far off what was wanted: `1 % too little`, `exact`. */
  readonly error: string;
}

/** A coat as it is read at the bench. */
export interface CoatWords {
  /** `4 pots, 2 a panel`. */
  readonly pots: string;
  readonly resin: string;
  readonly resinVolume: string;
  /** What to measure by the tool that comes closest. */
  readonly catalyst: string;
  readonly percent: string;
  /** Catalyst as calculated, before any tool rounds it. */
  readonly exactly: string;
  readonly drops: string;
  readonly measures: readonly MeasureWords[];
  readonly life: string;
}

function amountOf(one: Measuring): string {
  if (one.by === 'scale') return gramsText(one.count * one.step);
  if (one.by === 'syringe') return millilitresText(one.count * one.step);
  return `${String(one.count)} ${one.count === 1 ? 'drop' : 'drops'}`;
}

const tools = { scale: ' on the scale', syringe: ' by the syringe', drops: '' } as const;

function errorText(error: number): string {
  const tenths = Math.round(Math.abs(error) * 1000) / 10;
  if (tenths === 0) return 'exact';
  return `${String(tenths)} % too ${error < 0 ? 'little' : 'much'}`;
}

/** What one way of measuring comes to, how it rounds, and whether the drops were counted. */
export function measureWords(one: Measuring, facts: Pick<MixFacts, 'dropCounted'>): MeasureWords {
  const counted = one.by !== 'drops' || facts.dropCounted;
  const share = percentText(one.share, 2);
  return {
    by: one.by,
    amount: `${amountOf(one)}${tools[one.by]}`,
    makes: `makes ${share}${counted ? '' : ' (count your own drops first)'}`,
    error: errorText(one.error),
  };
}

function lifeText(coat: Coat, { anchored }: MixPlan, settings: UnitSettings): string {
  const shown = (minutes: number): string =>
    showQuantity({ base: Math.round(minutes), dimension: time }, settings, 'min').text;
  const spread = `About ${shown(coat.spreading)} to stir and spread.`;
  if (coat.potLife === undefined) return spread;
  const basis = anchored
    ? 'by this shop’s gel test'
    : 'for planning only: no gel test of this shop stands behind it';
  return `Gels after about ${shown(coat.potLife)} (${basis}). ${spread}`;
}

function potsText({ pots, panels }: Coat): string {
  const each = pots / panels;
  const some = `${String(pots)} ${pots === 1 ? 'pot' : 'pots'}`;
  return panels > 1 && Number.isInteger(each) ? `${some}, ${String(each)} a panel` : some;
}

/** A coat's amounts, measures, error and pot life in words: the same on cards and beside the grid. */
export function coatWords(
  coat: Coat,
  of: { readonly plan: MixPlan; readonly facts: MixFacts; readonly settings: UnitSettings },
): CoatWords {
  const { plan, facts, settings } = of;
  const { pot } = coat;
  const best = bestMeasure(pot, facts);
  return {
    pots: potsText(coat),
    resin: gramsText(pot.resinGrams),
    resinVolume: `about ${millilitresText(pot.resinVolume)}`,
    catalyst: best === undefined ? gramsText(pot.catalystGrams) : amountOf(best),
    percent: `${percentText(coat.share, 2)} ${basisWords[coat.basis]}`,
    exactly: `${gramsText(pot.catalystGrams)} or ${millilitresText(pot.catalystVolume)}`,
    drops: `about ${String(Math.round(pot.drops))} drops`,
    measures: pot.measures.map((one) => measureWords(one, facts)),
    life: lifeText(coat, plan, settings),
  };
}

/** The shop's temperature as the job has it; empty where it has none. */
export function shopTemperature({ celsius }: MixPlan, settings: UnitSettings): string {
  if (celsius === undefined) return '';
  return showQuantity({ base: celsius, dimension: temperature }, settings).text;
}

/** All coats together: pots, resin and catalyst with their waste. */
export function mixTotalText({ totals }: MixPlan, settings: UnitSettings): string {
  const shown = (base: number, dimension: Dimension): string =>
    showQuantity({ base, dimension }, settings).text;
  const resin = `${shown(totals.resinGrams, mass)} (${shown(totals.resinVolume, volume)}) of resin`;
  const catalyst = `${shown(totals.catalystVolume, volume)} (${shown(totals.catalystGrams, mass)}) of catalyst`;
  const pots = `${String(totals.pots)} ${totals.pots === 1 ? 'pot' : 'pots'}`;
  return `Together ${pots}: ${resin}, ${catalyst}, waste included.`;
}

import type { MixBasis } from '../../trade/resin.ts';

/** A way to measure the catalyst of one pot with what the shop has, and what it makes of it. */
export interface Measuring {
  readonly by: 'scale' | 'syringe' | 'drops';
  /** Steps of the tool: grams, millilitres, drops; and the same as an amount. */
  readonly count: number;
  readonly step: number;
  /** Catalyst that is really measured, in g. */
  readonly grams: number;
  /** Share by the coat's own custom that comes of it. */
  readonly share: number;
  /** How far that is off what was wanted: 0.01 for 1 % too much. */
  readonly error: number;
}

/** One pot of a coat: all pots of a coat are alike. */
export interface Pot {
  /** Resin to weigh or measure, as the shop's scale and cup show it. */
  readonly resinGrams: number;
  /** mm³ */
  readonly resinVolume: number;
  readonly catalystGrams: number;
  /** mm³ */
  readonly catalystVolume: number;
  readonly drops: number;
  /** The finest first. */
  readonly measures: readonly Measuring[];
}

export type MixWarning =
  'unusual-percent' | 'cold' | 'hot' | 'no-temperature' | 'gels-too-soon' | 'rounding';

/** A warning in words, with its weight. */
export interface Warning {
  readonly code: MixWarning;
  readonly severity: 'warning' | 'note';
  readonly text: string;
}

/** Everything there is to know of one coat of mixed resin in the whole job. */
export interface Coat {
  readonly row: string;
  readonly occurrence: number;
  readonly name: string;
  readonly resin: string;
  readonly catalyst: string;
  /** Panels it is brushed on, in words: `2 panels`. */
  readonly panels: number;
  readonly share: number;
  readonly basis: MixBasis;
  /** Mixed resin of all panels, waste included, in g and mm³, without its catalyst. */
  readonly grams: number;
  readonly volume: number;
  readonly catalystGrams: number;
  readonly catalystVolume: number;
  readonly pots: number;
  readonly pot: Pot;
  /** Minutes until a pot gels, as the model says; undefined without a temperature. */
  readonly potLife?: number;
  /** Minutes to stir and spread one pot. */
  readonly spreading: number;
  readonly warnings: readonly Warning[];
}

/** A coat that cannot be planned, and why. */
export interface OpenCoat {
  readonly row: string;
  readonly name: string;
  readonly why: string;
}

/** The mixing of a job. */
export interface MixPlan {
  readonly coats: readonly Coat[];
  readonly open: readonly OpenCoat[];
  /** Shop temperature in °C; undefined where the job has none. */
  readonly celsius?: number;
  /** True where a gel test of this shop stands behind the pot life; else it is for planning only. */
  readonly anchored: boolean;
  readonly totals: {
    readonly pots: number;
    readonly resinGrams: number;
    readonly resinVolume: number;
    readonly catalystGrams: number;
    readonly catalystVolume: number;
  };
}

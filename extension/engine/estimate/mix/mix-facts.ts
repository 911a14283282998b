import type { Book } from '../../book/book.ts';
import { mixBases, type MixBasis } from '../../trade/resin.ts';
import {
  divided,
  mass,
  plain,
  temperature,
  time,
  volume,
  type Dimension,
} from '../../units/dimension.ts';
import type { Answers } from '../../workbook/answers.ts';
import { baseIn, wordIn } from '../cells.ts';

/** What the shop measures with and keeps to; base units. */
export interface MixFacts {
  readonly celsius: number | undefined;
  readonly basis: MixBasis;
  /** Most resin in one pot, g. */
  readonly potMost: number;
  /** g/min */
  readonly spreadRate: number;
  /** min */
  readonly stirTime: number;
  readonly gelTest: {
    readonly minutes: number;
    readonly share: number;
    readonly celsius: number;
  };
  readonly anchored: boolean;
  /** mm³ of a drop, and whether the shop has counted it. */
  readonly drop: number;
  readonly dropCounted: boolean;
  /** g, mm³, mm³ */
  readonly scaleStep: number;
  readonly syringeStep: number;
  readonly cupStep: number;
  readonly coldest: number;
  readonly hottest: number;
}

const gramsPerMinute = divided(mass, time);

/** Figures that stand in where a book takes a constant away (common practice, no source). */
const usual = {
  pot_most: 500,
  spread_rate: 60,
  stir_time: 2,
  gel_time: 20,
  gel_percent: 0.02,
  gel_temperature: 25,
  catalyst_drop: 50,
  scale_step: 1,
  syringe_step: 500,
  cup_step: 10_000,
  resin_coldest: 18.3,
  resin_hottest: 32.2,
} as const;

type Fact = keyof typeof usual;

const dimensions: Readonly<Record<Fact, Dimension>> = {
  pot_most: mass,
  spread_rate: gramsPerMinute,
  stir_time: time,
  gel_time: time,
  gel_percent: plain,
  gel_temperature: temperature,
  catalyst_drop: volume,
  scale_step: mass,
  syringe_step: volume,
  cup_step: volume,
  resin_coldest: temperature,
  resin_hottest: temperature,
};

function isOwn(id: string, book: Book): boolean {
  const origin = book.constants.get(id)?.origin;
  return origin === 'book' || origin === 'job';
}

/** Reads the shop's mixing figures from the constants of its book and the job. */
export function mixFacts(answers: Answers, book: Book): MixFacts {
  const fact = (id: Fact): number => {
    const row = answers.row('constant', id);
    const base = row === undefined ? undefined : baseIn(row, 'value', dimensions[id]);
    // Only a temperature may be nothing or less.
    const fits = base !== undefined && (base > 0 || dimensions[id] === temperature);
    return fits ? base : usual[id];
  };
  const setting = answers.setting('temperature');
  const celsius =
    setting.state === 'value' && setting.value.kind === 'quantity' ? setting.value.base : undefined;
  const row = answers.row('constant', 'mix_basis');
  const word = row === undefined ? '' : wordIn(row, 'value');
  return {
    celsius,
    basis: mixBases.find((basis) => basis === word) ?? 'by_mass',
    potMost: fact('pot_most'),
    spreadRate: fact('spread_rate'),
    stirTime: fact('stir_time'),
    gelTest: {
      minutes: fact('gel_time'),
      share: fact('gel_percent'),
      celsius: fact('gel_temperature'),
    },
    anchored: isOwn('gel_time', book),
    drop: fact('catalyst_drop'),
    dropCounted: isOwn('catalyst_drop', book),
    scaleStep: fact('scale_step'),
    syringeStep: fact('syringe_step'),
    cupStep: fact('cup_step'),
    coldest: fact('resin_coldest'),
    hottest: fact('resin_hottest'),
  };
}

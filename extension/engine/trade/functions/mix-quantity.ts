import type { FunctionContext, FunctionEntry, Parameter } from '../../formula/catalogue.ts';
import type { CellValue } from '../../formula/value.ts';
import type { Problem } from '../../problems.ts';
import { failed, ok, type Result } from '../../result.ts';
import { density, mass, plain, sameDimension, volume } from '../../units/dimension.ts';
import type { Quantity } from '../../units/quantity.ts';
import { missing, numberIn, quantityIn, shownWith, wordIn } from '../arguments.ts';
import { ranged, rangeProblem } from '../range.ts';
import { catalystByMass, catalystPerHundredGrams, mixBases, type MixBasis } from '../resin.ts';
import { tradeProblem } from '../trade-problems.ts';

const name = 'MIX.QUANTITY';

const resinParameter: Parameter = {
  name: 'resin',
  help: 'Resin to be mixed, as a mass or a volume.',
  type: { kind: 'quantity', dimensions: [mass, volume] },
  ...ranged('not-negative'),
};
const percentParameter: Parameter = {
  name: 'percent',
  help: 'Share of catalyst, such as 2 %.',
  type: { kind: 'quantity', dimensions: [plain] },
  ...ranged('catalyst'),
};
const basisParameter: Parameter = {
  name: 'basis',
  help: 'What the percentage is taken of: by_mass, by_volume, or ml_per_100g as British charts print.',
  type: { kind: 'choice', choices: mixBases },
};
const resinDensityParameter: Parameter = {
  name: 'resin_density',
  help: 'Density of the resin.',
  type: { kind: 'quantity', dimensions: [density] },
  ...ranged('positive'),
};
const catalystDensityParameter: Parameter = {
  name: 'catalyst_density',
  help: 'Density of the catalyst.',
  type: { kind: 'quantity', dimensions: [density] },
  ...ranged('positive'),
};

interface Mix {
  readonly resin: Quantity;
  readonly share: number;
  readonly basis: MixBasis;
  readonly resinDensity: number | undefined;
  readonly catalystDensity: number | undefined;
}

function densityNeeded(of: string, basis: MixBasis): Result<never> {
  return failed(tradeProblem('density-needed', { function: name, name: of, basis }));
}

function resinMass(mix: Mix): Result<number> {
  if (sameDimension(mix.resin.dimension, mass)) return ok(mix.resin.base);
  return mix.resinDensity !== undefined
    ? ok(mix.resin.base * mix.resinDensity)
    : densityNeeded('the density of the resin', mix.basis);
}

function resinVolume(mix: Mix): Result<number> {
  if (sameDimension(mix.resin.dimension, volume)) return ok(mix.resin.base);
  return mix.resinDensity !== undefined
    ? ok(mix.resin.base / mix.resinDensity)
    : densityNeeded('the density of the resin', mix.basis);
}

function catalyst(mix: Mix): Result<number> {
  if (mix.basis === 'by_volume') {
    const resin = resinVolume(mix);
    return resin.ok ? ok(resin.value * mix.share) : resin;
  }
  const resin = resinMass(mix);
  if (!resin.ok) return resin;
  if (mix.basis === 'ml_per_100g') return ok(catalystPerHundredGrams(resin.value, mix.share));
  return mix.catalystDensity !== undefined
    ? ok(catalystByMass(resin.value, mix.share, mix.catalystDensity))
    : densityNeeded('the density of the catalyst', mix.basis);
}

/** A density that is given and is none; one that is not needed may be left blank. */
function densityProblem(mix: Mix, show: ReturnType<typeof shownWith>): Problem | undefined {
  const given = [
    ['resin density', mix.resinDensity],
    ['catalyst density', mix.catalystDensity],
  ] as const;
  for (const [word, value] of given) {
    if (value === undefined) continue;
    const of = { functionName: name, name: word, value, dimension: density, show };
    const problem = rangeProblem(of, 'positive');
    if (problem !== undefined) return problem;
  }
  return undefined;
}

function checkedMix(mix: Mix, context: FunctionContext): Result<CellValue> {
  const show = shownWith(context);
  const { resin, share } = mix;
  const measured = sameDimension(resin.dimension, mass) || sameDimension(resin.dimension, volume);
  // Nothing is nothing by mass and by volume.
  if (!measured && resin.base !== 0) {
    const value = show(resin.base, resin.dimension);
    return failed(tradeProblem('resin-neither-mass-nor-volume', { function: name, value }));
  }
  if (resin.base < 0) {
    const value = show(resin.base, resin.dimension);
    return failed(tradeProblem('argument-negative', { function: name, name: 'resin', value }));
  }
  const of = { functionName: name, name: 'percent', value: share, dimension: plain, show };
  const outside = rangeProblem(of, 'catalyst');
  const wrong = outside ?? densityProblem(mix, show);
  if (wrong !== undefined) return failed(wrong);
  const amount = catalyst(mix);
  return amount.ok ? ok({ kind: 'quantity', base: amount.value, dimension: volume }) : amount;
}

/** MIX.QUANTITY. */
export const mixQuantity: FunctionEntry = {
  name,
  group: 'resin',
  help: 'Catalyst to measure out for an amount of resin. The three customs of “percent” differ by up to a fifth.',
  parameters: [
    resinParameter,
    percentParameter,
    basisParameter,
    resinDensityParameter,
    catalystDensityParameter,
  ],
  result: { kind: 'quantity', dimension: volume },
  example: {
    formula: '=SHOW(MIX.QUANTITY(1qt, 2%, by_mass, 1.10g/cm3, 1.15g/cm3), ml)',
    shows: '18.1 ml',
  },
  source: 'G. Orbelian, “Essential Surfing” (2 % of a quart is 18 cc); East Coast Fibreglass chart',
  run: (args, context) => {
    const [resinGiven, percentGiven, basisGiven, resinDensity, catalystDensity] = args;
    const resin = quantityIn(resinGiven);
    if (resin === undefined) return failed(missing(name, resinParameter));
    const share = numberIn(percentGiven);
    if (share === undefined) return failed(missing(name, percentParameter));
    const word = wordIn(basisGiven);
    const basis = mixBases.find((choice) => choice === word);
    if (basis === undefined) return failed(missing(name, basisParameter));
    const mix = {
      resin,
      share,
      basis,
      resinDensity: numberIn(resinDensity),
      catalystDensity: numberIn(catalystDensity),
    };
    return checkedMix(mix, context);
  },
};

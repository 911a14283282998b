import type {
  Argument,
  FunctionContext,
  FunctionEntry,
  Parameter,
} from '../../formula/catalogue.ts';
import type { Problem } from '../../problems.ts';
import { failed, ok, type Result } from '../../result.ts';
import {
  density,
  divided,
  mass,
  plain,
  sameDimension,
  time,
  volume,
  type Dimension,
} from '../../units/dimension.ts';
import type { Quantity } from '../../units/quantity.ts';
import { missing, quantityIn, shownWith } from '../arguments.ts';
import { ranged, rangeProblem, type Range } from '../range.ts';
import { batchCount } from '../resin.ts';
import { tradeProblem } from '../trade-problems.ts';

/** A parameter with the range that it keeps. */
interface Amount {
  readonly parameter: Parameter;
  readonly range: Range;
}

function amount(
  range: Range,
  dimensions: readonly Dimension[],
  more: { readonly name: string; readonly help: string; readonly optional?: true },
): Amount {
  return {
    parameter: { ...more, type: { kind: 'quantity', dimensions }, ...ranged(range) },
    range,
  };
}

interface Call {
  readonly name: string;
  readonly context: FunctionContext;
}

function outOfRange(quantity: Quantity, of: Amount, call: Call): Problem | undefined {
  const { base: value, dimension } = quantity;
  const show = shownWith(call.context);
  const name = of.parameter.name.replaceAll('_', ' ');
  return rangeProblem({ functionName: call.name, name, value, dimension, show }, of.range);
}

/** An argument in its range; nothing where an optional one is left out. */
function given(argument: Argument, of: Amount, call: Call): Result<Quantity | undefined> {
  const quantity = quantityIn(argument);
  if (quantity === undefined) {
    const left = of.parameter.optional === true;
    return left ? ok(undefined) : failed(missing(call.name, of.parameter));
  }
  const problem = outOfRange(quantity, of, call);
  return problem === undefined ? ok(quantity) : failed(problem);
}

const resin = amount('not-negative', [mass, volume], {
  name: 'mass',
  help: 'Mass of resin; a volume is that volume already.',
});
const dense = amount('positive', [density], { name: 'density', help: 'Density of the resin.' });

/** RESIN.VOLUME. */
export const resinVolume: FunctionEntry = {
  name: 'RESIN.VOLUME',
  group: 'resin',
  help: 'Volume of an amount of resin, whether it is written as a mass or as a volume.',
  parameters: [resin.parameter, dense.parameter],
  result: { kind: 'quantity', dimension: volume },
  example: { formula: '=RESIN.VOLUME(1100g, 1.1g/cm3)', shows: '1.057 qt' },
  source: 'definition',
  run: (args, context) => {
    const call = { name: 'RESIN.VOLUME', context };
    const of = given(args[0], resin, call);
    if (!of.ok) return of;
    const by = given(args[1], dense, call);
    if (!by.ok) return by;
    if (of.value === undefined) return failed(missing(call.name, resin.parameter));
    if (by.value === undefined) return failed(missing(call.name, dense.parameter));
    const already = sameDimension(of.value.dimension, volume);
    const base = already ? of.value.base : of.value.base / by.value.base;
    return ok({ kind: 'quantity', base, dimension: volume });
  },
};

const total = amount('not-negative', [volume, mass], {
  name: 'total',
  help: 'Resin in all, by volume or by mass.',
});
const pot = amount('positive', [volume, mass], {
  name: 'pot',
  help: 'Largest pot that one person mixes, measured like the total.',
});
const spreadRate = amount('positive', [divided(volume, time), divided(mass, time)], {
  name: 'spread_rate',
  help: 'Resin spread in a time, with pot_life; the pot alone counts when left out.',
  optional: true,
});
const potLife = amount('positive', [time], {
  name: 'pot_life',
  help: 'Time until it gels, less mixing.',
  optional: true,
});

/** Why amounts cannot be held against each other: one is weighed, the other measured. */
function unlike(
  of: Quantity,
  others: readonly (readonly [Amount, Quantity | undefined, Dimension])[],
  { name, context }: Call,
): Problem | undefined {
  const show = shownWith(context);
  for (const [{ parameter }, other, wanted] of others) {
    // Nothing is nothing by mass and by volume.
    if (other === undefined || of.base === 0 || sameDimension(other.dimension, wanted)) continue;
    return tradeProblem('amounts-unlike', {
      function: name,
      total: show(of.base, of.dimension),
      name: parameter.name.replaceAll('_', ' '),
      value: show(other.base, other.dimension),
    });
  }
  return undefined;
}

/** MIX.BATCHES. */
export const mixBatches: FunctionEntry = {
  name: 'MIX.BATCHES',
  group: 'resin',
  help: 'Batches to mix, none larger than the pot or than what is spread before it gels; all amounts by volume or all by mass.',
  parameters: [total.parameter, pot.parameter, spreadRate.parameter, potLife.parameter],
  result: { kind: 'quantity', dimension: plain },
  example: { formula: '=MIX.BATCHES(3qt, 1pt, 1floz/min, 12min)', shows: '8' },
  source: 'definition',
  run: (args, context) => {
    const call = { name: 'MIX.BATCHES', context };
    const read = [total, pot, spreadRate, potLife].map((of, index) => given(args[index], of, call));
    const [whole, one, rate, life] = read.map((found) => (found.ok ? found.value : undefined));
    const fault = read.find((found) => !found.ok);
    if (fault?.ok === false) return fault;
    if (whole === undefined) return failed(missing(call.name, total.parameter));
    if (one === undefined) return failed(missing(call.name, pot.parameter));
    const { dimension } = whole;
    const apart = unlike(
      whole,
      [
        [pot, one, dimension],
        [spreadRate, rate, divided(dimension, time)],
      ],
      call,
    );
    if (apart !== undefined) return failed(apart);
    const spread = { rate: rate?.base ?? Infinity, potLife: life?.base ?? Infinity };
    return ok({
      kind: 'quantity',
      base: batchCount(whole.base, one.base, spread),
      dimension: plain,
    });
  },
};

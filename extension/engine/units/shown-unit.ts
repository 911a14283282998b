import { area, dimensionKey, divided, frequency, mass, time, volume } from './dimension.ts';
import type { Quantity, UnitSettings } from './quantity.ts';
import { standardUnit } from './standard-units.ts';
import { unitOf } from './unit-words.ts';

/** Units of growing size; each is used from the count of it given. */
interface Ladder {
  readonly in: readonly (readonly [unit: string, from: number])[];
  readonly mm: readonly (readonly [unit: string, from: number])[];
}

const metricVolume = [
  ['ml', 0],
  ['l', 1],
] as const;

function both(steps: Ladder['in']): Ladder {
  return { in: steps, mm: steps };
}

const ladders = new Map<string, Ladder>([
  [
    dimensionKey(area),
    {
      in: [
        ['sqin', 0],
        ['sqft', 0.5],
      ],
      mm: [
        ['cm2', 0],
        ['m2', 0.05],
      ],
    },
  ],
  [
    dimensionKey(volume),
    {
      in: [
        ['floz', 0],
        ['qt', 1],
        ['gal', 1],
      ],
      mm: metricVolume,
    },
  ],
  [
    dimensionKey(mass),
    both([
      ['g', 0],
      ['kg', 1],
    ]),
  ],
  [
    dimensionKey(time),
    both([
      ['s', 0],
      ['min', 1],
      ['h', 1],
    ]),
  ],
  [
    dimensionKey(frequency),
    both([
      ['Hz', 0],
      ['kHz', 1],
    ]),
  ],
  // A resin's density is compared with its label, a mat's weight with its roll; both are metric figures.
  [dimensionKey(divided(mass, volume)), both([['g/cm3', 0]])],
  [dimensionKey(divided(mass, area)), both([['g/m2', 0]])],
]);

/** The unit word that suits a value's dimension and size in this job; undefined where none is named. */
export function shownUnit(value: Quantity, settings: UnitSettings): string | undefined {
  const steps = ladders.get(dimensionKey(value.dimension))?.[settings.units];
  if (steps === undefined) return standardUnit(value.dimension, settings);
  const size = Math.abs(value.base) * (1 + 1e-9);
  // Nothing at all is shown in the unit that a bare number would get.
  if (value.base === 0) return standardUnit(value.dimension, settings);
  const fitting = steps.filter(([word, from]) => {
    const unit = unitOf(word, settings);
    return unit !== undefined && size >= from * unit.factor;
  });
  return fitting.at(-1)?.[0];
}

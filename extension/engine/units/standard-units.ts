import {
  angle,
  area,
  dimensionKey,
  divided,
  frequency,
  length,
  mass,
  money,
  temperature,
  temperatureDifference,
  time,
  volume,
  type Dimension,
} from './dimension.ts';
import type { UnitSettings } from './quantity.ts';

interface Standard {
  readonly in: string;
  readonly mm: string;
  /** A bare number may be completed with it; else the unit is only an example. */
  readonly completes: boolean;
}

function both(word: string, completes = true): Standard {
  return { in: word, mm: word, completes };
}

// Masses are grams in both systems: that is what bench scales show, and "oz" would be taken for floz.
const standards = new Map<string, Standard>([
  [dimensionKey(length), { in: 'in', mm: 'mm', completes: true }],
  [dimensionKey(area), { in: 'sqft', mm: 'm2', completes: true }],
  [dimensionKey(volume), { in: 'floz', mm: 'ml', completes: true }],
  [dimensionKey(mass), both('g')],
  [dimensionKey(time), both('min')],
  [dimensionKey(frequency), both('Hz')],
  [dimensionKey(angle), both('deg')],
  [dimensionKey(temperature), { in: 'degF', mm: 'degC', completes: true }],
  [dimensionKey(temperatureDifference), { in: 'dF', mm: 'dC', completes: true }],
  [dimensionKey(money), both('{currency}')],
  [dimensionKey(divided(money, time)), both('{currency}/h')],
  [
    dimensionKey(divided(money, length)),
    { in: '{currency}/ft', mm: '{currency}/m', completes: false },
  ],
  [
    dimensionKey(divided(money, area)),
    { in: '{currency}/sqft', mm: '{currency}/m2', completes: false },
  ],
  [
    dimensionKey(divided(money, volume)),
    { in: '{currency}/gal', mm: '{currency}/l', completes: false },
  ],
  [
    dimensionKey(divided(money, mass)),
    { in: '{currency}/lb', mm: '{currency}/kg', completes: false },
  ],
  [dimensionKey(divided(mass, volume)), { in: 'lb/cuft', mm: 'g/cm3', completes: false }],
  [dimensionKey(divided(mass, area)), { in: 'oz/sqyd', mm: 'g/m2', completes: false }],
  [dimensionKey(divided(mass, length)), both('g/m', false)],
  [dimensionKey(divided(length, time)), { in: 'in/s', mm: 'mm/s', completes: false }],
  [dimensionKey(divided(area, time)), { in: 'sqft/h', mm: 'm2/h', completes: false }],
  [dimensionKey(divided(volume, time)), { in: 'floz/min', mm: 'ml/min', completes: false }],
  [dimensionKey(divided(mass, time)), both('g/min', false)],
  [dimensionKey(divided(area, mass)), { in: 'sqft/lb', mm: 'm2/kg', completes: false }],
  [dimensionKey(divided(time, area)), { in: 'min/sqft', mm: 'min/m2', completes: false }],
  [dimensionKey(divided(time, length)), { in: 'min/ft', mm: 'min/m', completes: false }],
]);

/** The unit people expect for a dimension in this job; undefined for dimensions without a custom. */
export function standardUnit(of: Dimension, settings: UnitSettings): string | undefined {
  return standards.get(dimensionKey(of))?.[settings.units].replace('{currency}', settings.currency);
}

/** The job's unit that a bare number of this dimension is completed with; undefined: none is safe to guess. */
export function completingUnit(of: Dimension, settings: UnitSettings): string | undefined {
  return standards.get(dimensionKey(of))?.completes === true
    ? standardUnit(of, settings)
    : undefined;
}

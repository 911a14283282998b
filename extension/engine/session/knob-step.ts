import {
  angle,
  length,
  money,
  plain,
  sameDimension,
  temperature,
  time,
} from '../units/dimension.ts';
import type { Quantity, UnitSettings } from '../units/quantity.ts';
import { exactText } from '../units/show.ts';
import type { AnsweredCell } from '../workbook/answers.ts';

/** One step of a knob: how far it goes, in base units, and the unit it is written with. */
export interface KnobStep {
  readonly base: number;
  readonly unit: string;
}

const degree = Math.PI / 180;
const inch = 25.4;

function lengthStep(base: number, settings: UnitSettings): KnobStep {
  // Boards and gaps go by 1/16 in or 1 mm, sizes and depths by 1/8 in or 2 mm.
  const small = Math.abs(base) < inch;
  if (settings.units === 'in') return { base: small ? inch / 16 : inch / 8, unit: 'in' };
  return { base: small ? 1 : 2, unit: 'mm' };
}

function plainStep(base: number, percent: boolean): KnobStep {
  if (percent) return { base: 0.0025, unit: '%' };
  return { base: Number.isInteger(base) ? 1 : 0.1, unit: '' };
}

/** How far one step of a knob moves a value of this dimension; undefined where steps make no sense. */
export function knobStep(
  value: Quantity,
  column: string,
  settings: UnitSettings,
): KnobStep | undefined {
  const { dimension, base } = value;
  const last = column.slice(column.lastIndexOf('.') + 1);
  if (sameDimension(dimension, length)) return lengthStep(base, settings);
  if (sameDimension(dimension, angle)) return { base: degree, unit: 'deg' };
  if (sameDimension(dimension, plain)) return plainStep(base, ['percent', 'waste'].includes(last));
  if (sameDimension(dimension, time)) return { base: 5, unit: 'min' };
  if (sameDimension(dimension, money)) return { base: 1, unit: settings.currency };
  if (sameDimension(dimension, temperature))
    return settings.units === 'in' ? { base: 5 / 9, unit: 'degF' } : { base: 1, unit: 'degC' };
  return undefined;
}

/** Text of the cell one step up or down; undefined where the cell has no value to step from. */
export function steppedText(
  cell: AnsweredCell,
  by: -1 | 1,
  settings: UnitSettings,
): string | undefined {
  if (cell.result.state !== 'value' || cell.result.value.kind !== 'quantity') return undefined;
  const { value } = cell.result;
  const step = knobStep(value, cell.column, settings);
  if (step === undefined) return undefined;
  // Steps land on whole steps, so that ± from a computed default soon gives round figures.
  const steps = value.base / step.base;
  const near = Math.round(steps);
  const next =
    Math.abs(steps - near) < 1e-6 ? near + by : by > 0 ? Math.ceil(steps) : Math.floor(steps);
  const base = sameDimension(value.dimension, temperature)
    ? value.base + by * step.base
    : step.unit === ''
      ? Number((next * step.base).toPrecision(12)) // tenths as people write them
      : next * step.base;
  return exactText({ base, dimension: value.dimension }, step.unit);
}

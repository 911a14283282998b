import { calculate } from '../../extension/engine/workbook/calculate.ts';
import type { CellValue } from '../../extension/engine/formula/value.ts';
import type { Result } from '../../extension/engine/result.ts';
import type { UnitSettings } from '../../extension/engine/units/quantity.ts';
import { catalogue, said } from './workbook-of.ts';

const inches: UnitSettings = { units: 'in', currency: 'USD' };

/** The value of a formula that stands in no job. */
export function answered(formula: string): Result<{ readonly value: CellValue }> {
  return calculate(formula, inches, catalogue);
}

/** A formula's answer as a person reads it, or the sentence why there is none. */
export function reads(formula: string): string {
  const result = answered(formula);
  if (result.ok) return said({ state: 'value', value: result.value.value }, inches);
  return result.problem.message;
}

import { dimensionName } from './dimension-names.ts';
import { plain, sameDimension, type Dimension } from './dimension.ts';
import type { UnitSettings } from './quantity.ts';
import { standardUnit } from './standard-units.ts';

const numbers = new Map([
  ['in', '5 1/2'],
  ['mm', '140'],
  ['deg', '15'],
  ['degF', '70'],
  ['degC', '21'],
]);

/** A value as it should be written where this dimension is wanted: `5 1/2 in`. */
export function exampleOf(wanted: Dimension | 'any' | undefined, settings: UnitSettings): string {
  if (wanted === undefined || wanted === 'any')
    return settings.units === 'in' ? '5 1/2 in' : '140 mm';
  const unit = standardUnit(wanted, settings);
  if (unit === undefined) return '2';
  return `${numbers.get(unit) ?? '2.5'} ${unit}`;
}

/** A dimension with its article: `a length`, `an area`, `a plain number`. */
export function wantedName(of: Dimension): string {
  if (sameDimension(of, plain)) return 'a plain number';
  const name = dimensionName(of);
  if (name === 'money') return 'an amount of money';
  if (name === 'mass') return 'a mass (weight)';
  return `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`;
}

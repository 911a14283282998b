import { plain, sameDimension, type Dimension } from './dimension.ts';
import type { Quantity, UnitSettings } from './quantity.ts';
import { roundedTo, sameValue } from './same-value.ts';
import { mixedFraction, withDecimals, withDigits } from './show-number.ts';
import { shownUnit } from './shown-unit.ts';
import { unitOf, type Unit } from './unit-words.ts';

export { exactText } from './exact-text.ts';

export interface Shown {
  readonly text: string;
  /** The text stands for a value that is not quite this one. */
  readonly rounded: boolean;
}

/** Rounding of inches that moved further than this is marked ≈, in inches. */
const silentRounding = 1 / 128;

/** Significant digits of values that no tape measures: areas, volumes, masses. */
const digits = 4;
const plainDigits = 6;

/** Finest fraction of an inch that is read off a feeler or a drill. */
const finest = 64;

function fineParts(inches: number): number | undefined {
  const parts = roundedTo(inches * finest, 1);
  return parts !== 0 && sameValue(inches * finest, parts) ? parts : undefined;
}

function inchText(inches: number, denominator: number): { text: string; shown: number } {
  const parts = roundedTo(inches * denominator, 1);
  const shown = parts / denominator;
  if (parts === 0 && !sameValue(inches, 0)) {
    const fine = fineParts(inches);
    if (fine !== undefined) return { text: mixedFraction(fine, finest), shown: inches };
    const text = withDigits(inches, 3);
    return { text, shown: Number(text) };
  }
  return { text: mixedFraction(parts, denominator), shown };
}

function shownInches(inches: number, settings: UnitSettings): Shown {
  const { text, shown } = inchText(inches, settings.fraction ?? 16);
  const moved = Math.abs(inches - shown);
  const about = moved > silentRounding * (1 + 1e-9) ? '≈ ' : '';
  return { text: `${about}${text} in`, rounded: !sameValue(inches, shown) };
}

function shownFeet(inches: number, settings: UnitSettings): Shown {
  const denominator = settings.fraction ?? 16;
  const parts = roundedTo(Math.abs(inches) * denominator, 1);
  const feet = Math.floor(parts / (12 * denominator));
  const rest = parts - feet * 12 * denominator;
  if (feet === 0) return shownInches(inches, settings);
  const moved = Math.abs(Math.abs(inches) - parts / denominator);
  const about = moved > silentRounding * (1 + 1e-9) ? '≈ ' : '';
  const tail = rest === 0 ? '' : ` ${mixedFraction(rest, denominator)} in`;
  const sign = inches < 0 ? '-' : '';
  return {
    text: `${about}${sign}${String(feet)} ft${tail}`,
    rounded: !sameValue(Math.abs(inches), parts / denominator),
  };
}

function shownTime(minutes: number): Shown {
  const whole = roundedTo(Math.abs(minutes), 1);
  const hours = Math.floor(whole / 60);
  const rest = whole - hours * 60;
  const sign = minutes < 0 ? '-' : '';
  const tail = rest === 0 ? '' : ` ${String(rest)} min`;
  return {
    text: `${sign}${String(hours)} h${tail}`,
    rounded: !sameValue(Math.abs(minutes), whole),
  };
}

function decimalsOf(unit: Unit): number | undefined {
  if (unit.dimension.tag === 'point') return 1;
  if (unit.word === 'mm') return 1;
  return undefined;
}

function numberText(number: number, unit: Unit): string {
  if (unit.dimension.money !== 0) return moneyText(number, unit);
  const decimals = decimalsOf(unit);
  if (decimals === undefined) return withDigits(number, unit.word === '%' ? plainDigits : digits);
  const text = withDecimals(number, decimals);
  return text === '0' && !sameValue(number, 0) && unit.word === 'mm' ? withDigits(number, 3) : text;
}

/** Money shows its cents; a price per something keeps four digits where cents would hide it. */
function moneyText(number: number, unit: Unit): string {
  const cents = roundedTo(number, 0.01);
  if (unit.word.includes('/') && Math.abs(number) < 1 && !sameValue(number, cents)) {
    return withDigits(number, digits);
  }
  return (cents + 0).toFixed(2);
}

function shownIn(unit: Unit, value: Quantity, settings: UnitSettings): Shown {
  const number = (value.base - unit.offset) / unit.factor;
  if (unit.word === 'in') return shownInches(number, settings);
  if (unit.word === 'ft') return shownFeet(number * 12, settings);
  const text = numberText(number, unit);
  return { text: `${text} ${unit.word}`, rounded: !sameValue(Number(text), number) };
}

function shownPlain(base: number, word: string | undefined): Shown {
  const text = withDigits(base, plainDigits);
  return {
    text: word === undefined ? text : `${text} ${word}`,
    rounded: !sameValue(Number(text), base),
  };
}

function exponentText(dimension: Dimension, settings: UnitSettings): string {
  const parts = [
    [settings.currency, dimension.money],
    ['g', dimension.mass],
    [settings.units, dimension.length],
    ['min', dimension.time],
    ['dC', dimension.temperature],
  ] as const;
  const side = (sign: number): string[] =>
    parts
      .filter(([, exponent]) => exponent * sign > 0)
      .map(([word, exponent]) =>
        exponent * sign === 1 ? word : `${word}^${String(exponent * sign)}`,
      );
  const [above, below] = [side(1), side(-1)];
  return [above.length === 0 ? '1' : above.join('·'), ...below].join('/');
}

/** Dimensions that no unit word names, such as a length to the fourth power. */
function shownByExponents(value: Quantity, settings: UnitSettings): Shown {
  const factor = settings.units === 'in' ? 25.4 ** value.dimension.length : 1;
  const number = value.base / factor;
  const text = withDigits(number, digits);
  return {
    text: `${text} ${exponentText(value.dimension, settings)}`,
    rounded: !sameValue(Number(text), number),
  };
}

/**
 * The text people see for a value: lengths to 1/16 in (or the job's fraction) with ≈ where rounding
 * moved more than 1/128 in, or to 0.1 mm; other values in a unit that suits their size. `unit` (a unit
 * word of the same dimension, or a count word for a plain number) fixes the unit.
 */
export function showQuantity(value: Quantity, settings: UnitSettings, unit?: string): Shown {
  if (!Number.isFinite(value.base)) return { text: String(value.base), rounded: false };
  const asked = unit === undefined || unit === '' ? undefined : unitOf(unit, settings);
  if (asked !== undefined && sameDimension(asked.dimension, value.dimension)) {
    return shownIn(asked, value, settings);
  }
  if (sameDimension(value.dimension, plain)) {
    return shownPlain(value.base, asked === undefined && unit !== '' ? unit : undefined);
  }
  const chosen = shownUnit(value, settings);
  if (chosen === 'h') return shownTime(value.base);
  const found = chosen === undefined ? undefined : unitOf(chosen, settings);
  return found === undefined ? shownByExponents(value, settings) : shownIn(found, value, settings);
}

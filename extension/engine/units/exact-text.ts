import type { Quantity } from './quantity.ts';
import { sameValue } from './same-value.ts';
import { mixedFraction, withDecimals } from './show-number.ts';
import { anyUnitAt, type Unit } from './unit-words.ts';

/** Finest fraction of an inch written back; anything finer is a decimal. */
const finest = 64;

function decimalText(number: number): string {
  const shortest = String(number);
  return shortest.includes('e') ? withDecimals(number, 15) : shortest;
}

function closestDecimal(base: number, unit: Unit): string {
  const number = (base - unit.offset) / unit.factor;
  for (let digits = 1; digits <= 17; digits++) {
    const candidate = Number(number.toPrecision(digits));
    const back = candidate * unit.factor + unit.offset;
    if (back === base || (digits > 12 && sameValue(back, base))) return decimalText(candidate);
  }
  return decimalText(number);
}

/**
 * A value as a literal in this unit that reads back to the same base value: fractions to 1/64 for
 * inches, else the shortest decimal. An empty unit (or a count word) writes a plain number.
 *
 * @example exactText({ base: 139.7, dimension: length }, 'in') // '5 1/2 in'
 */
export function exactText(value: Quantity, unit: string): string {
  const found = anyUnitAt(unit, 0);
  if (found?.end !== unit.length) return `${decimalText(value.base)} ${unit}`.trim();
  const { word, factor } = found.unit;
  const parts = Math.round((value.base / factor) * finest);
  if (word === 'in' && sameValue((parts / finest) * factor, value.base)) {
    return `${mixedFraction(parts, finest)} in`;
  }
  return `${closestDecimal(value.base, found.unit)} ${word}`;
}

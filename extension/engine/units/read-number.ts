import type { Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { unitProblem } from './unit-problems.ts';

/** A number as it was written, without its sign. */
export interface WrittenNumber {
  readonly value: number;
  /** `5 1/2`, `0.5`, `3/8`. */
  readonly text: string;
  readonly end: number;
}

const pattern =
  /(?:(?<decimal>\d*\.\d+|\d+\.?(?!\d*\/))(?:(?: |-)(?<addTop>\d+)\/(?<addBottom>\d+))?|(?<top>\d+)\/(?<bottom>\d+))/y;

const comma = /\d+(?:,\d+)+(?:\.\d+)?/y;

function decimalText(text: string): string {
  const trimmed = text.replace(/^0+(?=\d)/, '').replace(/\.$/, '');
  return trimmed.startsWith('.') ? `0${trimmed}` : trimmed;
}

function withoutComma(number: string): string {
  return /^\d{1,3}(,\d{3})+(\.\d+)?$/.test(number)
    ? number.replace(/,/g, '')
    : number.replace(/,/g, '.').replace(/\.(?=.*\.)/g, '');
}

interface Fraction {
  readonly whole: string;
  readonly top: string;
  readonly bottom: string;
}

function fractionText(fraction: Fraction): string {
  const { whole, top, bottom } = fraction;
  const front = whole === '' ? '' : `${decimalText(whole)} `;
  return `${front}${String(Number(top))}/${String(Number(bottom))}`;
}

function fractionFault(
  where: { readonly text: string; readonly found: string },
  fraction: Fraction,
  example: string,
): Problem | undefined {
  const { text, found } = where;
  const [top, bottom] = [Number(fraction.top), Number(fraction.bottom)];
  const written = `${fraction.top}/${fraction.bottom}`;
  if (fraction.whole.includes('.')) {
    return unitProblem('value-fraction-of-decimal', { text, example });
  }
  if (bottom === 0) return unitProblem('value-fraction-of-nothing', { fraction: written, example });
  if (top < bottom) return undefined;
  const whole = Math.floor(top / bottom) + Number(fraction.whole);
  const rest = top % bottom;
  const sum = rest === 0 ? String(whole) : `${String(whole)} ${String(rest)}/${String(bottom)}`;
  return unitProblem('value-fraction-top-heavy', {
    fraction: written,
    better: text.replace(found, sum),
  });
}

function fractionOf(groups: Readonly<Record<string, string | undefined>>): Fraction | undefined {
  const top = groups['addTop'] ?? groups['top'];
  const bottom = groups['addBottom'] ?? groups['bottom'];
  if (top === undefined || bottom === undefined) return undefined;
  return { whole: groups['decimal'] ?? '', top, bottom };
}

/**
 * The number at an offset: decimal, fraction or mixed fraction, without sign. Undefined where no
 * digit stands.
 */
export function readNumberAt(
  text: string,
  offset: number,
  example: string,
): Result<WrittenNumber> | undefined {
  comma.lastIndex = offset;
  const commas = comma.exec(text)?.[0];
  if (commas !== undefined) {
    const better = text.replace(commas, withoutComma(commas));
    return failed(unitProblem('value-comma', { text, better }));
  }
  pattern.lastIndex = offset;
  const found = pattern.exec(text);
  if (found === null) return undefined;
  const groups = found.groups ?? {};
  const end = offset + found[0].length;
  const fraction = fractionOf(groups);
  if (fraction === undefined) {
    const decimal = groups['decimal'] ?? '';
    return ok({ value: Number(decimal), text: decimalText(decimal), end });
  }
  const fault = fractionFault({ text, found: found[0] }, fraction, example);
  if (fault !== undefined) return failed(fault);
  const value = Number(fraction.whole) + Number(fraction.top) / Number(fraction.bottom);
  return ok({ value, text: fractionText(fraction), end });
}

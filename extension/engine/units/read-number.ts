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
  readonly top: number;
  readonly bottom: number;
  /** As it stands, whole part included, in the text of the cell. */
  readonly written: string;
  readonly all: string;
}

function fractionFault(fraction: Fraction, example: string): Problem | undefined {
  const { top, bottom } = fraction;
  const written = `${String(top)}/${String(bottom)}`;
  if (bottom === 0) return unitProblem('value-fraction-of-nothing', { fraction: written, example });
  if (top < bottom) return undefined;
  const whole = Math.floor(top / bottom) + Number(fraction.whole);
  const rest = top % bottom;
  const sum = rest === 0 ? String(whole) : `${String(whole)} ${String(rest)}/${String(bottom)}`;
  const better = fraction.all.replace(fraction.written, sum);
  return unitProblem('value-fraction-top-heavy', { fraction: written, better });
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
    return failed(
      unitProblem('value-comma', { text, better: text.replace(commas, withoutComma(commas)) }),
    );
  }
  pattern.lastIndex = offset;
  const found = pattern.exec(text);
  if (found === null) return undefined;
  const groups = found.groups ?? {};
  const end = offset + found[0].length;
  const decimal = groups['decimal'];
  const top = groups['addTop'] ?? groups['top'];
  const bottom = groups['addBottom'] ?? groups['bottom'];
  if (top === undefined || bottom === undefined) {
    return ok({ value: Number(decimal), text: decimalText(decimal ?? ''), end });
  }
  if (decimal?.includes('.') === true) {
    return failed(unitProblem('value-fraction-of-decimal', { text, example }));
  }
  const fault = fractionFault(
    {
      whole: decimal ?? '0',
      top: Number(top),
      bottom: Number(bottom),
      written: found[0],
      all: text,
    },
    example,
  );
  if (fault !== undefined) return failed(fault);
  const whole = decimal === undefined ? '' : `${decimalText(decimal)} `;
  return ok({
    value: Number(decimal ?? '0') + Number(top) / Number(bottom),
    text: `${whole}${String(Number(top))}/${String(Number(bottom))}`,
    end,
  });
}

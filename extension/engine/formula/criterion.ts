import { failed, ok, type Result } from '../result.ts';
import { dimensionKey, plain, sameDimension, type Dimension } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import { comparedValues } from '../units/same-value.ts';
import { exampleOf, wantedName } from '../units/wanted.ts';
import { formulaProblem } from './formula-problems.ts';
import type { CellValue } from './value.ts';

type Comparison = '=' | '<>' | '<' | '<=' | '>' | '>=';

/** A condition on one value, read from a text such as `">2in"`. */
export interface Criterion {
  readonly comparison: Comparison;
  /** What values are compared with; a text is compared whole, whatever its case. */
  readonly than: CellValue;
}

const shape = /^\s*(<=|>=|<>|=|<|>)?\s*([^]*?)\s*$/;

function criterionExample(of: Dimension, settings: UnitSettings): string {
  return `">${exampleOf(of, settings).replace(/ (?=[A-Za-z%])/, '')}"`;
}

function fault(text: string, of: Dimension, settings: UnitSettings): Result<never> {
  const details = {
    criterion: `"${text}"`,
    found: wantedName(of),
    example: criterionExample(of, settings),
  };
  return failed(formulaProblem('argument-criterion', details));
}

/**
 * Reads a criterion for values of a dimension (undefined for text).
 *
 * @returns the condition, or a problem where its value does not fit what it is compared with
 * @example readCriterion('>2in', length, settings) // greater than 50.8 mm
 */
export function readCriterion(
  text: string,
  of: Dimension | undefined,
  settings: UnitSettings,
): Result<Criterion> {
  const [, sign, rest = ''] = shape.exec(text) ?? [];
  const comparison = (sign ?? '=') as Comparison;
  if (of === undefined) return ok({ comparison, than: { kind: 'text', text: rest } });
  const read = readQuantity(rest, { settings });
  if (!read.ok) return fault(text, of, settings);
  const { base, dimension } = read.value.value;
  const zero = base === 0 && sameDimension(dimension, plain) && of.tag !== 'point';
  if (!zero && !sameDimension(dimension, of)) return fault(text, of, settings);
  return ok({ comparison, than: { kind: 'quantity', base, dimension: of } });
}

function holds(comparison: Comparison, order: number): boolean {
  switch (comparison) {
    case '=':
      return order === 0;
    case '<>':
      return order !== 0;
    case '<':
      return order < 0;
    case '<=':
      return order <= 0;
    case '>':
      return order > 0;
    case '>=':
      return order >= 0;
  }
}

/** The words of a value that reads as text. */
export function wordsOf(value: CellValue): string | undefined {
  if (value.kind === 'text') return value.text;
  if (value.kind === 'choice') return value.word;
  return value.kind === 'link' ? value.id : undefined;
}

function wordOrder(a: string, b: string): number {
  const [left, right] = [a.toLowerCase(), b.toLowerCase()];
  if (left === right) return 0;
  return left < right ? -1 : 1;
}

/** Whether a value meets a condition. Values of another kind than the condition's only meet `<>`. */
export function meets(value: CellValue, criterion: Criterion): boolean {
  const { comparison, than } = criterion;
  if (value.kind === 'quantity' && than.kind === 'quantity') {
    const alike =
      dimensionKey(value.dimension) === dimensionKey(than.dimension) || value.base === 0;
    return alike && holds(comparison, comparedValues(value.base, than.base));
  }
  if (value.kind === 'yes-no' && than.kind === 'yes-no') {
    return holds(comparison, Number(value.yes) - Number(than.yes));
  }
  const [words, other] = [wordsOf(value), wordsOf(than)];
  if (words === undefined || other === undefined) return comparison === '<>';
  return holds(comparison, wordOrder(words, other));
}

import { plain, sameDimension, type Dimension } from '../units/dimension.ts';
import { wantedName } from '../units/wanted.ts';
import type { ValueType } from './value.ts';

/** The type of a quantity of this dimension. */
export function quantityType(dimension: Dimension): ValueType {
  return { kind: 'quantity', dimension };
}

/** What a sentence calls a type: `a length`, `text`, `yes or no`. */
export function typeName(type: ValueType): string {
  switch (type.kind) {
    case 'quantity':
      return wantedName(type.dimension);
    case 'zero':
      return 'zero';
    case 'blank':
      return 'blank';
    case 'text':
      return 'text';
    case 'yes-no':
      return 'yes or no';
    case 'choice':
      return 'a choice';
    case 'shape':
      return 'a shape';
    case 'link':
      return 'a row';
  }
}

/**
 * Dimension a type has in arithmetic: yes and no count as 1 and 0, zero and blanks are free. Undefined
 * where a type is no number.
 */
export function arithmeticDimension(type: ValueType): Dimension | 'free' | undefined {
  switch (type.kind) {
    case 'quantity':
      return type.dimension;
    case 'zero':
    case 'blank':
      return 'free';
    case 'yes-no':
      return plain;
    default:
      return undefined;
  }
}

/** True for types that read as words: text, a choice, the id of a row. */
export function isWords(type: ValueType): boolean {
  return type.kind === 'text' || type.kind === 'choice' || type.kind === 'link';
}

function joinedWords(a: ValueType, b: ValueType): ValueType {
  if (a.kind !== 'choice' || b.kind !== 'choice') return { kind: 'text' };
  return { kind: 'choice', choices: [...new Set([...a.choices, ...b.choices])] };
}

function joinedNumbers(a: ValueType, b: ValueType): ValueType | undefined {
  if (a.kind === 'zero') return b;
  if (b.kind === 'zero') return a;
  if (a.kind !== 'quantity' || b.kind !== 'quantity') return undefined;
  return sameDimension(a.dimension, b.dimension) ? a : undefined;
}

function isNumber(type: ValueType): boolean {
  return type.kind === 'zero' || type.kind === 'quantity';
}

/** The type of a value that has one type or the other; undefined where they do not go together. */
export function joinedType(a: ValueType, b: ValueType): ValueType | undefined {
  if (a.kind === 'blank') return b;
  if (b.kind === 'blank') return a;
  if (isWords(a) && isWords(b)) return joinedWords(a, b);
  if (isNumber(a) && isNumber(b)) return joinedNumbers(a, b);
  return a.kind === b.kind ? a : undefined;
}

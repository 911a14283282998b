import type { CellValue, ValueType } from '../formula/value.ts';
import { sameList } from '../units/same-list.ts';
import { sameDimension } from '../units/dimension.ts';
import type { CellResult } from './answers.ts';
import { registerOf } from './register-values.ts';

export function sameType(a: ValueType, b: ValueType): boolean {
  if (a === b) return true;
  if (a.kind === 'quantity' && b.kind === 'quantity') {
    return sameDimension(a.dimension, b.dimension);
  }
  if (a.kind === 'choice' && b.kind === 'choice') return sameList(a.choices, b.choices);
  if (a.kind === 'link' && b.kind === 'link') return sameList(a.tables, b.tables);
  return a.kind === b.kind;
}

export function sameCellValue(a: CellValue, b: CellValue): boolean {
  if (a === b) return true;
  if (a.kind !== b.kind || registerOf(a) !== registerOf(b)) return false;
  return a.kind !== 'quantity' || b.kind !== 'quantity' || sameDimension(a.dimension, b.dimension);
}

export function sameResult(a: CellResult, b: CellResult): boolean {
  if (a === b) return true;
  if (a.state === 'value' && b.state === 'value')
    return a.estimate === b.estimate && sameCellValue(a.value, b.value);
  if (a.state === 'no-answer' && b.state === 'no-answer') {
    return a.problem.code === b.problem.code && a.problem.message === b.problem.message;
  }
  return a.state === 'blank' && b.state === 'blank';
}

/** Equality of plain data: lists, maps, objects and what they hold. */
export function sameData(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const [one, other] = [listed(a), listed(b)];
  if (one === undefined || other === undefined)
    return one === other && sameFields(a as Fields, b as Fields);
  return a instanceof Map === b instanceof Map && sameLists(one, other);
}

/** What a map or a list holds, in order; undefined for an object. */
function listed(held: object): readonly unknown[] | undefined {
  if (Array.isArray(held)) return held as readonly unknown[];
  return held instanceof Map ? [...held] : undefined;
}

function sameLists(a: readonly unknown[], b: readonly unknown[]): boolean {
  return a.length === b.length && a.every((value, index) => sameData(value, b[index]));
}

type Fields = Readonly<Record<string, unknown>>;

function sameFields(a: Fields, b: Fields): boolean {
  const [keys, others] = [Object.keys(a), Object.keys(b)];
  return sameList(keys, others) && keys.every((key) => sameData(a[key], b[key]));
}

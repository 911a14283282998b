import type { BinaryOperator } from './expression.ts';

/**
 * How tightly each operator binds; all go left to right and a sign binds tightest, so -2^2 is 4
 * (OpenFormula, OpenDocument 1.3 part 4, section 5.5).
 */
export const operatorBinding: ReadonlyMap<string, number> = new Map<BinaryOperator | '%', number>([
  ['=', 1],
  ['<>', 1],
  ['<', 1],
  ['<=', 1],
  ['>', 1],
  ['>=', 1],
  ['&', 2],
  ['+', 3],
  ['-', 3],
  ['*', 4],
  ['/', 4],
  ['^', 5],
  ['%', 6],
]);

/** Binding of a sign before its operand. */
export const signBinding = 7;

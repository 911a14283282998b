import { plain, sameDimension, type Dimension } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { completingUnit } from '../units/standard-units.ts';
import type { Checked } from './checked.ts';
import type { Expression } from './expression.ts';
import { expressionText } from './expression-text.ts';
import { isPiExpression } from './pi-expression.ts';
import { typeName } from './value-type.ts';

export type Binary = Expression & { readonly kind: 'binary' };

/** A dimension, or that of zero and blanks, which fits all. */
export type Free = Dimension | 'free';

/** A binary expression with its operands checked. */
export interface Sides {
  readonly expression: Binary;
  readonly left: Checked;
  readonly right: Checked;
}

/** What sentences call the sides. */
export function sideNames(sides: Sides): Readonly<Record<string, string>> {
  const { expression, left, right } = sides;
  return {
    left: expressionText(expression.left),
    right: expressionText(expression.right),
    operator: expression.operator,
    leftFound: typeName(left.type),
    rightFound: typeName(right.type),
  };
}

function loneNumber(expression: Expression): string | undefined {
  if (expression.kind !== 'quantity' || expression.unit !== '') return undefined;
  return expressionText(expression);
}

/** ` Write 0.5in.` where a bare number stands beside a dimension. */
export function unitSuggestion(
  expression: Expression,
  beside: Free,
  settings: UnitSettings,
): string {
  const number = loneNumber(expression);
  if (number === undefined || beside === 'free' || sameDimension(beside, plain)) return '';
  const unit = completingUnit(beside, settings);
  return unit === undefined ? '' : ` Write ${number}${unit}.`;
}

/** The way out where one side lacks a unit. */
export function sideSuggestion(
  sides: Sides,
  left: Free,
  right: Free,
  settings: UnitSettings,
): string {
  const { expression } = sides;
  const written =
    unitSuggestion(expression.right, left, settings) ||
    unitSuggestion(expression.left, right, settings);
  if (written !== '' || left === 'free' || right === 'free') return written;
  if (left.tag === 'angle' && sameDimension(right, plain)) {
    return ' Write the angle in degrees, such as 15deg.';
  }
  return '';
}

/** An angle and a plain number go together only where the number is an expression of PI(). */
export function anglesAgree(sides: Sides, left: Dimension, right: Dimension): boolean {
  const { expression } = sides;
  if (left.tag === 'angle' && sameDimension(right, plain)) return isPiExpression(expression.right);
  if (right.tag === 'angle' && sameDimension(left, plain)) return isPiExpression(expression.left);
  return false;
}

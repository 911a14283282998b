import {
  addedDimensions,
  dividedDimensions,
  multipliedDimensions,
  plain,
  raised,
  sameDimension,
  temperatureDifference,
  type Dimension,
} from '../units/dimension.ts';
import { completingUnit } from '../units/standard-units.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { refused, type Checking } from './checking.ts';
import type { Checked } from './checked.ts';
import type { Expression } from './expression.ts';
import { expressionText } from './expression-text.ts';
import { formulaProblem } from './formula-problems.ts';
import { constantNumber, isPiExpression } from './pi-expression.ts';
import type { ValueType } from './value.ts';
import { arithmeticDimension, isWords, quantityType, typeName } from './value-type.ts';

type Binary = Expression & { readonly kind: 'binary' };
type Free = Dimension | 'free';

interface Sides {
  readonly expression: Binary;
  readonly left: Checked;
  readonly right: Checked;
}

function details(sides: Sides): Readonly<Record<string, string>> {
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
function unitSuggestion(expression: Expression, beside: Free, settings: UnitSettings): string {
  const number = loneNumber(expression);
  if (number === undefined || beside === 'free' || sameDimension(beside, plain)) return '';
  const unit = completingUnit(beside, settings);
  return unit === undefined ? '' : ` Write ${number}${unit}.`;
}

function sideSuggestion(sides: Sides, left: Free, right: Free, settings: UnitSettings): string {
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

/** A number's dimension on each side; a problem where a side is no number. */
function numberSides(checking: Checking, sides: Sides): readonly [Free, Free] | undefined {
  const left = arithmeticDimension(sides.left.type);
  const right = arithmeticDimension(sides.right.type);
  if (left !== undefined && right !== undefined) return [left, right];
  const { expression } = sides;
  const [wrong, type] =
    left === undefined ? [expression.left, sides.left.type] : [expression.right, sides.right.type];
  const { operator } = expression;
  const fault = { operand: expressionText(wrong), found: typeName(type), operator };
  return refused(checking, formulaProblem('cannot-calculate', fault), wrong.span);
}

function anglesAgree(sides: Sides, left: Dimension, right: Dimension): boolean {
  const { expression } = sides;
  if (left.tag === 'angle' && sameDimension(right, plain)) return isPiExpression(expression.right);
  if (right.tag === 'angle' && sameDimension(left, plain)) return isPiExpression(expression.left);
  return false;
}

/** Beside a temperature, zero and blanks count as differences; elsewhere they are of the other's kind. */
function freeBeside(other: Dimension): Dimension {
  return other.tag === 'point' ? temperatureDifference : other;
}

function sumType(sides: Sides, left: Free, right: Free): ValueType | undefined {
  if (left === 'free') {
    return right === 'free' ? { kind: 'zero' } : sumType(sides, freeBeside(right), right);
  }
  if (right === 'free') return sumType(sides, left, freeBeside(left));
  const sign = sides.expression.operator === '-' ? '-' : '+';
  const sum = addedDimensions(left, right, sign);
  if (sum !== undefined) return quantityType(sum);
  if (!anglesAgree(sides, left, right)) return undefined;
  return quantityType(left.tag === 'angle' ? left : right);
}

function checkSum(checking: Checking, sides: Sides): ValueType | undefined {
  const dimensions = numberSides(checking, sides);
  if (dimensions === undefined) return undefined;
  const [left, right] = dimensions;
  const type = sumType(sides, left, right);
  if (type !== undefined) return type;
  const done = sides.expression.operator === '+' ? 'added' : 'taken from each other';
  const hint = sideSuggestion(sides, left, right, checking.scope.settings);
  const problem = formulaProblem('cannot-add', { ...details(sides), done, suggestion: hint });
  return refused(checking, problem, sides.expression.span);
}

function checkProduct(checking: Checking, sides: Sides): ValueType | undefined {
  const dimensions = numberSides(checking, sides);
  if (dimensions === undefined) return undefined;
  const [left, right] = dimensions;
  const points = [left, right].some((side) => side !== 'free' && side.tag === 'point');
  const times = sides.expression.operator === '*';
  if (points) {
    const done = times ? 'multiplied' : 'divided';
    const problem = formulaProblem('cannot-multiply', { ...details(sides), done });
    return refused(checking, problem, sides.expression.span);
  }
  if (left === 'free' || right === 'free') return { kind: 'zero' };
  const product = times ? multipliedDimensions(left, right) : dividedDimensions(left, right);
  return product === undefined ? undefined : quantityType(product);
}

function isHalves(dimension: Dimension): boolean {
  const { length, mass, time, temperature, money } = dimension;
  return [length, mass, time, temperature, money].every((exponent) =>
    Number.isInteger(Math.round(exponent * 2e9) / 1e9),
  );
}

/** Dimension of a power whose base has one; the exponent must be known before anything is calculated. */
export function powerType(
  checking: Checking,
  expression: {
    readonly left: Expression;
    readonly right: Expression;
    readonly span: Binary['span'];
  },
  operands: { readonly left: Dimension; readonly right: Checked },
): ValueType | undefined {
  const { left, right } = operands;
  if (sameDimension(left, plain) || left.tag === 'angle') return quantityType(plain);
  const written = {
    left: expressionText(expression.left),
    right: expressionText(expression.right),
    found: typeName(quantityType(left)),
  };
  const exponent = constantNumber(right);
  if (left.tag === 'point') {
    const more = { ...written, operator: '^', done: 'raised' };
    return refused(checking, formulaProblem('cannot-multiply', more), expression.span);
  }
  if (exponent === undefined) {
    const problem = formulaProblem('exponent-not-constant', written);
    return refused(checking, problem, expression.right.span);
  }
  const power = raised(left, exponent);
  if (isHalves(power)) return quantityType(power);
  return refused(checking, formulaProblem('exponent-uneven', written), expression.right.span);
}

function checkPower(checking: Checking, sides: Sides): ValueType | undefined {
  const dimensions = numberSides(checking, sides);
  if (dimensions === undefined) return undefined;
  const [left, right] = dimensions;
  if (right !== 'free' && !sameDimension(right, plain)) {
    const found = typeName(sides.right.type);
    const problem = formulaProblem('exponent-dimension', { ...details(sides), found });
    return refused(checking, problem, sides.expression.right.span);
  }
  const base = left === 'free' ? plain : left;
  return powerType(checking, sides.expression, { left: base, right: sides.right });
}

function isTextual(type: ValueType): boolean {
  if (isWords(type) || ['blank', 'zero', 'yes-no'].includes(type.kind)) return true;
  return type.kind === 'quantity' && sameDimension(type.dimension, plain);
}

/** Refuses a value with a dimension where text is made; the way out is SHOW. */
export function textAllowed(checking: Checking, expression: Expression, type: ValueType): boolean {
  if (isTextual(type)) return true;
  const fault = { operand: expressionText(expression), found: typeName(type) };
  refused(checking, formulaProblem('text-dimension', fault), expression.span);
  return false;
}

function checkJoin(checking: Checking, sides: Sides): ValueType | undefined {
  const { expression, left, right } = sides;
  const fine =
    textAllowed(checking, expression.left, left.type) &&
    textAllowed(checking, expression.right, right.type);
  return fine ? { kind: 'text' } : undefined;
}

function comparable(sides: Sides): boolean {
  const [left, right] = [sides.left.type, sides.right.type];
  if (left.kind === 'blank' || right.kind === 'blank') return true;
  if (left.kind === 'shape' || right.kind === 'shape') return false;
  if (isWords(left) || isWords(right)) return isWords(left) && isWords(right);
  if (left.kind === 'yes-no' || right.kind === 'yes-no') return left.kind === right.kind;
  if (left.kind !== 'quantity' || right.kind !== 'quantity') return true;
  return (
    sameDimension(left.dimension, right.dimension) ||
    anglesAgree(sides, left.dimension, right.dimension)
  );
}

/** Zero fits every dimension but a temperature, where 0 degF and 0 degC are two things. */
function zeroDegrees(sides: Sides): boolean {
  const types = [sides.left.type, sides.right.type];
  return (
    types.some(({ kind }) => kind === 'zero') &&
    types.some((type) => type.kind === 'quantity' && type.dimension.tag === 'point')
  );
}

function checkComparison(checking: Checking, sides: Sides): ValueType | undefined {
  if (zeroDegrees(sides)) {
    return refused(checking, formulaProblem('zero-temperature'), sides.expression.span);
  }
  if (comparable(sides)) return { kind: 'yes-no' };
  const left = arithmeticDimension(sides.left.type) ?? 'free';
  const right = arithmeticDimension(sides.right.type) ?? 'free';
  const hint = sideSuggestion(sides, left, right, checking.scope.settings);
  const problem = formulaProblem('cannot-compare', { ...details(sides), suggestion: hint });
  return refused(checking, problem, sides.expression.span);
}

function isBareWord(expression: Expression): boolean {
  return expression.kind === 'path' && expression.steps.length === 1;
}

/** Both operands; a bare word beside a choice or a yes-no is read as one of its words. */
function checkedSides(checking: Checking, expression: Binary): Sides | undefined {
  const compares = ['=', '<>', '<', '<=', '>', '>='].includes(expression.operator);
  const { left, right } = expression;
  const rightFirst =
    compares && isBareWord(left) && left.kind === 'path' && !checking.scope.cell(left.steps).found;
  const first = checking.check(rightFirst ? right : left, 'any');
  const kind = first?.type.kind;
  const want = compares && (kind === 'choice' || kind === 'yes-no') ? first?.type : undefined;
  const second = checking.check(rightFirst ? left : right, want ?? 'any');
  if (first === undefined || second === undefined) return undefined;
  return rightFirst
    ? { expression, left: second, right: first }
    : { expression, left: first, right: second };
}

function resultOf(checking: Checking, sides: Sides): ValueType | undefined {
  switch (sides.expression.operator) {
    case '+':
    case '-':
      return checkSum(checking, sides);
    case '*':
    case '/':
      return checkProduct(checking, sides);
    case '^':
      return checkPower(checking, sides);
    case '&':
      return checkJoin(checking, sides);
    default:
      return checkComparison(checking, sides);
  }
}

/** Two operands and what stands between them. */
export function checkBinary(checking: Checking, expression: Binary): Checked | undefined {
  const sides = checkedSides(checking, expression);
  if (sides === undefined) return undefined;
  const type = resultOf(checking, sides);
  if (type === undefined) return undefined;
  const { left, right } = sides;
  const { operator, span } = expression;
  return { kind: 'binary', operator, left, right, type, span };
}

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
import { checkComparison } from './check-comparison.ts';
import { noteProblem, untyped, type Checking } from './checking.ts';
import type { Checked } from './checked.ts';
import type { Expression } from './expression.ts';
import { expressionText } from './expression-text.ts';
import { formulaProblem } from './formula-problems.ts';
import { constantNumber } from './pi-expression.ts';
import {
  anglesAgree,
  sideNames,
  sideSuggestion,
  type Binary,
  type Free,
  type Sides,
} from './sides.ts';
import type { ValueType } from './value.ts';
import { arithmeticDimension, isWords, quantityType, typeName } from './value-type.ts';

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
  noteProblem(checking, formulaProblem('cannot-calculate', fault), wrong.span);
  return undefined;
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
  const problem = formulaProblem('cannot-add', { ...sideNames(sides), done, suggestion: hint });
  return untyped(checking, problem, sides.expression.span);
}

function checkProduct(checking: Checking, sides: Sides): ValueType | undefined {
  const dimensions = numberSides(checking, sides);
  if (dimensions === undefined) return undefined;
  const [left, right] = dimensions;
  const points = [left, right].some((side) => side !== 'free' && side.tag === 'point');
  const times = sides.expression.operator === '*';
  if (points) {
    const done = times ? 'multiplied' : 'divided';
    const problem = formulaProblem('cannot-multiply', { ...sideNames(sides), done });
    return untyped(checking, problem, sides.expression.span);
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
    return untyped(checking, formulaProblem('cannot-multiply', more), expression.span);
  }
  if (exponent === undefined) {
    const problem = formulaProblem('exponent-not-constant', written);
    return untyped(checking, problem, expression.right.span);
  }
  const power = raised(left, exponent);
  if (isHalves(power)) return quantityType(power);
  return untyped(checking, formulaProblem('exponent-uneven', written), expression.right.span);
}

function checkPower(checking: Checking, sides: Sides): ValueType | undefined {
  const dimensions = numberSides(checking, sides);
  if (dimensions === undefined) return undefined;
  const [left, right] = dimensions;
  if (right !== 'free' && !sameDimension(right, plain)) {
    const found = typeName(sides.right.type);
    const problem = formulaProblem('exponent-dimension', { ...sideNames(sides), found });
    return untyped(checking, problem, sides.expression.right.span);
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
  noteProblem(checking, formulaProblem('text-dimension', fault), expression.span);
  return false;
}

function checkJoin(checking: Checking, sides: Sides): ValueType | undefined {
  const { expression, left, right } = sides;
  const fine =
    textAllowed(checking, expression.left, left.type) &&
    textAllowed(checking, expression.right, right.type);
  return fine ? { kind: 'text' } : undefined;
}

/** A word alone that is no column here: beside a choice or a yes-no it may be one of its words. */
function isStrayWord(checking: Checking, expression: Expression): boolean {
  if (expression.kind !== 'path' || expression.steps.length > 1) return false;
  return !checking.scope.cell(expression.steps).found;
}

const comparisons: readonly string[] = ['=', '<>', '<', '<=', '>', '>='];

/** Two operands, the second read with the words of the first where they are compared. */
function inOrder(
  checking: Checking,
  operands: readonly [first: Expression, second: Expression],
  compares: boolean,
): readonly [Checked, Checked] | undefined {
  const first = checking.check(operands[0], 'any');
  const worded = first?.type.kind === 'choice' || first?.type.kind === 'yes-no';
  const second = checking.check(operands[1], compares && worded ? first.type : 'any');
  return first === undefined || second === undefined ? undefined : [first, second];
}

function checkedSides(checking: Checking, expression: Binary): Sides | undefined {
  const { left, right, operator } = expression;
  const compares = comparisons.includes(operator);
  if (compares && isStrayWord(checking, left)) {
    const sides = inOrder(checking, [right, left], compares);
    return sides === undefined ? undefined : { expression, left: sides[1], right: sides[0] };
  }
  const sides = inOrder(checking, [left, right], compares);
  return sides === undefined ? undefined : { expression, left: sides[0], right: sides[1] };
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

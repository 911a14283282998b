import type { Checked } from './checked.ts';
import type { Expression } from './expression.ts';

/**
 * True for arithmetic with PI() in it. Such a number is meant in radians, so an angle may take it
 * where any other plain number is refused.
 */
export function isPiExpression(expression: Expression): boolean {
  switch (expression.kind) {
    case 'call':
      return expression.name === 'PI';
    case 'unary':
      return isPiExpression(expression.operand);
    case 'binary':
      return (
        ['+', '-', '*', '/'].includes(expression.operator) &&
        (isPiExpression(expression.left) || isPiExpression(expression.right))
      );
    default:
      return false;
  }
}

function combined(operator: string, left: number, right: number): number | undefined {
  switch (operator) {
    case '+':
      return left + right;
    case '-':
      return left - right;
    case '*':
      return left * right;
    case '/':
      return left / right;
    default:
      return undefined;
  }
}

/** The number that a written-out expression such as `-1` or `1/2` always is; undefined for others. */
export function constantNumber(checked: Checked): number | undefined {
  if (checked.kind === 'constant') {
    return checked.value.kind === 'quantity' ? checked.value.base : undefined;
  }
  if (checked.kind === 'negative') {
    const operand = constantNumber(checked.operand);
    return operand === undefined ? undefined : -operand;
  }
  if (checked.kind !== 'binary') return undefined;
  const left = constantNumber(checked.left);
  const right = constantNumber(checked.right);
  if (left === undefined || right === undefined) return undefined;
  return combined(checked.operator, left, right);
}

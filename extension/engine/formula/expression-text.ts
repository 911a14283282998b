import { exactText } from '../units/exact-text.ts';
import type { Expression } from './expression.ts';
import { operatorBinding, signBinding } from './operators.ts';

type Binary = Expression & { readonly kind: 'binary' };

function bindingOf(expression: Expression): number {
  if (expression.kind === 'binary') return operatorBinding.get(expression.operator) ?? 0;
  return expression.kind === 'unary' || expression.kind === 'percent' ? signBinding : 9;
}

function operandText(operand: Expression, least: number): string {
  const text = expressionText(operand);
  return bindingOf(operand) < least ? `(${text})` : text;
}

/** What an operand ends with: behind its signs, on the right of its operators. */
function last(operand: Expression): Expression {
  if (operand.kind === 'unary') return last(operand.operand);
  return operand.kind === 'binary' ? last(operand.right) : operand;
}

/** What stands behind the signs of an operand. */
function unsigned(operand: Expression): Expression {
  return operand.kind === 'unary' ? unsigned(operand.operand) : operand;
}

/**
 * `(3/4 in) ^ 2`, `(-15 deg) ^ 2`, `(x ^ 15 deg) ^ 2` and `x / (3/4 in)`, because the parser refuses all
 * without brackets.
 */
function isReadTwoWays(operand: Expression, operator: string, side: 'left' | 'right'): boolean {
  const literal = side === 'left' ? last(operand) : unsigned(operand);
  if (literal.kind !== 'quantity' || literal.unit === '') return false;
  if (side === 'left') return operator === '^';
  return '/^'.includes(operator) && /^\d+\//.test(expressionText(literal));
}

function sideText(binary: Binary, side: 'left' | 'right'): string {
  const operand = binary[side];
  if (isReadTwoWays(operand, binary.operator, side)) return `(${expressionText(operand)})`;
  return operandText(operand, bindingOf(binary) + (side === 'right' ? 1 : 0));
}

/** An expression as a sentence quotes it, in canonical spelling. */
export function expressionText(expression: Expression): string {
  switch (expression.kind) {
    case 'quantity':
      return exactText(expression.value, expression.unit);
    case 'text':
      return `"${expression.text.replaceAll('"', '""')}"`;
    case 'path':
      return expression.steps.map((step) => step.word).join('.');
    case 'list': {
      const row = expression.row?.map((step) => step.word).join('.');
      const kinds = expression.kinds.map((step) => step.word);
      const inside = row === undefined ? kinds : [row, ...kinds];
      return `${expression.form}(${inside.join(', ')}).${expression.column.word}`;
    }
    case 'call': {
      const args = expression.args.map((argument) =>
        argument === undefined ? '' : expressionText(argument),
      );
      return `${expression.name}(${args.join(', ')})`;
    }
    case 'unary':
      return `${expression.operator}${operandText(expression.operand, signBinding)}`;
    case 'percent':
      return `${operandText(expression.operand, signBinding)}%`;
    case 'binary':
      return `${sideText(expression, 'left')} ${expression.operator} ${sideText(expression, 'right')}`;
  }
}

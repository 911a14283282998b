import { plain, sameDimension } from '../units/dimension.ts';
import { checkAnswer } from './check-answer.ts';
import { checkCall } from './check-call.ts';
import { checkBinary } from './check-operators.ts';
import { checkPath } from './check-path.ts';
import { refused, type Checking, type Want } from './checking.ts';
import type { Checked, CheckOutcome } from './checked.ts';
import type { Expression } from './expression.ts';
import { expressionText } from './expression-text.ts';
import { formulaProblem } from './formula-problems.ts';
import type { Scope } from './scope.ts';
import type { ValueType } from './value.ts';
import { arithmeticDimension, quantityType, typeName } from './value-type.ts';

function checkLiteral(expression: Expression & { readonly kind: 'quantity' }): Checked {
  const { value, unit, span } = expression;
  const zero = value.base === 0 && unit === '';
  return {
    kind: 'constant',
    type: zero ? { kind: 'zero' } : quantityType(value.dimension),
    value: { kind: 'quantity', ...value },
    span,
  };
}

function checkText(expression: Expression & { readonly kind: 'text' }): Checked {
  const { text, span } = expression;
  const type: ValueType = text === '' ? { kind: 'blank' } : { kind: 'text' };
  return { kind: 'constant', type, value: { kind: 'text', text }, span };
}

function checkSigned(
  checking: Checking,
  expression: Expression & { readonly kind: 'unary' },
): Checked | undefined {
  const { operand, operator, span } = expression;
  const checked = checking.check(operand, 'any');
  if (checked === undefined) return undefined;
  const dimension = arithmeticDimension(checked.type);
  const written = expressionText(operand);
  if (dimension === undefined) {
    const details = { operand: written, found: typeName(checked.type), operator };
    return refused(checking, formulaProblem('cannot-calculate', details), operand.span);
  }
  if (operator === '+') return checked;
  if (dimension !== 'free' && dimension.tag === 'point') {
    return refused(checking, formulaProblem('cannot-negate', { operand: written }), span);
  }
  const type = dimension === 'free' ? { kind: 'zero' as const } : quantityType(dimension);
  return { kind: 'negative', operand: checked, type, span };
}

function checkPercent(
  checking: Checking,
  expression: Expression & { readonly kind: 'percent' },
): Checked | undefined {
  const { operand, span } = expression;
  const checked = checking.check(operand, 'any');
  if (checked === undefined) return undefined;
  const dimension = arithmeticDimension(checked.type);
  if (dimension !== 'free' && (dimension === undefined || !sameDimension(dimension, plain))) {
    const details = { operand: expressionText(operand), found: typeName(checked.type) };
    return refused(checking, formulaProblem('cannot-percent', details), span);
  }
  const type = dimension === 'free' ? checked.type : quantityType(plain);
  const hundredth: Checked = {
    kind: 'constant',
    type: quantityType(plain),
    value: { kind: 'quantity', base: 0.01, dimension: plain },
    span,
  };
  return { kind: 'binary', operator: '*', left: checked, right: hundredth, type, span };
}

function checkExpression(
  checking: Checking,
  expression: Expression,
  want: Want,
): Checked | undefined {
  switch (expression.kind) {
    case 'quantity':
      return checkLiteral(expression);
    case 'text':
      return checkText(expression);
    case 'path':
      return checkPath(checking, expression, want);
    case 'list': {
      const problem = formulaProblem('list-not-here', { list: expressionText(expression) });
      return refused(checking, problem, expression.span);
    }
    case 'call':
      return checkCall(checking, expression, want);
    case 'unary':
      return checkSigned(checking, expression);
    case 'percent':
      return checkPercent(checking, expression);
    case 'binary':
      return checkBinary(checking, expression);
  }
}

/**
 * Resolves the names of a formula, and checks dimensions and arguments before anything is calculated.
 * `wanted` is what the cell holds; it also tells choice words from columns.
 *
 * @returns a tree when nothing is wrong; in any case the problems and what the formula depends on, so
 * that it is checked again when one of these changes
 */
export function checkFormula(
  expression: Expression,
  scope: Scope,
  wanted: Want = 'any',
): CheckOutcome {
  const checking: Checking = {
    scope,
    problems: [],
    reads: new Map(),
    rows: new Map(),
    watches: new Set(),
    check: (one, want) => checkExpression(checking, one, want),
  };
  const checked = checking.check(expression, wanted);
  const answer =
    checked === undefined ? undefined : checkAnswer(checking, { checked, expression }, wanted);
  return {
    checked: checking.problems.length === 0 ? answer : undefined,
    problems: checking.problems,
    reads: [...checking.reads.values()],
    rows: [...checking.rows.values()],
    watches: [...checking.watches],
  };
}

import { plain, sameDimension } from '../units/dimension.ts';
import { completingUnit } from '../units/standard-units.ts';
import { refused, type Checking, type Want } from './checking.ts';
import type { Checked } from './checked.ts';
import type { Expression } from './expression.ts';
import { expressionText } from './expression-text.ts';
import { formulaProblem } from './formula-problems.ts';
import { isPiExpression } from './pi-expression.ts';
import type { ValueType } from './value.ts';
import { isWords, typeName } from './value-type.ts';

function quantityFits(type: ValueType, wanted: ValueType, expression: Expression): boolean {
  if (wanted.kind !== 'quantity') return type.kind === 'zero';
  if (type.kind === 'zero') return wanted.dimension.tag !== 'point';
  if (type.kind !== 'quantity') return false;
  if (sameDimension(type.dimension, wanted.dimension)) return true;
  const radians = wanted.dimension.tag === 'angle' && sameDimension(type.dimension, plain);
  return radians && isPiExpression(expression);
}

function fits(type: ValueType, wanted: ValueType, expression: Expression): boolean {
  if (type.kind === 'blank') return true;
  switch (wanted.kind) {
    case 'quantity':
    case 'zero':
      return quantityFits(type, wanted, expression);
    case 'blank':
      return true;
    case 'text':
      return isWords(type);
    case 'choice':
      return type.kind === 'choice' && type.choices.some((one) => wanted.choices.includes(one));
    case 'yes-no':
    case 'shape':
    case 'link':
      return type.kind === wanted.kind;
  }
}

function wayOut(
  checked: Checked,
  expression: Expression,
  wanted: ValueType,
  checking: Checking,
): string {
  if (wanted.kind !== 'quantity' || checked.type.kind !== 'quantity') {
    return wanted.kind === 'text' ? ` Write SHOW(${expressionText(expression)}).` : '';
  }
  if (!sameDimension(checked.type.dimension, plain)) return '';
  if (expression.kind === 'quantity') {
    const unit = completingUnit(wanted.dimension, checking.scope.settings);
    return unit === undefined ? '' : ` Write ${expressionText(expression)}${unit}.`;
  }
  return wanted.dimension.tag === 'angle'
    ? ' An angle times or divided by something is a plain number in radians; RADIANS(DEGREES(tilt) / 2) is an angle again.'
    : '';
}

/** The whole formula against what its cell holds. */
export function checkAnswer(
  checking: Checking,
  answer: { readonly checked: Checked; readonly expression: Expression },
  wanted: Want,
): Checked | undefined {
  const { checked, expression } = answer;
  if (wanted === 'any' || fits(checked.type, wanted, expression)) return checked;
  if (checked.type.kind === 'zero') {
    const temperature = wanted.kind === 'quantity' && wanted.dimension.tag === 'point';
    if (temperature) return refused(checking, formulaProblem('zero-temperature'), expression.span);
  }
  const found = typeName(checked.type);
  if (wanted.kind === 'choice') {
    const problem = formulaProblem('answer-choice', { found, choices: wanted.choices.join(', ') });
    return refused(checking, problem, expression.span);
  }
  const suggestion = wayOut(checked, expression, wanted, checking);
  const problem = formulaProblem('answer-dimension', {
    found,
    wanted: typeName(wanted),
    suggestion,
  });
  return refused(checking, problem, expression.span);
}

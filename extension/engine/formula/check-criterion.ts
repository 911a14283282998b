import { plain, sameDimension, type Dimension } from '../units/dimension.ts';
import { wantedName } from '../units/wanted.ts';
import { refused, type Checking } from './checking.ts';
import type { Checked } from './checked.ts';
import { readCriterion } from './criterion.ts';
import { expressionText } from './expression-text.ts';
import { formulaProblem } from './formula-problems.ts';
import { literalExample, type Given } from './given.ts';
import { arithmeticDimension, isWords } from './value-type.ts';

/** A criterion, against the dimension of the values it is held to (undefined: text). */
export function checkCriterion(
  checking: Checking,
  given: Given,
  of: Dimension | 'free' | undefined,
): Checked | undefined {
  const { expression } = given;
  const checked = checking.check(expression, 'any');
  if (checked === undefined || of === 'free') return checked;
  const { settings } = checking.scope;
  if (checked.kind === 'constant' && checked.value.kind === 'text') {
    const read = readCriterion(checked.value.text, of, settings);
    return read.ok ? checked : refused(checking, read.problem, expression.span);
  }
  if (of === undefined) return checked;
  const found = wantedName(of);
  const example = `">${literalExample(of, settings)}"`;
  if (isWords(checked.type)) {
    if (sameDimension(of, plain)) return checked;
    const problem = formulaProblem('argument-criterion-computed', { found, example });
    return refused(checking, problem, expression.span);
  }
  const dimension = arithmeticDimension(checked.type);
  if (dimension === 'free' || (dimension !== undefined && sameDimension(dimension, of)))
    return checked;
  const details = { criterion: expressionText(expression), found, example };
  return refused(checking, formulaProblem('argument-criterion', details), expression.span);
}

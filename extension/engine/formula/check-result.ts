import {
  divided,
  multiplied,
  plain,
  raised,
  rooted,
  sameDimension,
  type Dimension,
} from '../units/dimension.ts';
import type { CheckedArguments } from './check-letters.ts';
import { powerType } from './check-operators.ts';
import { noteProblem, untyped, type Checking } from './checking.ts';
import type { Checked } from './checked.ts';
import { expressionText } from './expression-text.ts';
import { formulaProblem } from './formula-problems.ts';
import { parameterIndex } from './parameters.ts';
import { unitSuggestion } from './sides.ts';
import type { ValueType } from './value.ts';
import { arithmeticDimension, joinedType, quantityType, typeName } from './value-type.ts';

function fixedDimension(checked: Checked | undefined): Dimension | undefined {
  if (checked === undefined) return undefined;
  const dimension = arithmeticDimension(checked.type);
  return dimension === 'free' ? undefined : dimension;
}

function pointFault(checking: Checking, given: CheckedArguments): boolean {
  const index = given.args.findIndex((checked) => fixedDimension(checked)?.tag === 'point');
  const expression = given.call.args[index];
  if (expression === undefined) return false;
  const details = { name: given.entry.name, argument: expressionText(expression) };
  noteProblem(checking, formulaProblem('argument-temperature', details), expression.span);
  return true;
}

/** A list of lengths has no product: its dimension would hang on the number of rows. */
function listFault(checking: Checking, given: CheckedArguments): boolean {
  const index = given.args.findIndex((checked) => {
    const dimension = checked?.kind === 'list' ? fixedDimension(checked) : undefined;
    return dimension !== undefined && !sameDimension(dimension, plain);
  });
  const expression = given.call.args[index];
  if (expression === undefined) return false;
  const details = { list: expressionText(expression) };
  noteProblem(checking, formulaProblem('list-product', details), expression.span);
  return true;
}

function productType(checking: Checking, given: CheckedArguments): ValueType | undefined {
  if (pointFault(checking, given) || listFault(checking, given)) return undefined;
  const dimensions = given.args.flatMap((checked) => fixedDimension(checked) ?? []);
  return quantityType(dimensions.reduce(multiplied, plain));
}

/** A dimension that is reckoned from those of the arguments. */
function worked(rule: 'ratio' | 'square' | 'root', given: CheckedArguments): Dimension {
  const dimensions = given.args.map(fixedDimension);
  const first = dimensions[0] ?? plain;
  switch (rule) {
    case 'ratio':
      return divided(first, dimensions[1] ?? plain);
    case 'square':
      return raised(dimensions.find((one) => one !== undefined) ?? plain, 2);
    case 'root':
      return rooted(first);
  }
}

function callPower(checking: Checking, given: CheckedArguments): ValueType | undefined {
  const [left, right] = given.call.args;
  const exponent = given.args[1];
  if (left === undefined || right === undefined || exponent === undefined) return undefined;
  const { span } = given.call;
  const base = fixedDimension(given.args[0]) ?? plain;
  return powerType(checking, { left, right, span }, { left: base, right: exponent });
}

function branchIndexes(given: CheckedArguments, branches: readonly number[]): readonly number[] {
  return given.args
    .map((_, index) => index)
    .filter((index) => branches.includes(parameterIndex(given.entry, index) ?? -1));
}

function branchesType(
  checking: Checking,
  given: CheckedArguments,
  branches: readonly number[],
): ValueType | undefined {
  let whole: ValueType = { kind: 'blank' };
  let first = '';
  for (const index of branchIndexes(given, branches)) {
    const expression = given.call.args[index];
    const checked = given.args[index];
    if (expression === undefined || checked === undefined) continue;
    const joined = joinedType(whole, checked.type);
    const second = expressionText(expression);
    if (joined === undefined) {
      const firstFound = typeName(whole);
      const secondFound = typeName(checked.type);
      const beside = whole.kind === 'quantity' ? whole.dimension : 'free';
      const suggestion = unitSuggestion(expression, beside, checking.scope.settings);
      const { name } = given.entry;
      const details = { name, first, firstFound, second, secondFound, suggestion };
      return untyped(checking, formulaProblem('branches-differ', details), expression.span);
    }
    if (joined !== whole) first = second;
    whole = joined;
  }
  return whole;
}

function sharedType(dimension: Dimension | undefined): ValueType {
  return dimension === undefined ? { kind: 'zero' } : quantityType(dimension);
}

/** The type of a call's answer by its function's result rule; undefined after a problem. */
export function resultType(
  checking: Checking,
  given: CheckedArguments,
  letters: ReadonlyMap<string, Dimension>,
): ValueType | undefined {
  const { result } = given.entry;
  switch (result.kind) {
    case 'quantity':
      return quantityType(result.dimension);
    case 'same':
      return sharedType(letters.get(result.letter));
    case 'branches':
      return branchesType(checking, given, result.arguments);
    case 'text':
    case 'yes-no':
    case 'shape':
      return { kind: result.kind };
    case 'power':
      return callPower(checking, given);
    case 'product':
      return productType(checking, given);
    default:
      return pointFault(checking, given) ? undefined : quantityType(worked(result.kind, given));
  }
}

import { plain, sameDimension, type Dimension } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { completingUnit, standardUnit } from '../units/standard-units.ts';
import { unitOf } from '../units/unit-words.ts';
import { exampleOf, wantedName } from '../units/wanted.ts';
import type { FunctionEntry, Parameter, ParameterType } from './catalogue.ts';
import { checkList, checkRow } from './check-path.ts';
import { textAllowed } from './check-operators.ts';
import { refused, type Checking, type Want } from './checking.ts';
import type { Checked } from './checked.ts';
import { readCriterion } from './criterion.ts';
import type { Expression } from './expression.ts';
import { expressionText } from './expression-text.ts';
import { formulaProblem } from './formula-problems.ts';
import { isPiExpression } from './pi-expression.ts';
import { arithmeticDimension, isWords, typeName } from './value-type.ts';

/** One argument of a call, at its parameter. */
export interface Given {
  readonly entry: FunctionEntry;
  readonly parameter: Parameter;
  readonly expression: Expression;
}

type Kind<K extends ParameterType['kind']> = ParameterType & { readonly kind: K };

function oneOf(dimensions: readonly Dimension[]): string {
  return dimensions.map(wantedName).join(' or ');
}

/** A literal as it is typed in a formula, without a space before its unit. */
function literalExample(of: Dimension, settings: UnitSettings): string {
  return exampleOf(of, settings).replace(/ (?=[A-Za-z%])/, '');
}

function names(given: Given): { name: string; parameter: string; argument: string } {
  return {
    name: given.entry.name,
    parameter: given.parameter.name,
    argument: expressionText(given.expression),
  };
}

/** Functions that cut decimals, with what rounds to a step instead. */
const roundings = new Map([
  ['ROUND', 'ROUNDTO'],
  ['ROUNDUP', 'ROUNDUPTO'],
  ['ROUNDDOWN', 'ROUNDDOWNTO'],
  ['TRUNC', 'ROUNDDOWNTO'],
  ['INT', 'ROUNDDOWNTO'],
  ['EVEN', 'ROUNDUPTO'],
  ['ODD', 'ROUNDUPTO'],
]);

function stepExample(of: Dimension, settings: UnitSettings): string {
  if (of.length === 1 && settings.units === 'in') return '1/16in';
  return `1${completingUnit(of, settings) ?? standardUnit(of, settings) ?? 'in'}`;
}

function dimensionFault(
  checking: Checking,
  given: Given,
  fault: { readonly checked: Checked; readonly wanted: readonly Dimension[] },
): undefined {
  const { expression, entry } = given;
  const { checked, wanted } = fault;
  const { settings } = checking.scope;
  const details = { ...names(given), wanted: oneOf(wanted), found: typeName(checked.type) };
  const rounding = roundings.get(entry.name);
  if (rounding !== undefined && checked.type.kind === 'quantity') {
    const step = stepExample(checked.type.dimension, settings);
    const better = `${rounding}(${details.argument}, ${step})`;
    return refused(
      checking,
      formulaProblem('round-dimension', { ...details, better }),
      expression.span,
    );
  }
  const first = wanted[0] ?? plain;
  if (expression.kind === 'quantity' && expression.unit === '') {
    const unit = completingUnit(first, settings);
    const example =
      unit === undefined ? literalExample(first, settings) : `${details.argument}${unit}`;
    const problem = formulaProblem('argument-no-unit', { ...details, example });
    return refused(checking, problem, expression.span);
  }
  return refused(checking, formulaProblem('argument-dimension', details), expression.span);
}

function fitsOneOf(dimension: Dimension, wanted: readonly Dimension[], given: Given): boolean {
  if (wanted.some((one) => sameDimension(one, dimension))) return true;
  return (
    sameDimension(dimension, plain) &&
    wanted.some(({ tag }) => tag === 'angle') &&
    isPiExpression(given.expression)
  );
}

function quantityArgument(
  checking: Checking,
  given: Given,
  checked: Checked,
  wanted: readonly Dimension[],
): Checked | undefined {
  const dimension = arithmeticDimension(checked.type);
  if (dimension === undefined) return dimensionFault(checking, given, { checked, wanted });
  if (dimension === 'free') {
    const scale = wanted.length > 0 && wanted.every(({ tag }) => tag === 'point');
    if (!scale || checked.type.kind === 'blank') return checked;
    return refused(checking, formulaProblem('zero-temperature'), given.expression.span);
  }
  if (fitsOneOf(dimension, wanted, given)) return checked;
  return dimensionFault(checking, given, { checked, wanted });
}

function numberArgument(checking: Checking, given: Given, checked: Checked): Checked | undefined {
  const dimension = arithmeticDimension(checked.type);
  const { type } = given.parameter;
  if (dimension === undefined) {
    const details = {
      ...names(given),
      wanted: 'a number or a measure',
      found: typeName(checked.type),
    };
    return refused(checking, formulaProblem('argument-dimension', details), given.expression.span);
  }
  const scale = dimension !== 'free' && dimension.tag === 'point';
  if (type.kind !== 'same' || type.points === true || !scale) return checked;
  return refused(
    checking,
    formulaProblem('argument-temperature', names(given)),
    given.expression.span,
  );
}

function typedArgument(
  checking: Checking,
  given: Given,
  want: { readonly checked: Checked; readonly fits: boolean; readonly name: string },
): Checked | undefined {
  if (want.fits) return want.checked;
  const details = { ...names(given), wanted: want.name, found: typeName(want.checked.type) };
  return refused(checking, formulaProblem('argument-dimension', details), given.expression.span);
}

function yesNoArgument(checking: Checking, given: Given, checked: Checked): Checked | undefined {
  const { type } = checked;
  const fits =
    type.kind === 'yes-no' ||
    type.kind === 'zero' ||
    type.kind === 'blank' ||
    (type.kind === 'quantity' && sameDimension(type.dimension, plain));
  return typedArgument(checking, given, { checked, fits, name: 'yes or no' });
}

function choiceArgument(
  checking: Checking,
  given: Given,
  wanted: Kind<'choice'>,
): Checked | undefined {
  const { expression } = given;
  const { choices } = wanted;
  if (expression.kind === 'text' && choices.includes(expression.text)) {
    const problem = formulaProblem('argument-choice-quoted', { word: expression.text });
    return refused(checking, problem, expression.span);
  }
  const details = { ...names(given), choices: choices.join(', ') };
  const word = expression.kind === 'path' && expression.steps.length === 1 ? expression : undefined;
  const isChoice = word !== undefined && choices.includes(word.steps[0]?.word ?? '');
  if (word !== undefined && !isChoice && !checking.scope.cell(word.steps).found) {
    return refused(checking, formulaProblem('argument-choice', details), expression.span);
  }
  const checked = checking.check(expression, wanted);
  if (checked === undefined) return undefined;
  const { type } = checked;
  const fits =
    type.kind === 'blank' ||
    (type.kind === 'choice' && type.choices.some((choice) => choices.includes(choice)));
  return fits
    ? checked
    : refused(checking, formulaProblem('argument-choice', details), expression.span);
}

function rowArgument(checking: Checking, given: Given): Checked | undefined {
  const { expression } = given;
  if (expression.kind === 'path') return checkRow(checking, expression);
  return refused(checking, formulaProblem('argument-row', names(given)), expression.span);
}

/** A unit as it is written: one word, two at a slash, or either in quotes. */
function unitText(expression: Expression): string | undefined {
  if (expression.kind === 'text') return expression.text;
  if (expression.kind === 'path' && expression.steps.length === 1) return expression.steps[0]?.word;
  if (expression.kind !== 'binary' || expression.operator !== '/') return undefined;
  const [left, right] = [unitText(expression.left), unitText(expression.right)];
  return left === undefined || right === undefined ? undefined : `${left}/${right}`;
}

function unitArgument(checking: Checking, given: Given): Checked | undefined {
  const { expression } = given;
  const { settings } = checking.scope;
  const text = unitText(expression);
  const unit = text === undefined ? undefined : unitOf(text, settings);
  if (unit === undefined) {
    const problem = formulaProblem('argument-unit', { ...names(given), example: settings.units });
    return refused(checking, problem, expression.span);
  }
  const value = { kind: 'text', text: unit.word } as const;
  return { kind: 'constant', type: { kind: 'text' }, value, span: expression.span };
}

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

function valueOf(checking: Checking, given: Given, want: Want): Checked | undefined {
  const { expression, parameter } = given;
  if (expression.kind === 'list' && parameter.list === true) return checkList(checking, expression);
  return checking.check(expression, want);
}

function wantOf(type: ParameterType, branch: Want): Want {
  if (type.kind === 'yes-no') return { kind: 'yes-no' };
  return type.kind === 'value' ? branch : 'any';
}

/**
 * An argument against its parameter. `branch` is what the whole call wants where the argument is one of
 * its answers. Criteria wait for the others: `checkCriterion`.
 */
export function checkArgument(checking: Checking, given: Given, branch: Want): Checked | undefined {
  const { type } = given.parameter;
  if (type.kind === 'row') return rowArgument(checking, given);
  if (type.kind === 'unit') return unitArgument(checking, given);
  if (type.kind === 'choice') return choiceArgument(checking, given, type);
  const checked = valueOf(checking, given, wantOf(type, branch));
  if (checked === undefined) return undefined;
  switch (type.kind) {
    case 'quantity':
      return quantityArgument(checking, given, checked, type.dimensions);
    case 'same':
    case 'any-quantity':
      return numberArgument(checking, given, checked);
    case 'text':
      return textAllowed(checking, given.expression, checked.type) ? checked : undefined;
    case 'yes-no':
      return yesNoArgument(checking, given, checked);
    case 'shape':
    case 'shape-or-length': {
      const shape = checked.type.kind === 'shape' || checked.type.kind === 'blank';
      if (type.kind === 'shape' || shape) {
        return typedArgument(checking, given, { checked, fits: shape, name: 'a shape' });
      }
      return quantityArgument(checking, given, checked, [{ ...plain, length: 1 }]);
    }
    case 'criterion':
    case 'value':
      return checked;
  }
}

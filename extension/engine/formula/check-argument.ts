import { length, plain, sameDimension, type Dimension } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { completingUnit, standardUnit } from '../units/standard-units.ts';
import { unitOf } from '../units/unit-words.ts';
import { wantedName } from '../units/wanted.ts';
import type { ParameterType } from './catalogue.ts';
import { checkList, checkRow } from './check-path.ts';
import { textAllowed } from './check-operators.ts';
import { refused, type Checking, type Want } from './checking.ts';
import type { Checked } from './checked.ts';
import type { Expression } from './expression.ts';
import { argumentNames, literalExample, type Given } from './given.ts';
import { formulaProblem } from './formula-problems.ts';
import { isPiExpression } from './pi-expression.ts';
import type { ValueType } from './value.ts';
import { arithmeticDimension, typeName } from './value-type.ts';

type Kind<K extends ParameterType['kind']> = ParameterType & { readonly kind: K };

function oneOf(dimensions: readonly Dimension[]): string {
  return dimensions.map(wantedName).join(' or ');
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
): Checked | undefined {
  const { expression, entry } = given;
  const { checked, wanted } = fault;
  const { settings } = checking.scope;
  const details = { ...argumentNames(given), wanted: oneOf(wanted), found: typeName(checked.type) };
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
      ...argumentNames(given),
      wanted: 'a number or a measure',
      found: typeName(checked.type),
    };
    return refused(checking, formulaProblem('argument-dimension', details), given.expression.span);
  }
  const scale = dimension !== 'free' && dimension.tag === 'point';
  if (type.kind !== 'same' || type.points === true || !scale) return checked;
  return refused(
    checking,
    formulaProblem('argument-temperature', argumentNames(given)),
    given.expression.span,
  );
}

function typedArgument(
  checking: Checking,
  given: Given,
  want: { readonly checked: Checked; readonly fits: boolean; readonly name: string },
): Checked | undefined {
  if (want.fits) return want.checked;
  const details = {
    ...argumentNames(given),
    wanted: want.name,
    found: typeName(want.checked.type),
  };
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

function isChoiceOf(type: ValueType, choices: readonly string[]): boolean {
  if (type.kind === 'blank') return true;
  return type.kind === 'choice' && type.choices.some((choice) => choices.includes(choice));
}

/** A bare word that is neither one of the choices nor a column. */
function isStrayWord(
  checking: Checking,
  expression: Expression,
  choices: readonly string[],
): boolean {
  if (expression.kind !== 'path' || expression.steps.length > 1) return false;
  const word = expression.steps[0]?.word ?? '';
  return !choices.includes(word) && !checking.scope.cell(expression.steps).found;
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
  const problem = formulaProblem('argument-choice', {
    ...argumentNames(given),
    choices: choices.join(', '),
  });
  if (isStrayWord(checking, expression, choices))
    return refused(checking, problem, expression.span);
  const checked = checking.check(expression, wanted);
  if (checked === undefined || isChoiceOf(checked.type, choices)) return checked;
  return refused(checking, problem, expression.span);
}

function rowArgument(checking: Checking, given: Given): Checked | undefined {
  const { expression } = given;
  if (expression.kind === 'path') return checkRow(checking, expression);
  return refused(checking, formulaProblem('argument-row', argumentNames(given)), expression.span);
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
    const problem = formulaProblem('argument-unit', {
      ...argumentNames(given),
      example: settings.units,
    });
    return refused(checking, problem, expression.span);
  }
  const value = { kind: 'text', text: unit.word } as const;
  return { kind: 'constant', type: { kind: 'text' }, value, span: expression.span };
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

function shapeArgument(
  checking: Checking,
  given: Given,
  checked: Checked,
  lengthToo: boolean,
): Checked | undefined {
  const fits = checked.type.kind === 'shape' || checked.type.kind === 'blank';
  if (fits || !lengthToo) return typedArgument(checking, given, { checked, fits, name: 'a shape' });
  return quantityArgument(checking, given, checked, [length]);
}

function valueArgument(checking: Checking, given: Given, checked: Checked): Checked | undefined {
  const { type } = given.parameter;
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
    case 'shape-or-length':
      return shapeArgument(checking, given, checked, type.kind === 'shape-or-length');
    default:
      return checked;
  }
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
  return checked === undefined ? undefined : valueArgument(checking, given, checked);
}

import { plain, sameDimension, type Dimension } from '../units/dimension.ts';
import { completingUnit } from '../units/standard-units.ts';
import { wantedName } from '../units/wanted.ts';
import type { FunctionEntry } from './catalogue.ts';
import { refused, type Checking } from './checking.ts';
import type { Checked } from './checked.ts';
import type { Expression } from './expression.ts';
import { expressionText } from './expression-text.ts';
import { formulaProblem } from './formula-problems.ts';
import { parameterOf } from './parameters.ts';
import { isPiExpression } from './pi-expression.ts';
import { arithmeticDimension, quantityType, typeName } from './value-type.ts';

export type CallExpression = Expression & { readonly kind: 'call' };

/** A call whose arguments stand beside the checked ones; undefined where one was left out. */
export interface CheckedArguments {
  readonly entry: FunctionEntry;
  readonly call: CallExpression;
  readonly args: readonly (Checked | undefined)[];
}

interface Lettered {
  readonly parameter: string;
  readonly expression: Expression;
  readonly dimension: Dimension;
}

function letterOf(entry: FunctionEntry, argument: number): string | undefined {
  const type = parameterOf(entry, argument)?.type;
  return type?.kind === 'same' ? type.letter : undefined;
}

function argumentsWith(
  letter: string,
  { entry, call, args }: CheckedArguments,
): readonly Lettered[] {
  return args.flatMap((checked, index) => {
    const expression = call.args[index];
    if (checked === undefined || expression === undefined) return [];
    const parameter = parameterOf(entry, index)?.name ?? '';
    if (letterOf(entry, index) !== letter) return [];
    const dimension = arithmeticDimension(checked.type);
    return dimension === undefined || dimension === 'free'
      ? []
      : [{ parameter, expression, dimension }];
  });
}

function agree(a: Lettered, b: Lettered): boolean {
  if (sameDimension(a.dimension, b.dimension)) return true;
  const [angled, other] = a.dimension.tag === 'angle' ? [a, b] : [b, a];
  return (
    angled.dimension.tag === 'angle' &&
    sameDimension(other.dimension, plain) &&
    isPiExpression(other.expression)
  );
}

function unitless(checking: Checking, name: string, odd: Lettered, whole: Dimension): boolean {
  if (odd.expression.kind !== 'quantity' || odd.expression.unit !== '') return false;
  const { settings } = checking.scope;
  const unit = completingUnit(whole, settings);
  if (unit === undefined) return false;
  const argument = expressionText(odd.expression);
  const details = {
    name,
    wanted: wantedName(whole),
    parameter: odd.parameter,
    argument,
    example: `${argument}${unit}`,
  };
  refused(checking, formulaProblem('argument-no-unit', details), odd.expression.span);
  return true;
}

function differ(checking: Checking, name: string, first: Lettered, second: Lettered): void {
  if (unitless(checking, name, second, first.dimension)) return;
  if (unitless(checking, name, first, second.dimension)) return;
  const details = {
    name,
    first: expressionText(first.expression),
    firstFound: typeName(quantityType(first.dimension)),
    second: expressionText(second.expression),
    secondFound: typeName(quantityType(second.dimension)),
  };
  refused(checking, formulaProblem('argument-differs', details), second.expression.span);
}

/**
 * The dimension all arguments of each letter share (absent where all of them fit any); undefined after a
 * problem where two of them differ.
 */
export function letterDimensions(
  checking: Checking,
  given: CheckedArguments,
): ReadonlyMap<string, Dimension> | undefined {
  const letters = new Map<string, Dimension>();
  for (const { type } of given.entry.parameters) {
    if (type.kind !== 'same' || letters.has(type.letter)) continue;
    const group = argumentsWith(type.letter, given);
    const whole = group.find(({ dimension }) => dimension.tag === 'angle') ?? group[0];
    if (whole === undefined) continue;
    const odd = group.find((one) => !agree(whole, one));
    if (odd !== undefined) {
      differ(checking, given.entry.name, whole, odd);
      return undefined;
    }
    letters.set(type.letter, whole.dimension);
  }
  return letters;
}

import type { Argument, FunctionContext, Parameter } from '../formula/catalogue.ts';
import type { Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import type { Dimension } from '../units/dimension.ts';
import type { Quantity } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import { tradeProblem } from './trade-problems.ts';

/** A number or quantity that a function takes, with the name its code knows it by. */
export interface NumberParameter<Name extends string = string> extends Parameter {
  readonly name: Name;
  /** Value of an optional one that is left out or blank, in base units. */
  readonly otherwise?: number;
}

interface ParameterForm<Name extends string> {
  readonly name: Name;
  readonly dimension: Dimension;
  readonly help: string;
}

/** A parameter that must be given. */
export function needed<const Name extends string>(
  name: Name,
  dimension: Dimension,
  help: string,
): NumberParameter<Name> {
  return { name, help, type: { kind: 'quantity', dimensions: [dimension] } };
}

/** A parameter that may be left out. */
export function optional<const Name extends string>(
  form: ParameterForm<Name>,
  otherwise: number,
): NumberParameter<Name> {
  const { name, dimension, help } = form;
  return {
    name,
    help,
    type: { kind: 'quantity', dimensions: [dimension] },
    optional: true,
    otherwise,
  };
}

/** The number in an argument, in base units; undefined where it was left out or is no quantity. */
export function numberIn(argument: Argument): number | undefined {
  const quantity = quantityIn(argument);
  return quantity?.base;
}

/** The quantity in an argument; undefined where it was left out or is something else. */
export function quantityIn(argument: Argument): Quantity | undefined {
  if (argument === undefined || !('kind' in argument) || argument.kind !== 'quantity') {
    return undefined;
  }
  return { base: argument.base, dimension: argument.dimension };
}

/** The word in an argument that is a choice, a unit or a text; undefined where it was left out. */
export function wordIn(argument: Argument): string | undefined {
  if (argument === undefined || !('kind' in argument)) return undefined;
  if (argument.kind === 'choice') return argument.word;
  return argument.kind === 'text' ? argument.text : undefined;
}

/** The problem of a needed argument that is blank. */
export function missing(functionName: string, parameter: Parameter): Problem {
  const { name, help } = parameter;
  const sentence = `${help.charAt(0).toLowerCase()}${help.slice(1)}`.replace(/\.$/, '');
  return tradeProblem('argument-missing', { function: functionName, name, help: sentence });
}

/** All numbers of a call by name, in base units. */
export function numbersOf<Name extends string>(
  functionName: string,
  parameters: readonly NumberParameter<Name>[],
  args: readonly Argument[],
): Result<Readonly<Record<Name, number>>> {
  const numbers: Partial<Record<Name, number>> = {};
  for (const [index, parameter] of parameters.entries()) {
    const value = numberIn(args[index]) ?? parameter.otherwise;
    if (value === undefined) return failed(missing(functionName, parameter));
    numbers[parameter.name] = value;
  }
  return ok(numbers as Readonly<Record<Name, number>>);
}

/** Texts of values for the sentences of refusals. */
export function shownWith(
  context: FunctionContext,
): (base: number, dimension: Dimension, unit?: string) => string {
  return (base, dimension, unit) => showQuantity({ base, dimension }, context.settings, unit).text;
}

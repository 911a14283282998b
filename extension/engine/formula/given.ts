import type { Dimension } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { exampleOf } from '../units/wanted.ts';
import type { FunctionEntry, Parameter } from './catalogue.ts';
import type { Expression } from './expression.ts';
import { expressionText } from './expression-text.ts';

/** One argument of a call, at its parameter. */
export interface Given {
  readonly entry: FunctionEntry;
  readonly parameter: Parameter;
  readonly expression: Expression;
}

/** A literal as it is typed in a formula, without a space before its unit. */
export function literalExample(of: Dimension, settings: UnitSettings): string {
  return exampleOf(of, settings).replace(/ (?=[A-Za-z%])/, '');
}

/** What sentences call the parts of an argument. */
export function argumentNames(given: Given): { name: string; parameter: string; argument: string } {
  return {
    name: given.entry.name,
    parameter: given.parameter.name,
    argument: expressionText(given.expression),
  };
}

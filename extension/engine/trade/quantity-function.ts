import type { FunctionContext, FunctionEntry } from '../formula/catalogue.ts';
import type { Problem } from '../problems.ts';
import { failed, ok } from '../result.ts';
import { plain, type Dimension } from '../units/dimension.ts';
import { numbersOf, shownWith, type NumberParameter } from './arguments.ts';
import { rangeProblem, type Range } from './range.ts';

type Show = (base: number, dimension: Dimension, unit?: string) => string;

/** A function from quantities to a quantity. */
interface QuantityFunction<Name extends string> {
  readonly name: string;
  readonly group: FunctionEntry['group'];
  readonly help: string;
  readonly parameters: readonly NumberParameter<Name>[];
  readonly dimension: Dimension;
  readonly example: FunctionEntry['example'];
  readonly source: string;
  /** Ranges by parameter; a parameter that is not named must be at least 0. */
  readonly ranges?: Readonly<Partial<Record<Name, Range>>>;
  /** Why these numbers, each in its range, have no answer together. */
  readonly refuse?: (numbers: Readonly<Record<Name, number>>, show: Show) => Problem | undefined;
  readonly answer: (numbers: Readonly<Record<Name, number>>) => number;
}

function firstDimension(parameter: NumberParameter): Dimension {
  return parameter.type.kind === 'quantity' ? (parameter.type.dimensions[0] ?? plain) : plain;
}

function rangesKept<Name extends string>(
  form: QuantityFunction<Name>,
  numbers: Readonly<Record<Name, number>>,
  show: Show,
): Problem | undefined {
  for (const parameter of form.parameters) {
    const { name } = parameter;
    const problem = rangeProblem(
      {
        functionName: form.name,
        name: name.replaceAll('_', ' '),
        value: numbers[name],
        dimension: firstDimension(parameter),
        show,
      },
      form.ranges?.[name] ?? 'not-negative',
    );
    if (problem !== undefined) return problem;
  }
  return undefined;
}

/** The catalogue entry of a function from quantities to a quantity. */
export function quantityFunction<const Name extends string>(
  form: QuantityFunction<Name>,
): FunctionEntry {
  const { name, group, help, parameters, dimension, example, source } = form;
  return {
    name,
    group,
    help,
    parameters,
    result: { kind: 'quantity', dimension },
    example,
    source,
    run: (args, context: FunctionContext) => {
      const numbers = numbersOf(name, parameters, args);
      if (!numbers.ok) return numbers;
      const show = shownWith(context);
      const refusal = rangesKept(form, numbers.value, show) ?? form.refuse?.(numbers.value, show);
      if (refusal !== undefined) return failed(refusal);
      return ok({ kind: 'quantity', base: form.answer(numbers.value), dimension });
    },
  };
}

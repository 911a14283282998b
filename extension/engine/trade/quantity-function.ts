import type { FunctionContext, FunctionEntry, Parameter } from '../formula/catalogue.ts';
import type { Problem } from '../problems.ts';
import { failed, ok } from '../result.ts';
import { plain, type Dimension } from '../units/dimension.ts';
import { missing, numbersOf, shownWith, wordIn, type NumberParameter } from './arguments.ts';
import { ranged, rangeProblem, type Range } from './range.ts';

type Show = (base: number, dimension: Dimension, unit?: string) => string;
type Numbers<Name extends string> = Readonly<Record<Name, number>>;

/** A function from quantities, and perhaps a choice at the end, to a quantity. */
interface QuantityFunction<Name extends string, Choice extends string> {
  readonly name: string;
  readonly group: FunctionEntry['group'];
  readonly help: string;
  readonly parameters: readonly NumberParameter<Name>[];
  /** The last parameter, a bare word. */
  readonly choice?: {
    readonly name: string;
    readonly help: string;
    readonly choices: readonly Choice[];
  };
  readonly dimension: Dimension;
  readonly example: FunctionEntry['example'];
  readonly source: string;
  /** Ranges by parameter; a parameter that is not named must be at least 0. */
  readonly ranges?: Readonly<Partial<Record<Name, Range>>>;
  /** Why these numbers, each in its range, have no answer together. */
  readonly refuse?: (numbers: Numbers<Name>, show: Show) => Problem | undefined;
  /** The answer in base units, or why there is none. */
  readonly answer: (numbers: Numbers<Name>, choice: Choice, show: Show) => number | Problem;
}

function firstDimension(parameter: NumberParameter): Dimension {
  return parameter.type.kind === 'quantity' ? (parameter.type.dimensions[0] ?? plain) : plain;
}

function rangeOf<Name extends string, Choice extends string>(
  form: QuantityFunction<Name, Choice>,
  name: Name,
): Range {
  return form.ranges?.[name] ?? 'not-negative';
}

function rangesKept<Name extends string, Choice extends string>(
  form: QuantityFunction<Name, Choice>,
  numbers: Numbers<Name>,
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
      rangeOf(form, name),
    );
    if (problem !== undefined) return problem;
  }
  return undefined;
}

/** The parameters with the ranges that the function keeps. */
function withRanges<Name extends string, Choice extends string>(
  form: QuantityFunction<Name, Choice>,
): readonly Parameter[] {
  return form.parameters.map((parameter) => ({
    ...parameter,
    ...ranged(rangeOf(form, parameter.name)),
  }));
}

function choiceParameter(choice: {
  readonly name: string;
  readonly help: string;
  readonly choices: readonly string[];
}): Parameter {
  const { name, help, choices } = choice;
  return { name, help, type: { kind: 'choice', choices } };
}

function runOf<Name extends string, Choice extends string>(
  form: QuantityFunction<Name, Choice>,
): NonNullable<FunctionEntry['run']> {
  const { name, parameters, dimension } = form;
  return (args, context: FunctionContext) => {
    const numbers = numbersOf(name, parameters, args);
    if (!numbers.ok) return numbers;
    const word = wordIn(args[parameters.length]);
    const chosen = form.choice?.choices.find((choice) => choice === word);
    if (form.choice !== undefined && chosen === undefined) {
      return failed(missing(name, choiceParameter(form.choice)));
    }
    const show = shownWith(context);
    const refusal = rangesKept(form, numbers.value, show) ?? form.refuse?.(numbers.value, show);
    if (refusal !== undefined) return failed(refusal);
    // Functions without a choice do not look at it.
    const base = form.answer(numbers.value, chosen as Choice, show);
    return typeof base === 'number' ? ok({ kind: 'quantity', base, dimension }) : failed(base);
  };
}

/** The catalogue entry of a function from quantities to a quantity. */
export function quantityFunction<const Name extends string, const Choice extends string = never>(
  form: QuantityFunction<Name, Choice>,
): FunctionEntry {
  const { name, group, help, choice, dimension, example, source } = form;
  const listed = withRanges(form);
  return {
    name,
    group,
    help,
    parameters: choice === undefined ? listed : [...listed, choiceParameter(choice)],
    result: { kind: 'quantity', dimension },
    example,
    source,
    run: runOf(form),
  };
}

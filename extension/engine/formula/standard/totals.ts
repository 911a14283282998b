import { plain, raised, multiplied } from '../../units/dimension.ts';
import type { Argument, FunctionEntry, Parameter } from '../catalogue.ts';
import { alike, answer, anyNumber, anything, many, noAnswer, number, standard } from './make.ts';
import { dimensionOf, numberOf, numbersOf, valuesOf } from './values.ts';

/** A temperature on a scale has a greatest, a least and a mean, but no sum. */
function points(parameter: Parameter): Parameter {
  return parameter.type.kind === 'same'
    ? { ...parameter, type: { ...parameter.type, points: true } }
    : parameter;
}

const values = many(alike('values', 'Numbers or measures of one dimension, or a list'));

function middle(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? 0) + upper) / 2;
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}

interface Total {
  readonly name: string;
  readonly help: string;
  readonly parameter?: Parameter;
  readonly example: FunctionEntry['example'];
  readonly calculate: (numbers: readonly number[]) => number;
  /** Without any value there is no answer, not zero. */
  readonly needsValue?: boolean;
}

function total(form: Total): FunctionEntry {
  const { name, help, parameter = values, example, calculate } = form;
  return standard({
    name,
    help,
    parameters: [parameter],
    result: { kind: 'same', letter: 'a' },
    example,
    run: (args) => {
      const numbers = numbersOf(args);
      if (numbers.length === 0 && form.needsValue === true) {
        return noAnswer(name, 'there is no value to take');
      }
      const found = numbers.length === 0 ? 0 : calculate(numbers);
      return answer(name, found, dimensionOf(args));
    },
  });
}

function extreme(numbers: readonly number[], better: (a: number, b: number) => boolean): number {
  return numbers.reduce((best, one) => (better(one, best) ? one : best));
}

const ofOneDimension: readonly FunctionEntry[] = [
  total({
    name: 'SUM',
    help: 'All values added up; a value of a list counts once for each piece (qty) of its row.',
    parameter: { ...values, weighted: true },
    example: { formula: '=SUM(4in, 1/2in, 1/2in)', shows: '5 in' },
    calculate: sum,
  }),
  total({
    name: 'MIN',
    help: 'The least value.',
    parameter: points(values),
    example: { formula: '=MIN(4in, 1/2in)', shows: '1/2 in' },
    calculate: (numbers) => extreme(numbers, (a, b) => a < b),
  }),
  total({
    name: 'MAX',
    help: 'The greatest value.',
    parameter: points(values),
    example: { formula: '=MAX(4in, 1/2in)', shows: '4 in' },
    calculate: (numbers) => extreme(numbers, (a, b) => a > b),
  }),
  total({
    name: 'AVERAGE',
    help: 'The mean of the values; each counts once.',
    parameter: points(values),
    example: { formula: '=AVERAGE(4in, 5in)', shows: '4 1/2 in' },
    calculate: (numbers) => sum(numbers) / numbers.length,
    needsValue: true,
  }),
  total({
    name: 'MEDIAN',
    help: 'The value in the middle; of an even count the mean of the two in the middle.',
    parameter: points(values),
    example: { formula: '=MEDIAN(1in, 2in, 9in)', shows: '2 in' },
    calculate: middle,
    needsValue: true,
  }),
];

function ranked(args: readonly Argument[], sign: 1 | -1): number | undefined {
  const sorted = [...numbersOf([args[0]])].sort((a, b) => (a - b) * sign);
  return sorted[Math.trunc(numberOf(args[1]) ?? 0) - 1];
}

function rank(name: 'LARGE' | 'SMALL', example: FunctionEntry['example']): FunctionEntry {
  const word = name === 'LARGE' ? 'greatest' : 'least';
  const list: Parameter = { ...points(values), repeats: false };
  return standard({
    name,
    help: `The ${word} value but so many: rank 1 is the ${word} itself.`,
    parameters: [list, number('rank', 'Place in order, from 1')],
    result: { kind: 'same', letter: 'a' },
    example,
    run: (args) => {
      const found = ranked(args, name === 'LARGE' ? -1 : 1);
      if (found === undefined) return noAnswer(name, 'there are not so many values');
      return answer(name, found, dimensionOf([args[0]]));
    },
  });
}

const ofMany: readonly FunctionEntry[] = [
  rank('LARGE', { formula: '=LARGE(4in, 1)', shows: '4 in' }),
  rank('SMALL', { formula: '=SMALL(4in, 1)', shows: '4 in' }),
  standard({
    name: 'PRODUCT',
    help: 'All values multiplied; a length times a length is an area.',
    parameters: [many(anyNumber('values', 'Numbers or measures, or a list'))],
    result: { kind: 'product' },
    example: { formula: '=PRODUCT(2, 12in, 6in)', shows: '1 sqft' },
    run: (args) => {
      const factors = args.flatMap(valuesOf);
      const dimension = factors.reduce(
        (whole, value) => multiplied(whole, dimensionOf([value])),
        plain,
      );
      const product = numbersOf(args).reduce((whole, one) => whole * one, 1);
      return answer('PRODUCT', product, dimension);
    },
  }),
  standard({
    name: 'SUMSQ',
    help: 'The sum of the squares.',
    parameters: [values],
    result: { kind: 'square' },
    example: { formula: '=SUMSQ(1, 2, 3)', shows: '14' },
    run: (args) => {
      const squares = numbersOf(args).map((one) => one * one);
      return answer('SUMSQ', sum(squares), raised(dimensionOf(args), 2));
    },
  }),
];

function counting(
  name: string,
  help: string,
  example: FunctionEntry['example'],
): (count: (args: readonly Argument[]) => number) => FunctionEntry {
  return (count) =>
    standard({
      name,
      help,
      parameters: [many(anything('values', 'Values, or a list'))],
      result: { kind: 'quantity', dimension: plain },
      example,
      run: (args) => answer(name, count(args), plain),
    });
}

const counts: readonly FunctionEntry[] = [
  counting('COUNT', 'How many of the values are numbers or measures; rows of a list count once.', {
    formula: '=COUNT(4in, "a", 2)',
    shows: '2',
  })((args) => args.flatMap(valuesOf).filter(({ kind }) => kind === 'quantity').length),
  counting('COUNTA', 'How many of the values are not blank.', {
    formula: '=COUNTA(4in, "a", 2)',
    shows: '3',
  })((args) => args.flatMap(valuesOf).length),
];

/** Totals, means and counts of many values. Blanks are skipped. */
export const totalFunctions: readonly FunctionEntry[] = [...ofOneDimension, ...ofMany, ...counts];

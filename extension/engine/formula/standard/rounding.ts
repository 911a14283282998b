import { money, plain, sameDimension } from '../../units/dimension.ts';
import { roundedTo, sameValue } from '../../units/same-value.ts';
import type { Argument, FunctionEntry, Parameter } from '../catalogue.ts';
import { alike, answer, noAnswer, number, optional, plainFunction, standard } from './make.ts';
import { dimensionOf, numberOf } from './values.ts';

/** Rounding away from and towards zero, where `roundedTo` knows up and down. */
function awayFromZero(x: number, step: number): number {
  return Math.sign(x) * roundedTo(Math.abs(x), step, 'up');
}

function towardsZero(x: number, step: number): number {
  return Math.sign(x) * roundedTo(Math.abs(x), step, 'down');
}

/** Money may be cut to cents; other measures only to a step with its own unit. */
const cut: Parameter = {
  name: 'x',
  help: 'A plain number or an amount of money; a measure is rounded with ROUNDTO',
  type: { kind: 'quantity', dimensions: [plain, money] },
};

const digits = optional(number('digits', 'Decimals to keep; 0 unless told, below 0 for tens'));

type Cut = (x: number, step: number) => number;

function decimals(name: string, help: string, example: FunctionEntry['example']) {
  return (calculate: Cut): FunctionEntry =>
    standard({
      name,
      help,
      parameters: [cut, digits],
      result: { kind: 'branches', arguments: [0] },
      example,
      run: (args) => {
        const places = Math.trunc(numberOf(args[1]) ?? 0);
        if (Math.abs(places) > 300) return noAnswer(name, 'there are not so many digits');
        const step = places > 0 ? 1 / 10 ** places : 10 ** -places;
        return answer(name, calculate(numberOf(args[0]) ?? 0, step), dimensionOf([args[0]]));
      },
    });
}

const toDecimals: readonly FunctionEntry[] = [
  decimals('ROUND', 'The nearest number with so many decimals; halves go away from zero.', {
    formula: '=ROUND(2.15, 1)',
    shows: '2.2',
  })((x, step) => roundedTo(x, step)),
  decimals('ROUNDUP', 'Rounds away from zero.', { formula: '=ROUNDUP(1.1)', shows: '2' })(
    awayFromZero,
  ),
  decimals('ROUNDDOWN', 'Rounds towards zero.', { formula: '=ROUNDDOWN(1.9)', shows: '1' })(
    towardsZero,
  ),
  decimals('TRUNC', 'Cuts decimals off.', { formula: '=TRUNC(-1.5)', shows: '-1' })(towardsZero),
];

const whole = [number('x', 'A plain number; a measure is rounded with ROUNDTO')];

const toWhole: readonly FunctionEntry[] = [
  plainFunction({
    name: 'INT',
    help: 'The whole number at or below.',
    parameters: whole,
    example: { formula: '=INT(-1.2)', shows: '-2' },
    answer: ([x]) => roundedTo(x, 1, 'down'),
  }),
  plainFunction({
    name: 'EVEN',
    help: 'The next even number away from zero.',
    parameters: whole,
    example: { formula: '=EVEN(1)', shows: '2' },
    answer: ([x]) => awayFromZero(x, 2),
  }),
  plainFunction({
    name: 'ODD',
    help: 'The next odd number away from zero.',
    parameters: whole,
    example: { formula: '=ODD(2)', shows: '3' },
    answer: ([x]) => (x < 0 ? -1 : 1) * (roundedTo(Math.max(Math.abs(x) - 1, 0), 2, 'up') + 1),
  }),
];

const stepped: readonly Parameter[] = [
  alike('x', 'A number or a measure'),
  optional(alike('step', 'Rounds to whole multiples of it; 1 for plain numbers unless told')),
  optional(number('mode', 'Other than 0: numbers below zero go the other way')),
];

interface Stepped {
  readonly x: number;
  readonly step: number;
  readonly mirrored: boolean;
}

function steppedArguments(name: string, args: readonly Argument[]): Stepped | string {
  const x = numberOf(args[0]) ?? 0;
  const given = numberOf(args[1]);
  if (given === undefined && !sameDimension(dimensionOf([args[0]]), plain)) {
    return `a measure is rounded to a step such as ${name}(length, 1/16in)`;
  }
  const step = given ?? (x < 0 ? -1 : 1);
  if (x * step < 0) return 'number and step have different signs';
  return { x, step, mirrored: x < 0 && (numberOf(args[2]) ?? 0) !== 0 };
}

function toStep(name: string, help: string, example: FunctionEntry['example']) {
  return (calculate: (stepped: Stepped) => number | string): FunctionEntry =>
    standard({
      name,
      help,
      parameters: stepped,
      result: { kind: 'same', letter: 'a' },
      example,
      run: (args) => {
        const given = steppedArguments(name, args);
        const found = typeof given === 'string' ? given : calculate(given);
        return typeof found === 'string'
          ? noAnswer(name, found)
          : answer(name, found, dimensionOf(args.slice(0, 2)));
      },
    });
}

function remainder(x: number, by: number): number {
  const quotient = x / by;
  if (sameValue(quotient, Math.round(quotient))) return 0;
  return x - by * Math.floor(quotient);
}

const toSteps: readonly FunctionEntry[] = [
  toStep('CEILING', 'The next whole multiple of a step above.', {
    formula: '=CEILING(1.1in, 1/4in)',
    shows: '1 1/4 in',
  })(({ x, step, mirrored }) => {
    if (step === 0) return x === 0 ? 0 : 'the step is 0';
    return roundedTo(x, step, mirrored ? 'down' : 'up');
  }),
  toStep('FLOOR', 'The next whole multiple of a step below.', {
    formula: '=FLOOR(1.1in, 1/4in)',
    shows: '1 in',
  })(({ x, step, mirrored }) => (step === 0 ? 0 : roundedTo(x, step, mirrored ? 'up' : 'down'))),
  standard({
    name: 'MROUND',
    help: 'The nearest whole multiple of a step.',
    parameters: [alike('x', 'A number or a measure'), alike('step', 'The step')],
    result: { kind: 'same', letter: 'a' },
    example: { formula: '=MROUND(1.1in, 1/4in)', shows: '1 in' },
    run: (args) => {
      const step = numberOf(args[1]) ?? 0;
      const rounded = step === 0 ? 0 : roundedTo(numberOf(args[0]) ?? 0, step);
      return answer('MROUND', rounded, dimensionOf(args));
    },
  }),
];

const divisions: readonly FunctionEntry[] = [
  standard({
    name: 'MOD',
    help: 'What is left after taking out whole multiples; it has the sign of the divisor.',
    parameters: [alike('x', 'A number or a measure'), alike('by', 'The divisor')],
    result: { kind: 'same', letter: 'a' },
    example: { formula: '=MOD(10in, 3in)', shows: '1 in' },
    run: (args) => {
      const by = numberOf(args[1]) ?? 0;
      if (by === 0) return noAnswer('MOD', 'the divisor is 0');
      return answer('MOD', remainder(numberOf(args[0]) ?? 0, by), dimensionOf(args));
    },
  }),
  standard({
    name: 'QUOTIENT',
    help: 'How many whole times one goes into the other.',
    parameters: [alike('x', 'A number or a measure'), alike('by', 'The divisor')],
    result: { kind: 'quantity', dimension: plain },
    example: { formula: '=QUOTIENT(8ft, 30in)', shows: '3' },
    run: (args) => {
      const by = numberOf(args[1]) ?? 0;
      if (by === 0) return noAnswer('QUOTIENT', 'the divisor is 0');
      return answer('QUOTIENT', towardsZero((numberOf(args[0]) ?? 0) / by, 1), plain);
    },
  }),
];

/** Rounding. A value within the tolerance of equality of a whole step counts as that step. */
export const roundingFunctions: readonly FunctionEntry[] = [
  ...toDecimals,
  ...toWhole,
  ...toSteps,
  ...divisions,
];

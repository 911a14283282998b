import { raised, rooted } from '../../units/dimension.ts';
import type { FunctionEntry } from '../catalogue.ts';
import {
  alike,
  answer,
  anyNumber,
  noAnswer,
  number,
  optional,
  plainFunction,
  standard,
} from './make.ts';
import { dimensionOf, numberOf } from './values.ts';

function logarithm(x: number, base: number): number | string {
  if (x <= 0) return 'a logarithm is taken of a number above 0';
  if (base <= 0 || base === 1) return 'the base of a logarithm is above 0 and not 1';
  // log10 and log2 are exact where a quotient of logarithms leaves noise.
  if (base === 10) return Math.log10(x);
  return base === 2 ? Math.log2(x) : Math.log(x) / Math.log(base);
}

const keepingDimension: readonly FunctionEntry[] = [
  standard({
    name: 'ABS',
    help: 'The value without its sign.',
    parameters: [alike('x', 'A number or a measure')],
    result: { kind: 'same', letter: 'a' },
    example: { formula: '=ABS(-1/2in)', shows: '1/2 in' },
    run: (args) => answer('ABS', Math.abs(numberOf(args[0]) ?? 0), dimensionOf(args)),
  }),
  standard({
    name: 'SIGN',
    help: '1 for a value above zero, -1 for one below, 0 for zero.',
    parameters: [alike('x', 'A number or a measure')],
    result: { kind: 'quantity', dimension: dimensionOf([]) },
    example: { formula: '=SIGN(-4in)', shows: '-1' },
    run: (args) => answer('SIGN', Math.sign(numberOf(args[0]) ?? 0), dimensionOf([])),
  }),
  standard({
    name: 'SQRT',
    help: 'The square root; of an area it is a length.',
    parameters: [anyNumber('x', 'A number or a measure, not below 0')],
    result: { kind: 'root' },
    example: { formula: '=SQRT(144sqin)', shows: '12 in' },
    run: (args) => {
      const x = numberOf(args[0]) ?? 0;
      if (x < 0) return noAnswer('SQRT', 'a number below 0 has no square root');
      return answer('SQRT', Math.sqrt(x), rooted(dimensionOf(args)));
    },
  }),
  standard({
    name: 'POWER',
    help: 'A number to a power; a length to the power 2 is an area.',
    parameters: [
      anyNumber('x', 'A number or a measure'),
      number('exponent', 'A plain number; written out where x is a measure'),
    ],
    result: { kind: 'power' },
    example: { formula: '=POWER(12in, 2)', shows: '1 sqft' },
    run: (args) => {
      const [x, exponent] = [numberOf(args[0]) ?? 0, numberOf(args[1]) ?? 0];
      const power = x ** exponent;
      if (Number.isNaN(power)) return noAnswer('POWER', 'a number below 0 has no such root');
      return answer('POWER', power, raised(dimensionOf([args[0]]), exponent));
    },
  }),
];

const ofPlainNumbers: readonly FunctionEntry[] = [
  plainFunction({
    name: 'EXP',
    help: 'e to a power.',
    parameters: [number('x', 'The exponent')],
    example: { formula: '=EXP(1)', shows: '2.71828' },
    answer: ([x]) => Math.exp(x),
  }),
  plainFunction({
    name: 'LN',
    help: 'The natural logarithm.',
    parameters: [number('x', 'A number above 0')],
    example: { formula: '=LN(20)', shows: '2.99573' },
    answer: ([x]) => logarithm(x, Math.E),
  }),
  plainFunction({
    name: 'LOG',
    help: 'The logarithm to a base.',
    parameters: [
      number('x', 'A number above 0'),
      optional(number('base', 'The base; 10 unless told')),
    ],
    example: { formula: '=LOG(512, 8)', shows: '3' },
    answer: ([x, base]) => logarithm(x, Number.isNaN(base) ? 10 : base),
  }),
  plainFunction({
    name: 'LOG10',
    help: 'The logarithm to base 10.',
    parameters: [number('x', 'A number above 0')],
    example: { formula: '=LOG10(100)', shows: '2' },
    answer: ([x]) => logarithm(x, 10),
  }),
  plainFunction({
    name: 'PI',
    help: 'The ratio of a circle to its diameter; an angle may be written with it in radians.',
    parameters: [],
    example: { formula: '=PI()*8in', shows: '25 1/8 in' },
    answer: () => Math.PI,
  }),
];

/** Roots, powers and logarithms. */
export const arithmeticFunctions: readonly FunctionEntry[] = [
  ...keepingDimension,
  ...ofPlainNumbers,
];

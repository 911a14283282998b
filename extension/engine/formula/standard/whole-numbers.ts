import { plain } from '../../units/dimension.ts';
import { roundedTo } from '../../units/same-value.ts';
import type { FunctionEntry } from '../catalogue.ts';
import { answer, many, noAnswer, number, plainFunction, standard } from './make.ts';
import { numbersOf } from './values.ts';

function wholePart(x: number): number {
  return Math.sign(x) * roundedTo(Math.abs(x), 1, 'down');
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

function commonMultiple(a: number, b: number): number {
  return a === 0 || b === 0 ? 0 : (a / commonDivisor(a, b)) * b;
}

function factorial(n: number, step: 1 | 2): number {
  let product = 1;
  for (let factor = n; factor > 1; factor -= step) product *= factor;
  return product;
}

/** Product of quotients, so that no factorial overflows before it is divided. */
function combinations(n: number, k: number): number {
  let product = 1;
  for (let i = 1; i <= Math.min(k, n - k); i++) product = (product * (n - i + 1)) / i;
  return Math.round(product);
}

function manyWhole(name: string, help: string, example: FunctionEntry['example']) {
  return (calculate: (numbers: readonly number[]) => number): FunctionEntry =>
    standard({
      name,
      help,
      parameters: [many(number('n', 'A whole number, not below 0; decimals are cut off'))],
      result: { kind: 'quantity', dimension: plain },
      example,
      run: (args) => {
        const numbers = numbersOf(args).map(wholePart);
        if (numbers.some((n) => n < 0)) return noAnswer(name, 'a number is below 0');
        return answer(name, calculate(numbers), plain);
      },
    });
}

function multinomial(numbers: readonly number[]): number {
  let total = 0;
  let product = 1;
  for (const n of numbers) {
    total += n;
    product *= combinations(total, n);
  }
  return product;
}

const small = 170;

function factorialAnswer(x: number, step: 1 | 2): number | string {
  const n = wholePart(x);
  if (n < 0) return 'the number is below 0';
  return n > small * step ? 'the number is too large' : factorial(n, step);
}

const n = number('n', 'A whole number, not below 0');
const k = number('k', 'How many are taken');
const most = 1e6;

function chosen(x: number, y: number, repeats: boolean): number | string {
  const [all, taken] = [wholePart(x), wholePart(y)];
  if (all < 0 || taken < 0) return 'a number is below 0';
  if (!repeats && taken > all) return 'more are taken than there are';
  if (taken > most || all > Number.MAX_SAFE_INTEGER / 2) return 'the number is too large';
  if (!repeats) return combinations(all, taken);
  return taken === 0 ? 1 : combinations(all + taken - 1, taken);
}

/** Whole numbers. */
export const wholeNumberFunctions: readonly FunctionEntry[] = [
  manyWhole('GCD', 'The greatest number that divides all.', {
    formula: '=GCD(5, 15, 25)',
    shows: '5',
  })((numbers) => numbers.reduce(commonDivisor, 0)),
  manyWhole('LCM', 'The least number that all divide.', {
    formula: '=LCM(5, 15, 25)',
    shows: '75',
  })((numbers) => (numbers.length === 0 ? 0 : numbers.reduce(commonMultiple, 1))),
  manyWhole('MULTINOMIAL', 'In how many ways things fall into groups of these sizes.', {
    formula: '=MULTINOMIAL(3, 4, 5)',
    shows: '27720',
  })(multinomial),
  plainFunction({
    name: 'FACT',
    help: 'The product of all whole numbers up to this one.',
    parameters: [n],
    example: { formula: '=FACT(3)', shows: '6' },
    answer: ([x]) => factorialAnswer(x, 1),
  }),
  plainFunction({
    name: 'FACTDOUBLE',
    help: 'The product of every second whole number down from this one.',
    parameters: [n],
    example: { formula: '=FACTDOUBLE(7)', shows: '105' },
    answer: ([x]) => factorialAnswer(x, 2),
  }),
  plainFunction({
    name: 'COMBIN',
    help: 'In how many ways k of n things are taken, order aside.',
    parameters: [n, k],
    example: { formula: '=COMBIN(5, 3)', shows: '10' },
    answer: ([x, y]) => chosen(x, y, false),
  }),
  plainFunction({
    name: 'COMBINA',
    help: 'In how many ways k of n things are taken when each may be taken again.',
    parameters: [n, k],
    example: { formula: '=COMBINA(5, 3)', shows: '35' },
    answer: ([x, y]) => chosen(x, y, true),
  }),
];

import { angle, plain } from '../../units/dimension.ts';
import { sameValue } from '../../units/same-value.ts';
import type { FunctionEntry } from '../catalogue.ts';
import { alike, answer, number, plainFunction, radians, standard } from './make.ts';
import { numberOf } from './values.ts';

const ofAngle = [radians('angle', 'An angle, or a number in radians')];

function ratio(name: string, above: string, example: FunctionEntry['example']) {
  return (calculate: (x: number) => number | string): FunctionEntry =>
    plainFunction({
      name,
      help: `The ${above} of an angle.`,
      parameters: ofAngle,
      example,
      answer: ([x]) => calculate(x),
    });
}

function inverse(
  name: string,
  of: string,
  example: FunctionEntry['example'],
): (calculate: (x: number) => number | string) => FunctionEntry {
  return (calculate) =>
    plainFunction({
      name,
      help: `The angle with this ${of}.`,
      parameters: [number('x', `A ${of}`)],
      example,
      dimension: angle,
      answer: ([x]) => calculate(x),
    });
}

function hyperbolic(
  name: string,
  of: string,
  example: FunctionEntry['example'],
): (calculate: (x: number) => number | string) => FunctionEntry {
  return (calculate) =>
    plainFunction({
      name,
      help: `The ${of} of a number.`,
      parameters: [number('x', 'A number')],
      example,
      answer: ([x]) => calculate(x),
    });
}

/** Beyond 1 there is no such angle; rounding noise past 1 is taken as 1. */
function clamped(x: number, calculate: (x: number) => number): number | string {
  if (Math.abs(x) <= 1) return calculate(x);
  return sameValue(Math.abs(x), 1) ? calculate(Math.sign(x)) : 'the number lies between -1 and 1';
}

function pole(x: number, value: number): number | string {
  return Math.abs(value) > 1e15 || (x === 0 && !Number.isFinite(value))
    ? 'the angle stands on a pole'
    : value;
}

const ratios: readonly FunctionEntry[] = [
  ratio('SIN', 'sine', { formula: '=SIN(30deg)', shows: '0.5' })(Math.sin),
  ratio('COS', 'cosine', { formula: '=COS(60deg)', shows: '0.5' })(Math.cos),
  ratio('TAN', 'tangent', { formula: '=TAN(45deg)', shows: '1' })((x) => pole(x, Math.tan(x))),
  ratio('COT', 'cotangent', { formula: '=COT(45deg)', shows: '1' })((x) =>
    pole(x, Math.cos(x) / Math.sin(x)),
  ),
];

const inverses: readonly FunctionEntry[] = [
  inverse('ASIN', 'sine', { formula: '=ASIN(0.5)', shows: '30 deg' })((x) => clamped(x, Math.asin)),
  inverse('ACOS', 'cosine', { formula: '=ACOS(0.5)', shows: '60 deg' })((x) =>
    clamped(x, Math.acos),
  ),
  inverse('ATAN', 'tangent', { formula: '=ATAN(1)', shows: '45 deg' })(Math.atan),
  inverse('ACOT', 'cotangent', { formula: '=ACOT(1)', shows: '45 deg' })(
    (x) => Math.PI / 2 - Math.atan(x),
  ),
  standard({
    name: 'ATAN2',
    help: 'The angle from the x axis to a point.',
    parameters: [alike('x', 'Distance along'), alike('y', 'Distance up')],
    result: { kind: 'quantity', dimension: angle },
    example: { formula: '=ATAN2(4in, 4in)', shows: '45 deg' },
    run: (args) =>
      answer('ATAN2', Math.atan2(numberOf(args[1]) ?? 0, numberOf(args[0]) ?? 0), angle),
  }),
];

const hyperbolics: readonly FunctionEntry[] = [
  hyperbolic('SINH', 'hyperbolic sine', { formula: '=SINH(1)', shows: '1.1752' })(Math.sinh),
  hyperbolic('COSH', 'hyperbolic cosine', { formula: '=COSH(1)', shows: '1.54308' })(Math.cosh),
  hyperbolic('TANH', 'hyperbolic tangent', { formula: '=TANH(1)', shows: '0.761594' })(Math.tanh),
  hyperbolic('ASINH', 'inverse hyperbolic sine', { formula: '=ASINH(1)', shows: '0.881374' })(
    Math.asinh,
  ),
  hyperbolic('ACOSH', 'inverse hyperbolic cosine', { formula: '=ACOSH(2)', shows: '1.31696' })(
    (x) => (x < 1 ? 'the number is 1 or more' : Math.acosh(x)),
  ),
  hyperbolic('ATANH', 'inverse hyperbolic tangent', { formula: '=ATANH(0.5)', shows: '0.549306' })(
    (x) => (Math.abs(x) >= 1 ? 'the number lies between -1 and 1' : Math.atanh(x)),
  ),
  hyperbolic('ACOTH', 'inverse hyperbolic cotangent', { formula: '=ACOTH(2)', shows: '0.549306' })(
    (x) => (Math.abs(x) <= 1 ? 'the number lies outside -1 to 1' : Math.atanh(1 / x)),
  ),
];

/** Angles and their ratios. */
export const trigonometryFunctions: readonly FunctionEntry[] = [
  ...ratios,
  ...inverses,
  ...hyperbolics,
  plainFunction({
    name: 'DEGREES',
    help: 'An angle as a plain number of degrees.',
    parameters: ofAngle,
    example: { formula: '=DEGREES(PI())', shows: '180' },
    dimension: plain,
    answer: ([x]) => (x * 180) / Math.PI,
  }),
  plainFunction({
    name: 'RADIANS',
    help: 'A plain number of degrees as an angle.',
    parameters: [number('degrees', 'A number of degrees')],
    example: { formula: '=RADIANS(15)', shows: '15 deg' },
    dimension: angle,
    answer: ([x]) => (x * Math.PI) / 180,
  }),
];

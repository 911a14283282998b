import { describe, expect, test } from 'vitest';
import type {
  FunctionEntry,
  Parameter,
  ParameterType,
} from '../../../../extension/engine/formula/catalogue.ts';
import { argumentCount } from '../../../../extension/engine/formula/parameters.ts';
import { standardFunctions } from '../../../../extension/engine/formula/standard/standard-functions.ts';
import { answered, reads } from '../../../helpers/formula-answer.ts';
import { sheet } from '../../../helpers/workbook-of.ts';

const everyFunction = standardFunctions.map((entry) => [entry.name, entry] as const);

/** These answer for errors; every other function passes one on. */
const asksForErrors = ['IFERROR', 'ISERROR'];

function sampleOf(type: ParameterType): string {
  switch (type.kind) {
    case 'text':
      return '"a"';
    case 'yes-no':
      return 'TRUE()';
    case 'unit':
      return 'in';
    default:
      return '2';
  }
}

function samples(parameters: readonly Parameter[]): readonly string[] {
  return parameters.filter(({ optional }) => optional !== true).map(({ type }) => sampleOf(type));
}

function call(entry: FunctionEntry, args: readonly string[]): string {
  return `=${entry.name}(${args.join(', ')})`;
}

function codeOf(formula: string): string {
  const result = answered(formula);
  return result.ok ? 'fine' : result.problem.code;
}

function isNumeric({ type }: Parameter): boolean {
  return type.kind === 'quantity' || type.kind === 'same' || type.kind === 'any-quantity';
}

describe('standardFunctions: argument count', () => {
  test.each(everyFunction)('%s refuses too few and too many', (_name, entry) => {
    const { least, most } = argumentCount(entry);
    const given = samples(entry.parameters);
    if (least > 0) expect(codeOf(call(entry, given.slice(1)))).toBe('argument-count');
    if (most === Infinity) expect(codeOf(call(entry, [...given, ...given.slice(-1)]))).toBe('fine');
    else {
      const toomany = Array.from({ length: most + 1 }, () => '2');
      expect(codeOf(call(entry, toomany))).toBe('argument-count');
    }
  });
});

describe('standardFunctions: ordinary case', () => {
  test.each(everyFunction)('%s gives what its example says', (_name, { example }) => {
    expect(reads(example.formula)).toBe(example.shows);
  });
});

describe('standardFunctions: text that looks like a number', () => {
  const numeric = everyFunction.filter(([, entry]) => entry.parameters.some(isNumeric));

  test.each(numeric)('%s refuses it', (_name, entry) => {
    const at = entry.parameters.findIndex(isNumeric);
    const given = entry.parameters.slice(0, Math.max(at + 1, samples(entry.parameters).length));
    const args = given.map(({ type }, index) => (index === at ? '"2"' : sampleOf(type)));
    expect(codeOf(call(entry, args))).toBe('argument-dimension');
  });
});

describe('standardFunctions: an error passes through', () => {
  const taking = everyFunction.filter(
    ([name, entry]) => entry.parameters.length > 0 && !asksForErrors.includes(name),
  );

  test.each(taking)('%s has no answer for 1/0', (_name, entry) => {
    const args = ['1/0', ...samples(entry.parameters).slice(1)];
    expect(answered(call(entry, args)).ok).toBe(false);
  });
});

describe('standardFunctions: edges', () => {
  // Values a hair off a whole step, as binary fractions leave them.
  test.each([
    ['=ROUNDUP((0.1+0.2)*10)', '3'],
    ['=INT(0.57*100)', '57'],
    ['=ROUND(1.005, 2)', '1.01'],
    ['=ROUND(21.9/0.2)', '110'],
    ['=MOD(1, 0.1)', '0'],
    ['=MOD(-1in, 3in)', '2 in'],
    ['=CEILING(0.3in, 0.1in)', '≈ 5/16 in'],
    ['=FLOOR(-2.5in, -1in)', '-3 in'],
    ['=QUOTIENT(0.3in, 0.1in)', '3'],
    ['=EVEN(2.0000000000001)', '2'],
    ['=ODD(-0.2)', '-1'],
    ['=TRUNC(-999.13USD, 1)', '-999.10 USD'],
  ])('rounding: %s is %s', (formula, shown) => {
    expect(reads(formula)).toBe(shown);
  });

  test.each([
    ['=CEILING(3in)', 'a measure is rounded to a step such as CEILING(length, 1/16in)'],
    ['=MOD(3in, 0)', 'the divisor is 0'],
    ['=SQRT(-1sqin)', 'a number below 0 has no square root'],
    ['=POWER(-8, 1/3)', 'a number below 0 has no such root'],
    ['=LOG(8, 1)', 'the base of a logarithm is above 0 and not 1'],
    ['=TAN(90deg)', 'the angle stands on a pole'],
    ['=ACOS(1.1)', 'the number lies between -1 and 1'],
    ['=FACT(171)', 'the number is too large'],
    ['=EXP(1000)', 'the number is too large'],
    ['=COMBIN(3, 5)', 'more are taken than there are'],
    ['=LARGE(3in, 2)', 'there are not so many values'],
    ['=AVERAGE("")', 'there is no value to take'],
    ['=MEDIAN("")', 'there is no value to take'],
    ['=AVERAGEIF(3in, ">5in")', 'no value meets the criterion'],
    ['=NA()', 'the value is not known yet'],
    ['=FIND("x", "baffle")', 'the text does not hold it'],
    ['=FIND("b", "baffle", 0)', 'places are counted from 1'],
    ['=MID("baffle", 0, 1)', 'there are not so many letters'],
    ['=REPT("abc", 1000000)', 'the text becomes too long'],
    ['=CONVERT(1, ft, g)', 'ft and g do not measure the same thing'],
    ['=VALUE("two")', 'does not begin with a number'],
  ])('no answer: %s, because %s', (formula, reason) => {
    expect(reads(formula)).toContain(reason);
  });

  test.each([
    ['=ACOS(1.0000000000001)', '0 deg'],
    ['=FACT(0)', '1'],
    ['=GCD(0, 0)', '0'],
    ['=COMBINA(3, 0)', '1'],
    ['=MEDIAN(1in, 2in, 3in, 9in)', '2 1/2 in'],
    ['=MAX(-2, -1)', '-1'],
    ['=MIN(70degF, 40degF)', '40 degF'],
    ['=SMALL(3in, 1)', '3 in'],
    ['=SUM("", 2in)', '2 in'],
    ['=COUNT("", 2in)', '1'],
    ['=COUNTA("", 2in)', '1'],
    ['=COUNTIF("oak", "OAK")', '1'],
    ['=COUNTIF("oak", "<>ash")', '1'],
    ['=COUNTIF(2in, 2in)', '1'],
    ['=COUNTIF(TRUE(), TRUE())', '1'],
    ['=SUMIF(3in, "<=3in", 2USD)', '2.00 USD'],
    ['=RIGHT("baffle", 99)', 'baffle'],
    ['=LEFT("baffle")', 'b'],
    ['=LEN("½ in")', '4'],
    ['=FIND("f", "baffle", 4)', '4'],
    ['=SUBSTITUTE("a-b-c", "-", "+", 2)', 'a-b+c'],
    ['=SUBSTITUTE("a-b", "-", "+", 5)', 'a-b'],
    ['=SUBSTITUTE("a-b", "", "+")', 'a-b'],
    ['=TEXTJOIN("-", FALSE(), "a", "", "b")', 'a--b'],
    ['=CONCATENATE("a", 1/4, TRUE())', 'a0.25TRUE'],
    ['=CONVERT(212, degF, degC)', '100'],
    ['=ISBLANK("")', 'yes'],
    ['=ISTEXT(2)', 'no'],
    ['=IFERROR(1/0, 3in)', '3 in'],
    ['=IF(1 > 2, 1/0, 3in)', '3 in'],
    ['=CHOOSE(1, 3in, 1/0)', '3 in'],
  ])('%s is %s', (formula, shown) => {
    expect(reads(formula)).toBe(shown);
  });
});

describe('standardFunctions: lists', () => {
  const job = (answer: string): string => `
[[measure]]
id = "a"

value = "1 in"

[[measure]]
id = "answer"

value = "${answer}"

[[measure]]
id = "b"

value = "3 in"

[[measure]]
id = "c"

[[part]]
id = "x"

name = "oak"
kind = "consumable"

use = "2 floz"
qty = "3"

[[part]]
id = "y"

name = "ash"
kind = "consumable"

use = "5 floz"
qty = "1"
`;

  // A value counts once for each piece in SUM and SUMIF, once a row in all others; blanks are skipped.
  test.each([
    ['=SUM(all(consumable).use)', '11 floz'],
    ['=SUMIF(all(consumable).use, ">=5floz")', '5 floz'],
    ['=SUMIF(all(consumable).name, \\"oak\\", all(consumable).use)', '6 floz'],
    ['=AVERAGE(all(consumable).use)', '3.5 floz'],
    ['=MAX(all(consumable).use)', '5 floz'],
    ['=COUNT(all(consumable).use)', '2'],
    ['=COUNTIF(all(consumable).use, ">2floz")', '1'],
    ['=AVERAGEIF(all(consumable).use, ">2floz")', '5 floz'],
    ['=SUM(all(measure).value)', '4 in'],
    ['=COUNT(all(measure).value)', '2'],
    ['=COUNTA(all(measure).value)', '2'],
    ['=LARGE(all(measure).value, 2)', '1 in'],
    ['=MEDIAN(all(measure).value)', '2 in'],
    ['=TEXTJOIN(\\", \\", TRUE, all(consumable).name)', 'oak, ash'],
    ['=PRODUCT(2, all(consumable).qty)', '6'],
    ['=SUMSQ(all(measure).value)', '10 sqin'],
  ])('%s is %s', (formula, shown) => {
    const text = formula.replaceAll(/(?<!\\)"/g, '\\"');
    expect(sheet(job(text)).says('measure/answer.value')).toBe(shown);
  });
});

import { describe, expect, test } from 'vitest';
import { checked, faultOf, typeOf } from '../../helpers/formula-check.ts';

describe('checkFormula: dimensions', () => {
  test.each([
    ['=length + width', 'a length'],
    ['=length + 1/16in', 'a length'],
    ['=length * width', 'an area'],
    ['=length * width * 2in', 'a volume'],
    ['=area / length', 'a length'],
    ['=length / width', 'a plain number'],
    ['=weight / use', 'a mass per volume'],
    ['=price / area', 'a money per area'],
    ['=length ^ 2', 'an area'],
    ['=area ^ 0.5', 'a length'],
    ['=area ^ (1/2)', 'a length'],
    ['=layers ^ layers', 'a plain number'],
    ['=layers%', 'a plain number'],
    ['=-length', 'a length'],
    ['=length > width', 'yes or no'],
    ['=length = 2in', 'yes or no'],
    ['=length = 0', 'yes or no'],
    ['=length + 0', 'a length'],
    ['=length + empty', 'a length'],
    ['=length * 0', 'zero'],
    ['=0 + 0', 'zero'],
    ['=note & " " & layers', 'text'],
    ['=base.area + mid_ring.wall', 'an area'],
    ['=taxed + 1', 'a plain number'],
  ])('%s is %s', (text, type) => {
    expect(typeOf(text)).toBe(type);
  });

  test.each([
    ['=length + area', 'length + area: a length and an area cannot be added.'],
    [
      '=length - weight',
      'length - weight: a length and a mass (weight) cannot be taken from each other.',
    ],
    ['=length + 0.5', 'length + 0.5: a length and a plain number cannot be added. Write 0.5in.'],
    ['=2 > length', '2 > length: a plain number and a length cannot be compared. Write 2in.'],
    ['=length = note', 'length = note: a length and text cannot be compared.'],
    ['=note + 1', 'note is text; + works on numbers.'],
    ['=-note', 'note is text; - works on numbers.'],
    ['=length%', 'length%: length is a length, and only a plain number can be a percentage.'],
    ['=2 ^ length', '2 ^ length: an exponent is a plain number, but length is a length.'],
    [
      '=length ^ layers',
      'length ^ layers: length is a length, so its exponent must be written as a number, such as 2 or 0.5.',
    ],
    [
      '=length ^ 0.3',
      'length ^ 0.3: a length to the power 0.3 is not a dimension; use a half or a whole number.',
    ],
    ['="about " & length', 'length is a length; text takes it through SHOW(length).'],
    ['=shape = shape', 'shape = shape: a shape and a shape cannot be compared.'],
  ])('%s: %s', (text, message) => {
    expect(faultOf(text)).toBe(message);
  });

  test('a fault points at the part of the formula that has it', () => {
    const { problems } = checked('=width + (length + area)');
    expect(problems).toHaveLength(1);
    expect(problems[0]?.span).toEqual({ start: 9, end: 24 });
  });

  test('faults of both operands are told', () => {
    expect(checked('=(length + area) * (length + weight)').problems).toHaveLength(2);
  });
});

describe('checkFormula: angles and temperatures', () => {
  test.each([
    ['=tilt + 5deg', 'an angle'],
    ['=tilt + PI()/12', 'an angle'],
    ['=PI()/4 > tilt', 'yes or no'],
    ['=tilt * 2', 'a plain number'],
    ['=SIN(tilt) * length', 'a length'],
    ['=SIN(PI()/4)', 'a plain number'],
    ['=RADIANS(15) + tilt', 'an angle'],
    ['=job.temperature - 60degF', 'a temperature difference'],
    ['=job.temperature + 5dF', 'a temperature'],
    ['=job.temperature > 70degF', 'yes or no'],
    ['=MAX(job.temperature, 70degF)', 'a temperature'],
    ['=AVERAGE(job.temperature, 70degF)', 'a temperature'],
    ['=-10degF', 'a temperature'],
  ])('%s is %s', (text, type) => {
    expect(typeOf(text)).toBe(type);
  });

  test.each([
    ['=tilt + 0.2', 'Write 0.2deg.'],
    ['=tilt + layers', 'Write the angle in degrees, such as 15deg.'],
    ['=job.temperature * 2', 'can be compared, or a difference taken, but not multiplied'],
    ['=job.temperature + 70degF', 'cannot be added'],
    ['=SUM(job.temperature, 70degF)', 'SUM has no meaning for one'],
    ['=-job.temperature', 'a sign belongs to its number, such as -10degF'],
    ['=job.temperature > 0', 'Zero degrees is written with its unit: 0degF or 0degC.'],
    ['=PRODUCT(job.temperature)', 'PRODUCT has no meaning for one'],
  ])('%s is refused: %s', (text, message) => {
    expect(faultOf(text)).toContain(message);
  });
});

describe('checkFormula: functions', () => {
  test.each([
    ['=max(length, width)', 'a length'],
    ['=MAX(0, length)', 'a length'],
    ['=SUM(0, empty)', 'zero'],
    ['=SQRT(area)', 'a length'],
    ['=SUMSQ(length, width)', 'an area'],
    ['=PRODUCT(layers, length, width)', 'an area'],
    ['=POWER(length, 3)', 'a volume'],
    ['=QUOTIENT(length, width)', 'a plain number'],
    ['=MOD(length, 16in)', 'a length'],
    ['=ROUND(price, 2)', 'an amount of money'],
    ['=IF(taxed, length, 2in)', 'a length'],
    ['=IF(taxed, length)', 'a length'],
    ['=IF(taxed, length, "")', 'a length'],
    ['=IF(taxed, length, 0)', 'a length'],
    ['=IF(layers, "a", note)', 'text'],
    ['=IFERROR(length / 0, 2in)', 'a length'],
    ['=CHOOSE(2, length, width)', 'a length'],
    ['=circle(length)', 'a shape'],
    ['=SHOW(length)', 'text'],
    ['=SHOW(length, mm)', 'text'],
    ['=SHOW(weight/use, g/cm3)', 'text'],
    ['=CONVERT(1, "ft", in)', 'a plain number'],
    ['=RING.LOW(3in, length, tilt, round_tube)', 'a length'],
    ['=RING.LOW(3in, length, tilt, build)', 'a length'],
    ['=COUNTIF(length, ">2in")', 'a plain number'],
    ['=SUMIF(length, ">0", area)', 'an area'],
    ['=COUNTIF(note, "oak")', 'a plain number'],
    ['=COUNTIF(length, 2in)', 'a plain number'],
  ])('%s is %s', (text, type) => {
    expect(typeOf(text)).toBe(type);
  });

  test.each([
    ['=MAXX(1)', 'There is no function MAXX. Did you mean MAX?'],
    ['=TODAY()', 'TODAY is not available: a job gives the same answer every day.'],
    ['=VLOOKUP(1)', 'VLOOKUP is not available: a row is reached by its name'],
    ['=SQRT()', 'SQRT takes 1 argument, not 0: SQRT(x).'],
    ['=LOG(1, 2, 3)', 'LOG takes 1 to 2 arguments, not 3: LOG(x, [base]).'],
    ['=SUM()', 'SUM takes 1 argument or more, not 0: SUM(values, …).'],
    ['=POWER(2,)', 'POWER has nothing for exponent: POWER(x, exponent).'],
    ['=LN(length)', 'LN wants a plain number for x, but length is a length.'],
    ['=LN("2")', 'LN wants a plain number for x, but "2" is text.'],
    ['=circle(8)', 'circle wants a length for diameter; write 8 with its unit, such as 8in.'],
    ['=MAX(length, 2)', 'MAX wants a length for values; write 2 with its unit, such as 2in.'],
    ['=MAX(length, area)', 'MAX: length is a length and area is an area; both must be the same.'],
    ['=MAX(note)', 'MAX wants a number or a measure for values, but note is text.'],
    [
      '=ROUND(length, 2)',
      'ROUND cuts decimals of a plain number, but length is a length; write ROUNDTO(length, 1/16in).',
    ],
    ['=ROUNDUP(area)', 'write ROUNDUPTO(area, 1sqft)'],
    ['=INT(use)', 'write ROUNDDOWNTO(use, 1floz)'],
    ['=LEN(length)', 'length is a length; text takes it through SHOW(length).'],
    ['=IF(note, 1, 2)', 'IF wants yes or no for condition, but note is text.'],
    [
      '=IF(taxed, length, area)',
      'IF gives length (a length) or area (an area); both must be the same.',
    ],
    ['=IF(taxed, length, 4)', 'Write 4in.'],
    [
      '=IF(taxed, length, "none")',
      'IF gives length (a length) or "none" (text); both must be the same.',
    ],
    ['=SHOW(length, sqft)', 'sqft is an area, but length is a length; write a unit such as in.'],
    ['=SHOW(length, inchs)', 'inchs is not a unit; write one such as in.'],
    [
      '=RING.LOW(3in, length, tilt, oval)',
      'RING.LOW has no choice oval for build; write round_baffle, round_tube, square_wall.',
    ],
    [
      '=RING.LOW(3in, length, tilt, "round_tube")',
      'A choice is written without quotes: round_tube.',
    ],
    [
      '=RING.LOW(3in, length, 15)',
      'RING.LOW wants an angle for tilt; write 15 with its unit, such as 15deg.',
    ],
    [
      '=COUNTIF(length, ">2")',
      'The criterion ">2" cannot be compared with a length; write one such as ">5 1/2in".',
    ],
    ['=COUNTIF(length, ">" & layers)', 'A criterion for a length is written out'],
    ['=COUNTIF(length, area)', 'The criterion area cannot be compared with a length'],
    ['=SHAPE.AREA(length)', 'wants a shape for shape, but length is a length'],
  ])('%s is refused: %s', (text, message) => {
    expect(faultOf(text)).toContain(message);
  });

  test('SUMIF of one list adds up that list', () => {
    const { checked: tree } = checked('=SUMIF(all(ring).depth, ">1in")');
    expect(tree?.kind === 'call' ? tree.args.map((one) => one?.kind) : []).toEqual([
      'list',
      'constant',
      'list',
    ]);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberOf, shown } from '../../../helpers/trade-call.ts';

describe('upholstery functions', () => {
  test.each([
    ['WRAP.SIZE(0in, 1/4in, 1in, 1in)', 'size is 0 in'],
    ['WRAP.SIZE(24in, -1/4in, 1in, 1in)', 'edge is -1/4 in'],
    ['CLOTH.REPEAT(8yd, 30in, 30in, 54in)', 'the chart knows repeats of up to 54 in'],
    ['CLOTH.REPEAT(8yd, 10in, 17in, 48in)', 'bolts from 50 in'],
    ['GLUE.COVERAGE(500g, 0%, 0.5g/sqft)', 'solids is 0 %'],
    ['GLUE.COVERAGE(500g, 13, 0.5g/sqft)', 'solids is 1300 %'],
    ['GLUE.COVERAGE(500g, 13%, 0g/sqft)', 'dry coat is 0'],
    ['GLUE.NEED(10sqft, 3, 2.5g/sqft, 25%)', 'glue is put on 1 face or on 2'],
    ['STAPLE.COUNT(78in, 0in)', 'spacing is 0 in'],
    ['BOARD.MASS(32sqft, 1/2in, 0g/cm3)', 'density is 0'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });

  test('what a need of glue covers is the need', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 5, max: 100 }),
        (feet, share) => {
          const [area, solids] = [String(feet), String(share)];
          const need = numberOf(`GLUE.NEED(${area} sqft, 1, 2.5g/sqft, ${solids}%)`, 'g');
          const back = numberOf(`GLUE.COVERAGE(${String(need)} g, ${solids}%, 2.5g/sqft)`, 'sqft');
          expect(back / feet).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  test('staples stand no wider apart than the spacing', () => {
    expect(shown('STAPLE.COUNT(78in, 1in)')).toBe('78');
    expect(shown('STAPLE.COUNT(78.01in, 1in)')).toBe('79');
    expect(shown('STAPLE.COUNT(0.3in, 0.1in)')).toBe('3');
    expect(shown('STAPLE.COUNT(0in, 1in)')).toBe('0');
  });

  test('a narrow bolt takes a tenth more, a small repeat nothing', () => {
    expect(numberOf('CLOTH.REPEAT(10yd, 10in, 17in, 52in)', 'yd')).toBeCloseTo(13, 9);
    expect(numberOf('CLOTH.REPEAT(10yd, 1in, 1in, 52in)', 'yd')).toBeCloseTo(10, 9);
  });
});

describe('PACKS', () => {
  test.each([
    ['PACKS(2qt, 1qt)', '2'],
    ['PACKS(2.003qt, 1qt)', '3'],
    ['PACKS(2.003qt, 1qt, 1%)', '2'],
    ['PACKS(0qt, 1qt)', '0'],
    ['PACKS(0.3qt, 0.1qt)', '3'],
    ['PACKS(25, 100)', '1'],
  ])('%s is %s', (call, packs) => {
    expect(shown(call)).toBe(packs);
  });

  test.each([
    ['PACKS(-1qt, 1qt)', 'need is'],
    ['PACKS(1qt, 0qt)', 'pack is 0'],
    ['PACKS(1qt, 1qt, -1%)', 'slack is -0.01'],
    ['PACKS(1qt)', 'PACKS needs pack'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });
});

describe('ROUNDTO, ROUNDUPTO and ROUNDDOWNTO', () => {
  test.each([
    ['ROUNDTO(5.03in, 1/16in)', '5 in'],
    ['ROUNDTO(12.34USD, 0.05USD)', '12.35 USD'],
    ['ROUNDUPTO(0.1in, 0.1in)', '≈ 1/8 in'],
    ['ROUNDUPTO(1.4, 1)', '2'],
    ['ROUNDUPTO(3in, 1/8in)', '3 in'],
    ['ROUNDDOWNTO(59min, 15min)', '45 min'],
    ['ROUNDTO(5in, 0in)', 'ROUNDTO: step is 0 in; it must be more than nothing.'],
    [
      'ROUNDTO(70degF, 1degF)',
      'ROUNDTO: a temperature on a scale cannot be rounded to a step; round a difference of temperatures instead.',
    ],
    ['ROUNDTO(5in)', 'ROUNDTO needs step: step to round to, such as 1/16in.'],
  ])('%s is %s', (call, text) => {
    expect(shown(call)).toBe(text);
  });
});

describe('SHOW', () => {
  test.each([
    ['SHOW(5 1/2in)', '5 1/2 in'],
    ['SHOW(5 1/2in, mm)', '139.7 mm'],
    ['SHOW(0.02, %)', '2 %'],
    ['SHOW(5in, g)', 'SHOW: 5 in cannot be shown in g; use a unit of length.'],
    ['SHOW(5in, %)', 'SHOW: 5 in cannot be shown in %; use a unit of length.'],
    ['SHOW(5in, cubit)', 'SHOW: “cubit” is not a unit of this job; use one such as mm.'],
    ['SHOW(12USD, EUR)', 'SHOW: “EUR” is not a unit of this job; use one such as mm.'],
  ])('%s is %s', (call, text) => {
    expect(shown(call)).toBe(text);
  });
});

import { describe, expect, test } from 'vitest';
import { numberOf, shown } from '../helpers/calculated.ts';

describe('cloth', () => {
  test('a 24 × 30 in board with 1/4 in edge and 1 + 1 in: 28 1/2 × 34 1/2 in (common practice, no source)', () => {
    expect(shown('WRAP.SIZE(24in, 1/4in, 1in, 1in)')).toBe('28 1/2 in');
    expect(shown('WRAP.SIZE(30in, 1/4in, 1in, 1in)')).toBe('34 1/2 in');
  });

  test('two of them from 54 in goods are 57 in, bought as 1 3/4 yd (steps of a quarter yard: common practice, no source)', () => {
    const run = 2 * numberOf('WRAP.SIZE(24in, 1/4in, 1in, 1in)', 'yd');
    expect(run).toBeCloseTo(57 / 36, 9);
    expect(numberOf(`ROUNDUPTO(${String(run)} yd, 1/4 yd)`, 'yd')).toBeCloseTo(1.75, 9);
  });

  test('10 and 17 in repeats make 8 yd into 9.6 yd (carrscorner.com, its own example)', () => {
    expect(numberOf('CLOTH.REPEAT(8yd, 10in, 17in, 54in)', 'yd')).toBeCloseTo(9.6, 9);
  });

  test.each([
    [3, 10],
    [14, 10],
    [15, 15],
    [19, 15],
    [20, 20],
    [28, 25],
    [36, 25],
    [37, 30],
    [46, 35],
    [54, 35],
  ])(
    'a repeat of %d in adds %d % (carrscorner.com, repeat chart for 54 in goods)',
    (repeat, more) => {
      const call = `CLOTH.REPEAT(10yd, ${String(repeat)}in, 0in, 54in)`;
      expect(numberOf(call, 'yd')).toBeCloseTo(10 * (1 + more / 100), 9);
    },
  );
});

describe('adhesive: coverage = wet mass × solids ÷ dry coat, as four data sheets print it', () => {
  test('24 oz can, 500 g of 13 % at 0.5 g/sqft: 130 sqft (3M Hi-Strength 90, January 2002)', () => {
    expect(numberOf('GLUE.COVERAGE(500g, 13%, 0.5g/sqft)', 'sqft')).toBeCloseTo(130, 9);
    expect(numberOf('GLUE.COVERAGE(17.6oz, 13%, 0.5g/sqft)', 'sqft')).toBeCloseTo(129.7, 1);
  });

  test.each([
    ['1357, February 2015', 6.8, 25, 308.4, 308],
    ['1357-L, February 2015', 6.7, 18, 218.8, 219],
    ['Fastbond insulation adhesive, January 2008', 8.25, 55, 823.3, 824],
  ])('a gallon of 3M %s: %d lb, %d % solids, 2.5 g/sqft: %d sqft, printed %d', (...row) => {
    const [, pounds, solids, worked, printed] = row;
    const call = `GLUE.COVERAGE(${String(pounds)}lb, ${String(solids)}%, 2.5g/sqft)`;
    expect(Math.abs(numberOf(call, 'sqft') - worked)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(numberOf(call, 'sqft') - printed)).toBeLessThanOrEqual(1);
  });

  test('what coats 100 sqft bonds 50 where both faces are coated (woodweb.com, aerosol coverage)', () => {
    const coats = numberOf('GLUE.NEED(100sqft, 1, 2.5g/sqft, 25%)', 'g');
    const bonds = numberOf('GLUE.NEED(50sqft, 2, 2.5g/sqft, 25%)', 'g');
    expect(bonds).toBeCloseTo(coats, 9);
  });

  test('a “120 sqft” can bonds about 30 at the heavier coat that fabricators report (woodweb.com)', () => {
    const net = numberOf('GLUE.NEED(120sqft, 1, 0.5g/sqft, 13%)', 'g');
    const coated = numberOf(`GLUE.COVERAGE(${String(net)} g, 13%, 1g/sqft)`, 'sqft');
    expect(coated / 2).toBeCloseTo(30, 9);
  });

  test('wood glue at 6 mil of a gallon: 267 sqft in theory, 250 from memory', () => {
    const call = 'RESIN.VOLUME(RESIN.FILM(1sqft, 0.006in, 1.1g/cm3), 1.1g/cm3)';
    expect(1 / numberOf(call, 'gal')).toBeCloseTo(267.4, 1);
  });
});

describe('staples', () => {
  test('a panel 78.57 in round takes 79 at 1 in (spacing: common practice, no source)', () => {
    const round = numberOf('SHAPE.PERIMETER(roundrect(26in, 15in, 2in))', 'in');
    expect(round).toBeCloseTo(78.566, 3);
    expect(shown(`STAPLE.COUNT(${String(round)} in, 1in)`)).toBe('79');
  });
});

describe('narrow bolts', () => {
  test.each(['50in', '52in'])(
    '%s goods take a tenth more than 54 in ones (carrscorner.com)',
    (width) => {
      expect(numberOf(`CLOTH.REPEAT(10yd, 10in, 0in, ${width})`, 'yd')).toBeCloseTo(12, 9);
      expect(numberOf('CLOTH.REPEAT(10yd, 10in, 0in, 54in)', 'yd')).toBeCloseTo(11, 9);
    },
  );
});

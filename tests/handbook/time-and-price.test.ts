import { describe, expect, test } from 'vitest';
import { numberOf } from '../helpers/calculated.ts';

describe('margin and markup (Fabric Architecture, February 2018)', () => {
  test('cost 100 at 20 % margin is 125.00', () => {
    expect(numberOf('PRICE.FROMMARGIN(100USD, 20%)', 'USD')).toBeCloseTo(125, 9);
  });

  test('a 20 % markup is a margin of 16.667 %, printed as 16.66', () => {
    expect(numberOf(`MARKUP.FROMMARGIN(${String(100 / 6)}%)`)).toBeCloseTo(0.2, 9);
    expect(numberOf(`PRICE.FROMMARGIN(100USD, ${String(100 / 6)}%)`, 'USD')).toBeCloseTo(120, 9);
  });

  test.each([
    [10, 11.11],
    [15, 17.65],
    [20, 25],
    [25, 33.33],
    [30, 42.86],
    [35, 53.85],
    [40, 66.67],
    [50, 100],
  ])('a margin of %d % takes a markup of %d %', (margin, markup) => {
    const worked = numberOf(`MARKUP.FROMMARGIN(${String(margin)}%)`) * 100;
    expect(Math.abs(worked - markup)).toBeLessThanOrEqual(0.005);
  });

  test('a cost of 2,449.26 at 30 % margin is 3,498.94 (worked)', () => {
    expect(numberOf('PRICE.FROMMARGIN(2449.26USD, 30%)', 'USD')).toBeCloseTo(3498.94, 2);
  });
});

describe('three-point estimates (freepmptests.com, PERT)', () => {
  test.each([
    [10, 15, 30, 16.667],
    [4, 6, 12, 6.667],
  ])('%d, %d and %d make %d', (low, likely, high, expected) => {
    const call = `TIME.THREEPOINT(${String(low)}min, ${String(likely)}min, ${String(high)}min)`;
    expect(numberOf(call, 'min')).toBeCloseTo(expected, 3);
  });
});

describe('learning (AFIT-R, vignette of “learningCurve”)', () => {
  const unit = 'TIME.LEARN(100min, 85%, 125, unit)';
  const average = 'TIME.LEARN(100min, 85%, 125, average)';

  test('Crawford: unit 125 takes 32.23647, all 125 take 5,201.085', () => {
    expect(Math.abs(numberOf(unit, 'min') - 32.23647)).toBeLessThanOrEqual(1e-5);
    const total = numberOf('TIME.LEARNTOTAL(100min, 85%, 125, unit)', 'min');
    expect(Math.abs(total - 5201.085)).toBeLessThanOrEqual(0.001);
  });

  test('known misprint: the approximation that prints (m − .05) gives its own 5,202.988 only with (m − 0.5)', () => {
    const b = Math.log2(0.85);
    const approximation = (less: number) =>
      (100 * (125.5 ** (b + 1) - (1 - less) ** (b + 1))) / (b + 1);
    expect(approximation(0.5)).toBeCloseTo(5202.988, 2);
    expect(Math.abs(approximation(0.05) - 5202.988)).toBeGreaterThan(30);
    const total = numberOf('TIME.LEARNTOTAL(100min, 85%, 125, unit)', 'min');
    expect(Math.abs(total / approximation(0.5) - 1)).toBeLessThan(0.001);
  });

  test('Wright: unit 125 takes 24.70136, all 125 take 4,029.559', () => {
    expect(Math.abs(numberOf(average, 'min') - 24.70136)).toBeLessThanOrEqual(1e-4);
    const total = numberOf('TIME.LEARNTOTAL(100min, 85%, 125, average)', 'min');
    expect(Math.abs(total - 4029.559)).toBeLessThanOrEqual(0.001);
  });

  test.each([
    [80, 21.13225],
    [82.5, 26.18401],
    [85, 32.23647],
    [87.5, 39.44942],
    [90, 48.00243],
  ])('Crawford at %d %: %d', (rate, minutes) => {
    const worked = numberOf(`TIME.LEARN(100min, ${String(rate)}%, 125, unit)`, 'min');
    expect(Math.abs(worked - minutes)).toBeLessThanOrEqual(1e-4);
  });

  test.each([
    [83, 1, 100, 80, 30.79056],
    [92, 20, 120, 150, 94.17084],
    [87, 10, 90, 175, 50.64078],
  ])('at %d %, from unit %d at %d, unit %d takes %d', (...row) => {
    const [rate, known, minutes, wanted, expected] = row;
    const at = (count: number) =>
      numberOf(`TIME.LEARN(1min, ${String(rate)}%, ${String(count)}, unit)`, 'min');
    expect((minutes * at(wanted)) / at(known)).toBeCloseTo(expected, 4);
  });

  test('at 80 % by average the second unit takes 60 % and four average 64 % (maxwideman.com)', () => {
    expect(numberOf('TIME.LEARN(100min, 80%, 2, average)', 'min')).toBeCloseTo(60, 9);
    const four = numberOf('TIME.LEARNTOTAL(100min, 80%, 4, average)', 'min');
    expect(four / 4).toBeCloseTo(64, 9);
  });
});

describe('the second door (worked from both models)', () => {
  test('at 85 % it takes 85 % of the first by units and 70 % by average', () => {
    expect(numberOf('TIME.LEARN(100min, 85%, 2, unit)', 'min')).toBeCloseTo(85, 9);
    expect(numberOf('TIME.LEARN(100min, 85%, 2, average)', 'min')).toBeCloseTo(70, 9);
  });
});

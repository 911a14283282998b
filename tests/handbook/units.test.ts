import { describe, expect, test } from 'vitest';
import { baseOf, literal, numberOf } from '../helpers/calculated.ts';

/** A value in another unit of its dimension. */
function inUnit(text: string, unit: string): number {
  return numberOf(text, unit);
}

describe('exact factors (NIST Handbook 44, Appendix C; page of exact values citing NIST, angelfire.com/whittenwords)', () => {
  test.each([
    ['1 in', 'mm', 25.4],
    ['1 ft', 'm', 0.3048],
    ['1 yd', 'm', 0.9144],
    ['1 sqyd', 'm2', 0.83612736],
    ['1 sqft', 'm2', 0.09290304],
    ['1 cuin', 'ml', 16.387064],
    ['1 gal', 'cuin', 231],
    ['1 gal', 'l', 3.785411784],
    ['1 qt', 'ml', 946.352946],
    ['1 pt', 'ml', 473.176473],
    ['1 floz', 'ml', 29.5735295625],
    ['1 oz', 'g', 28.349523125],
    ['1 lb', 'g', 453.59237],
    ['1/16 in', 'mm', 1.5875],
    ['1/32 in', 'mm', 0.79375],
    ['1/64 in', 'mm', 0.396875],
  ])('%s is %s %d', (text, unit, factor) => {
    expect(inUnit(text, unit) / factor).toBeCloseTo(1, 14);
  });
});

describe('rounded figures', () => {
  test('a cubic foot is 7.48052 gal, printed as 7.481 (NIST Handbook 44, Appendix C)', () => {
    expect(inUnit('1 cuft', 'gal')).toBeCloseTo(7.48052, 5);
    expect(Math.abs(inUnit('1 cuft', 'gal') - 7.481)).toBeLessThanOrEqual(0.0005);
  });

  test('a cubic inch is 0.554 floz, a gallon 128 floz (NIST Handbook 44, Appendix C)', () => {
    expect(inUnit('1 cuin', 'floz')).toBeCloseTo(0.554, 3);
    expect(inUnit('1 gal', 'floz')).toBeCloseTo(128, 10);
  });

  test('1 lb/cuft is 16.0185 kg/m³ (US Navy SI table, navalfacilities.tpub.com 1004)', () => {
    expect(inUnit('1 lb/cuft', 'kg/m3')).toBeCloseTo(16.0185, 4);
  });

  test('1 lb/gal is 0.119826427 kg/l', () => {
    expect(inUnit('1 lb/gal', 'kg/l')).toBeCloseTo(0.119826427, 9);
  });

  test('a US fluid ounce is 1.0408 imperial ones of 28.4130625 ml (angelfire.com/whittenwords)', () => {
    expect(inUnit('1 floz', 'ml') / 28.4130625).toBeCloseTo(1.0408, 4);
  });

  test('a fluid ounce of 1.10 resin weighs 1.1475 oz', () => {
    const grams = inUnit('1 floz', 'cm3') * 1.1;
    expect(inUnit(`${String(grams)} g`, 'oz')).toBeCloseTo(1.1475, 4);
  });

  test.each([
    [55, 12.78],
    [60, 15.56],
    [65, 18.3],
    [70, 21.11],
    [77, 25],
    [80, 26.7],
    [90, 32.22],
  ])('%d °F is %d °C ((F − 32)/1.8, NIST SP 811)', (fahrenheit, celsius) => {
    const worked = baseOf(literal(fahrenheit, 'degF'));
    expect(Math.abs(worked - celsius)).toBeLessThanOrEqual(0.04);
  });

  test('a yard of 54, 60 and 50 in goods is 13.5, 15 and 12.5 sqft; “about 12” is printed for 50 (hospitalitytrendz.com; lbifiberglass.com)', () => {
    const yard = (width: number) => inUnit(`${String(width * 36)} sqin`, 'sqft');
    expect(yard(54)).toBeCloseTo(13.5, 12);
    expect(yard(60)).toBeCloseTo(15, 12);
    expect(yard(50)).toBeCloseTo(12.5, 12);
  });
});

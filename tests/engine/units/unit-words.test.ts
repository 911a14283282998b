import Qty from 'js-quantities';
import { describe, expect, test } from 'vitest';
import {
  foreignCurrency,
  isCurrencyCode,
  isUnitWord,
  readUnitAt,
  unitOf,
  unitWords,
} from '../../../extension/engine/units/unit-words.ts';
import { dimensionName } from '../../../extension/engine/units/dimension-names.ts';

const settings = { units: 'in', currency: 'USD' } as const;

function factor(word: string): number {
  const unit = unitOf(word, settings);
  if (unit === undefined) throw new Error(`${word} is no unit`);
  return unit.factor;
}

describe('unitOf', () => {
  test('all words of format 1 are units, in one table', () => {
    const words =
      'in ft yd mm cm m sqin sqft sqyd mm2 cm2 m2 floz pt qt gal ml l cuin cuft cm3 m3 oz lb g kg s min h day Hz kHz deg degC degF dC dF %';
    expect(unitWords()).toEqual(words.split(' '));
  });

  // The library keeps its own factors, some rounded to nine digits; ours are compared to that.
  test.each([
    ['in', 'in', 'mm'],
    ['ft', 'ft', 'mm'],
    ['yd', 'yd', 'mm'],
    ['cm', 'cm', 'mm'],
    ['m', 'm', 'mm'],
    ['sqin', 'in2', 'mm2'],
    ['sqft', 'ft2', 'mm2'],
    ['sqyd', 'yd2', 'mm2'],
    ['cm2', 'cm2', 'mm2'],
    ['m2', 'm2', 'mm2'],
    ['floz', 'floz', 'mm3'],
    ['pt', 'pt', 'mm3'],
    ['qt', 'qt', 'mm3'],
    ['gal', 'gal', 'mm3'],
    ['ml', 'ml', 'mm3'],
    ['l', 'l', 'mm3'],
    ['cuin', 'in3', 'mm3'],
    ['cuft', 'ft3', 'mm3'],
    ['cm3', 'cm3', 'mm3'],
    ['m3', 'm3', 'mm3'],
    ['oz', 'oz', 'g'],
    ['lb', 'lb', 'g'],
    ['kg', 'kg', 'g'],
    ['s', 's', 'min'],
    ['h', 'h', 'min'],
    ['day', 'day', 'min'],
    ['Hz', 'Hz', '1/min'],
    ['kHz', 'kHz', '1/min'],
    ['deg', 'deg', 'rad'],
    ['dC', 'degC', 'degK'],
    ['dF', 'degF', 'degK'],
    ['%', '%', ''],
    ['oz/sqft', 'oz/ft2', 'g/mm2'],
    ['oz/sqyd', 'oz/yd2', 'g/mm2'],
    ['lb/gal', 'lb/gal', 'g/mm3'],
    ['lb/cuft', 'lb/ft3', 'g/mm3'],
    ['g/cm3', 'g/cm3', 'g/mm3'],
  ])('%s agrees with js-quantities 1.8.0 (%s in %s)', (word, theirs, base) => {
    const expected =
      base === '' ? Qty(`1 ${theirs}`).scalar * 0.01 : Qty(`1 ${theirs}`).to(base).scalar;
    expect(factor(word) / expected).toBeCloseTo(1, 7);
  });

  test.each([
    [32, 0],
    [55, 12.78],
    [60, 15.56],
    [70, 21.11],
    [77, 25],
    [90, 32.22],
    [212, 100],
  ])('%d °F is %d °C (NIST SP 811: (F − 32)/1.8)', (fahrenheit, celsius) => {
    const unit = unitOf('degF', settings);
    expect(fahrenheit * (unit?.factor ?? 0) + (unit?.offset ?? 0)).toBeCloseTo(celsius, 2);
  });

  test('a spelling of two words is read and written as one', () => {
    for (const [spelling, word] of [
      ['sq ft', 'sqft'],
      ['sq in', 'sqin'],
      ['fl oz', 'floz'],
      ['cu ft', 'cuft'],
      ['ft2', 'sqft'],
      ['in3', 'cuin'],
      ['oz/sq yd', 'oz/sqyd'],
      ['mL', 'ml'],
    ] as const) {
      expect(unitOf(spelling, settings)?.word).toBe(word);
    }
  });

  test('only the currency of the job is a unit of the job', () => {
    expect(unitOf('USD', settings)?.factor).toBe(1);
    expect(unitOf('USD/h', settings)?.factor).toBe(1 / 60);
    expect(unitOf('EUR', settings)).toBeUndefined();
    expect(unitOf('EUR/h', settings)).toBeUndefined();
  });

  test.each(['', 'inch', 'IN', 'Ft', 'g /cm3', 'g/ cm3', 'deg/h', '%/h', 'degF/h', 'in/', 'oz oz'])(
    '“%s” is no unit',
    (text) => {
      expect(unitOf(text, settings)).toBeUndefined();
    },
  );

  test('a compound has the dimension of its quotient', () => {
    const unit = unitOf('oz/sqyd', settings);
    expect(unit === undefined ? '' : dimensionName(unit.dimension)).toBe('mass per area');
  });
});

describe('isUnitWord', () => {
  test('unit words and currency codes are reserved, other words are not', () => {
    for (const word of ['in', 'l', 'day', 'min', 'USD', 'EUR']) expect(isUnitWord(word)).toBe(true);
    for (const word of ['ring', 'sq', 'each', 'usd', 'inch']) expect(isUnitWord(word)).toBe(false);
  });

  test('a currency code is three capitals', () => {
    expect(isCurrencyCode('EUR')).toBe(true);
    expect(isCurrencyCode('Eur')).toBe(false);
    expect(isCurrencyCode('EURO')).toBe(false);
  });
});

describe('readUnitAt', () => {
  test.each([
    ['12floz', 2, 'floz', 6],
    ['12 sq ft/x', 3, 'sqft', 8],
    ['1.5%', 3, '%', 4],
    ['9.2lb/gal*2', 3, 'lb/gal', 9],
    ['24in/2in', 2, 'in', 4],
    ['3in*2', 1, 'in', 3],
    ['2sq\u00a0ft', 1, 'sqft', 6],
  ])('in %s at %d stands %s', (text, offset, word, end) => {
    const found = readUnitAt(text, offset, settings);
    expect(found?.unit.word).toBe(word);
    expect(found?.end).toBe(end);
  });

  test.each([
    ['2inch', 1],
    ['2in_a', 1],
    ['2 in', 1],
    ['2EUR', 1],
    ['2x', 1],
  ])('in %s at %d stands none', (text, offset) => {
    expect(readUnitAt(text, offset, settings)).toBeUndefined();
  });

  test('another currency in a compound is found out', () => {
    const unit = unitOf('EUR/h', { units: 'in', currency: 'EUR' });
    expect(unit === undefined ? '' : foreignCurrency(unit, settings)).toBe('EUR');
  });
});

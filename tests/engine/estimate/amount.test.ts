import { describe, expect, test } from 'vitest';
import {
  amountOf,
  amountText,
  boughtBy,
  countWord,
  customaryUnit,
  dimensionOf,
  lengthText,
  measureOf,
  numberOf,
  sizeText,
  unitWritten,
  writtenUnit,
} from '../../../extension/engine/estimate/amount.ts';
import { density, money, plain, volume } from '../../../extension/engine/units/dimension.ts';
import { inches, millimetres } from '../../helpers/fake-answers.ts';

const gallon = 231 * 25.4 ** 3;

describe('measureOf', () => {
  test('goods are measured by count, length, area, volume or mass, and by nothing else', () => {
    expect(measureOf(plain)).toBe('count');
    expect(measureOf(volume)).toBe('volume');
    expect(measureOf(money)).toBeUndefined();
    expect(measureOf(density)).toBeUndefined();
  });

  test('goes back and forth', () => {
    for (const measure of ['count', 'length', 'area', 'volume', 'mass'] as const) {
      expect(measureOf(dimensionOf(measure))).toBe(measure);
    }
  });
});

describe('amountText', () => {
  test('an amount is shown in its own unit', () => {
    expect(amountText(amountOf(2.003 * (gallon / 4), 'volume', 'qt'), inches)).toBe('2.003 qt');
    expect(amountText(amountOf(404.8, 'count', 'each'), inches)).toBe('404.8 each');
    expect(amountText(amountOf(0.3, 'count', 'can'), inches)).toBe('0.3 can');
  });
});

describe('numberOf', () => {
  test('gives the number that stands before the unit', () => {
    expect(numberOf(amountOf(914.4, 'length', 'yd'), inches)).toBe(1);
    expect(numberOf(amountOf(12, 'count', 'each'), inches)).toBe(12);
  });
});

describe('lengthText', () => {
  test('lengths follow the units of the job', () => {
    expect(lengthText(1447.8, inches)).toBe('57 in');
    expect(lengthText(1447.8, millimetres)).toBe('1447.8 mm');
  });
});

describe('sizeText', () => {
  test('length stands before width', () => {
    expect(sizeText({ length: 800.1, width: 520.7 }, inches)).toBe('31 1/2 in × 20 1/2 in');
  });
});

describe('customaryUnit', () => {
  test('counted goods are counted by the each', () => {
    expect(customaryUnit('count', inches)).toBe('each');
    expect(customaryUnit('area', inches)).toBe('sqft');
    expect(customaryUnit('area', millimetres)).toBe('m2');
  });
});

describe('writtenUnit', () => {
  test('is what stands after the last number', () => {
    expect(writtenUnit('8 floz')).toBe('floz');
    expect(writtenUnit('2 ft 3 3/8 in')).toBe('in');
    expect(writtenUnit('16 sq ft')).toBe('sq ft');
    expect(writtenUnit('25')).toBe('');
    expect(writtenUnit('=2*3in')).toBe('');
    expect(writtenUnit(undefined)).toBe('');
  });
});

describe('unitWritten', () => {
  test('a unit of another measure is not taken', () => {
    expect(unitWritten('1 pt', 'volume', inches)).toBe('pt');
    expect(unitWritten('16 sq ft', 'area', inches)).toBe('sqft');
    expect(unitWritten('1 sheet', 'area', inches)).toBe('sqft');
  });
});

describe('countWord', () => {
  test('is a word that is no unit', () => {
    expect(countWord('0.15 can', inches)).toBe('can');
    expect(countWord('8 floz', inches)).toBe('');
    expect(countWord('4', inches)).toBe('');
  });
});

describe('boughtBy', () => {
  test('goods are bought by the quart, not by the qt', () => {
    expect(boughtBy('qt')).toBe('quart');
    expect(boughtBy('can')).toBe('can');
  });
});

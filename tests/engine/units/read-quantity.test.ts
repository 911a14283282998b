import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  angle,
  area,
  density,
  divided,
  frequency,
  length,
  mass,
  money,
  plain,
  temperature,
  temperatureDifference,
  time,
  volume,
  type Dimension,
} from '../../../extension/engine/units/dimension.ts';
import { readQuantity, type ReadOptions } from '../../../extension/engine/units/read-quantity.ts';
import { sameValue } from '../../../extension/engine/units/same-value.ts';
import { unitWords } from '../../../extension/engine/units/unit-words.ts';

const settings = { units: 'in', currency: 'USD' } as const;
const metric = { units: 'mm', currency: 'EUR' } as const;

function read(text: string, more: Partial<ReadOptions> = {}) {
  return readQuantity(text, { settings, ...more });
}

function textOf(text: string, more: Partial<ReadOptions> = {}): string {
  const result = read(text, more);
  return result.ok ? result.value.text : result.problem.message;
}

function baseOf(text: string, more: Partial<ReadOptions> = {}): number {
  const result = read(text, more);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value.value.base;
}

function codeOf(text: string, more: Partial<ReadOptions> = {}): string {
  const result = read(text, more);
  return result.ok ? `read as ${result.value.text}` : result.problem.code;
}

describe('readQuantity', () => {
  test.each([
    ['24 in', '24 in', 24],
    ['0.625 in', '0.625 in', 0.625],
    ['.625in', '0.625 in', 0.625],
    ['5. in', '5 in', 5],
    ['3/8 in', '3/8 in', 0.375],
    ['5 1/2 in', '5 1/2 in', 5.5],
    ['5-1/2 in', '5 1/2 in', 5.5],
    ['24 1/2"', '24 1/2 in', 24.5],
    ['½"', '1/2 in', 0.5],
    ['5½ in', '5 1/2 in', 5.5],
    ['5 ½ in', '5 1/2 in', 5.5],
    ['5\u00a01/2\u202fin', '5 1/2 in', 5.5],
    ['5 1\u20442 in', '5 1/2 in', 5.5],
    ['24 1/2”', '24 1/2 in', 24.5],
    ['2 ft 3 3/8 in', '2 ft 3 3/8 in', 27.375],
    ['2\' 3 3/8"', '2 ft 3 3/8 in', 27.375],
    ['2\'-3 3/8"', '2 ft 3 3/8 in', 27.375],
    ['2′-3 3/8″', '2 ft 3 3/8 in', 27.375],
    ['2\' 0 3/8"', '2 ft 0 3/8 in', 24.375],
    ["2'", '2 ft', 24],
    ['1 1/2 ft', '1 1/2 ft', 18],
    ['\u22121/4 in', '-1/4 in', -0.25],
    ['- 1/4 in', '-1/4 in', -0.25],
    ['-5-1/2 in', '-5 1/2 in', -5.5],
    ['+5 in', '5 in', 5],
    ['007 in', '7 in', 7],
    ['25.4 mm', '25.4 mm', 1],
    ['2.54cm', '2.54 cm', 1],
  ])('%s is read as %s', (written, text, inches) => {
    expect(textOf(written, { wanted: length })).toBe(text);
    expect(baseOf(written, { wanted: length }) / 25.4).toBeCloseTo(inches, 12);
  });

  test.each([
    ['1,200mm', 'value-comma', '1200mm'],
    ['1,5 mm', 'value-comma', '1.5 mm'],
    ['12,345,678 mm', 'value-comma', '12345678 mm'],
    ['1 200 mm', 'value-left-over', '200 mm'],
    ['5"6', 'value-left-over', '6'],
    ["2' 3", 'value-left-over', '3'],
    ['5 in in', 'value-left-over', 'in'],
    ['5 1/2 1/4 in', 'value-left-over', '1/4 in'],
    ['3 in 2 ft', 'value-parts-out-of-order', 'ft with in'],
    ['5 in 3 in', 'value-parts-out-of-order', 'in and in'],
    ['2 ft 1,5 in', 'value-comma', '1.5 in'],
    ['24/2 in', 'value-fraction-top-heavy', '12 in'],
    ['3/2 in', 'value-fraction-top-heavy', '1 1/2 in'],
    ['5 3/2 in', 'value-fraction-top-heavy', '6 1/2 in'],
    ['5 1/0 in', 'value-fraction-of-nothing', '1/0'],
    ['5.5 1/2 in', 'value-fraction-of-decimal', 'decimal'],
    ['abc', 'value-not-a-number', 'abc'],
    ['in', 'value-not-a-number', '5 1/2 in'],
    ['-', 'value-not-a-number', '5 1/2 in'],
    ['', 'value-empty', '5 1/2 in'],
    ['   ', 'value-empty', '5 1/2 in'],
    ['5 inches', 'unit-respelt', 'write in'],
    ['5 IN', 'unit-respelt', 'write in'],
    ['5 feet', 'unit-respelt', 'write ft'],
    ['5e3 in', 'unit-unknown', 'e'],
    ['5 furlong', 'unit-unknown', 'furlong'],
    ['5 g', 'unit-wrong-dimension', 'a length is wanted'],
    ['5 sq ft', 'unit-wrong-dimension', '5 sqft is an area'],
    ['48 EUR', 'unit-other-currency', 'in EUR'],
  ])('%s is refused: %s', (written, code, part) => {
    expect(codeOf(written, { wanted: length })).toBe(code);
    expect(textOf(written, { wanted: length })).toContain(part);
  });

  test.each([
    ['24', length, '24 in', '24 mm'],
    ['5 1/2', length, '5 1/2 in', '5 1/2 mm'],
    ['3', area, '3 sqft', '3 m2'],
    ['12', volume, '12 floz', '12 ml'],
    ['450', mass, '450 g', '450 g'],
    ['25', time, '25 min', '25 min'],
    ['48.50', money, '48.50 USD', '48.50 EUR'],
    ['15', angle, '15 deg', '15 deg'],
    ['70', temperature, '70 degF', '70 degC'],
    ['5', temperatureDifference, '5 dF', '5 dC'],
    ['2000', frequency, '2000 Hz', '2000 Hz'],
    ['85', divided(money, time), '85 USD/h', '85 EUR/h'],
  ] as const)('a bare %s takes the unit of the job', (text, wanted, inches, millimetres) => {
    const [here, there] = [read(text, { wanted }), read(text, { wanted, settings: metric })];
    expect(here.ok && here.value.text).toBe(inches);
    expect(there.ok && there.value.text).toBe(millimetres);
    expect(here.ok && here.value.completed).toBe(true);
    expect(read(inches, { wanted })).toEqual({
      ok: true,
      value: here.ok ? { ...here.value, completed: false } : undefined,
    });
  });

  test('a density has no unit that is safe to guess', () => {
    expect(codeOf('1.1', { wanted: density })).toBe('unit-missing');
    expect(textOf('1.1', { wanted: density })).toContain('lb/cuft');
    expect(textOf('1.10 g/cm3', { wanted: density })).toBe('1.10 g/cm3');
  });

  test('where a file has a bare number, the fix writes the unit', () => {
    const place = { table: 'part', row: 'base', column: 'length' };
    const result = read('24 1/2', { wanted: length, strict: true, place });
    expect(result.ok).toBe(false);
    if (result.ok) return;
    expect(result.problem).toMatchObject({ code: 'unit-missing', place });
    expect(result.problem.fixes).toEqual([{ title: 'Write 24 1/2 in', place, text: '24 1/2 in' }]);
  });

  test('nothing is nothing in every unit, but not on a temperature scale', () => {
    expect(baseOf('0', { wanted: length, strict: true })).toBe(0);
    expect(textOf('0', { wanted: length })).toBe('0 in');
    expect(codeOf('0', { wanted: temperature, strict: true })).toBe('unit-missing');
  });

  test('a plain number is plain where any value may stand', () => {
    expect(read('12')).toMatchObject({ value: { unit: '', text: '12', completed: false } });
    expect(codeOf('5 in', { wanted: plain })).toBe('unit-wrong-dimension');
  });

  test('percent is a plain number', () => {
    expect(read('2 %', { wanted: plain })).toMatchObject({
      value: { value: { base: 0.02 }, unit: '%', text: '2 %' },
    });
    expect(textOf('1.5%')).toBe('1.5 %');
  });

  test('the count word of a material is a label', () => {
    const counted = read('25 each', { wanted: plain, countWord: 'each' });
    expect(counted).toMatchObject({
      value: { value: { base: 25 }, unit: 'each', text: '25 each' },
    });
    expect(codeOf('25 each', { wanted: plain })).toBe('unit-unknown');
    expect(codeOf('2 can', { wanted: volume, countWord: 'can' })).toBe('count-word-not-wanted');
    expect(codeOf('2 can', { countWord: 'roll' })).toBe('unit-unknown');
  });

  test('a bare ounce is a mass; a volume must say floz', () => {
    expect(codeOf('8 oz', { wanted: volume })).toBe('unit-ounce-of-what');
    expect(textOf('8 oz', { wanted: volume })).toContain('8 floz');
    expect(textOf('8 fl oz', { wanted: volume })).toBe('8 floz');
    expect(textOf('8 oz', { wanted: mass })).toBe('8 oz');
  });

  test('money is in the currency of the job, with its sign or its code', () => {
    expect(textOf('$48.50', { wanted: money })).toBe('48.50 USD');
    expect(textOf('-$5', { wanted: money })).toBe('-5 USD');
    expect(textOf('€5', { wanted: money, settings: metric })).toBe('5 EUR');
    expect(codeOf('48.50 EUR', { wanted: money })).toBe('unit-other-currency');
    expect(textOf('48.50 EUR', { wanted: money })).toContain('this job is in USD');
    expect(codeOf('£5', { wanted: money })).toBe('unit-other-currency');
    expect(codeOf('1,234.50', { wanted: money })).toBe('value-comma');
  });

  test('a temperature and a difference are told apart, and the sign belongs to the number', () => {
    expect(codeOf('5 degF', { wanted: temperatureDifference })).toBe('temperature-not-difference');
    expect(textOf('5 degF', { wanted: temperatureDifference })).toContain('write 5 dF');
    expect(codeOf('5 dC', { wanted: temperature })).toBe('temperature-not-point');
    expect(baseOf('-10degF')).toBeCloseTo(-23.333, 3);
    expect(textOf('70 °F')).toBe('70 degF');
    expect(textOf('21°C')).toBe('21 degC');
    expect(textOf('15°')).toBe('15 deg');
    expect(codeOf('70 in', { wanted: temperature })).toBe('unit-wrong-dimension');
  });

  test('hours with minutes and pounds with ounces are one value', () => {
    expect(baseOf('1 h 25 min')).toBe(85);
    expect(baseOf('1 lb 4 oz')).toBeCloseTo(1.25 * 453.59237, 9);
    expect(textOf('1 lb 4 oz')).toBe('1 lb 4 oz');
  });

  test('what is read is written so that it reads the same', () => {
    const whole = fc.integer({ min: 0, max: 9999 });
    const fraction = fc
      .tuple(fc.integer({ min: 1, max: 63 }), fc.constantFrom(2, 4, 8, 16, 32, 64, 3, 10))
      .filter(([top, bottom]) => top < bottom)
      .map(([top, bottom]) => `${String(top)}/${String(bottom)}`);
    const numbers = fc.oneof(
      whole.map(String),
      fc
        .tuple(whole, fc.integer({ min: 0, max: 999 }))
        .map(([a, b]) => `${String(a)}.${String(b)}`),
      fraction,
      fc.tuple(whole, fc.constantFrom(' ', '-'), fraction).map((parts) => parts.join('')),
    );
    const units = fc.constantFrom(...unitWords(), 'USD', 'g/cm3', 'oz/sqyd', 'USD/h', 'sq ft', '"');
    fc.assert(
      fc.property(
        numbers,
        units,
        fc.constantFrom('', ' '),
        fc.boolean(),
        (number, unit, gap, minus) => {
          const first = read(`${minus ? '-' : ''}${number}${gap}${unit}`);
          expect(first.ok).toBe(true);
          if (!first.ok) return;
          const again = read(first.value.text);
          expect(again).toEqual(first);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('no text at all makes it throw', () => {
    const single = Array.from('0123456789 ./-+,"\'½°$€%infto');
    const signs = fc.constantFrom(...single, 'sq', 'degF', 'USD', '\u00a0');
    const texts = fc.oneof(
      fc.string(),
      fc.array(signs, { maxLength: 12 }).map((all) => all.join('')),
    );
    const wanted = fc.constantFrom<Dimension | 'any'>('any', length, money, temperature, plain);
    fc.assert(
      fc.property(texts, wanted, fc.boolean(), (text, dimension, strict) => {
        const result = read(text, { wanted: dimension, strict });
        if (!result.ok) {
          if (!text.includes('{')) expect(result.problem.message).not.toContain('{');
          return;
        }
        const again = read(result.value.text, { wanted: dimension, strict });
        expect(again.ok && sameValue(again.value.value.base, result.value.value.base)).toBe(true);
        expect(again.ok && again.value.text).toBe(result.value.text);
      }),
      { numRuns: 2000 },
    );
  });
});

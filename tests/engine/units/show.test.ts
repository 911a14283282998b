import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  angle,
  area,
  arealWeight,
  density,
  divided,
  frequency,
  length,
  mass,
  money,
  multiplied,
  plain,
  raised,
  temperature,
  temperatureDifference,
  time,
  volume,
} from '../../../extension/engine/units/dimension.ts';
import { readQuantity } from '../../../extension/engine/units/read-quantity.ts';
import { sameValue } from '../../../extension/engine/units/same-value.ts';
import { exactText, showQuantity } from '../../../extension/engine/units/show.ts';
import { unitOf, unitWords } from '../../../extension/engine/units/unit-words.ts';

const settings = { units: 'in', currency: 'USD' } as const;
const metric = { units: 'mm', currency: 'EUR' } as const;
const inch = 25.4;

function quantityOf(text: string) {
  const read = readQuantity(text, { settings });
  if (!read.ok) throw new Error(read.problem.message);
  return read.value.value;
}

describe('showQuantity', () => {
  test.each([
    [24, '24 in'],
    [5.5, '5 1/2 in'],
    [0.125, '1/8 in'],
    [27.375, '27 3/8 in'],
    [-5.5, '-5 1/2 in'],
    [0, '0 in'],
    [5.0625, '5 1/16 in'],
    [5.03125, '≈ 5 1/16 in'],
    [5.005, '5 in'],
    [5.01, '≈ 5 in'],
    [5.0078125, '5 in'],
    [23.999, '24 in'],
    [0.01, '0.01 in'],
    [0.0312, '0.0312 in'],
    [0.015625, '1/64 in'],
    [-0.015625, '-1/64 in'],
    [0.0333, '≈ 1/16 in'],
    [120, '120 in'],
  ])('%d in is shown as %s', (inches, text) => {
    expect(showQuantity({ base: inches * inch, dimension: length }, settings).text).toBe(text);
  });

  test('a job may ask for thirty-seconds', () => {
    const value = { base: 5.03125 * inch, dimension: length };
    expect(showQuantity(value, { ...settings, fraction: 32 }).text).toBe('5 1/32 in');
  });

  test.each([
    [16, '16 mm'],
    [34.925, '34.9 mm'],
    [34.95, '35 mm'],
    [0.04, '0.04 mm'],
    [1200, '1200 mm'],
  ])('%d mm is shown as %s in a job in mm', (base, text) => {
    expect(showQuantity({ base, dimension: length }, metric).text).toBe(text);
  });

  test.each([
    ['2.6 sqft', '2.6 sqft', '0.2415 m2'],
    ['42.615 sqin', '42.62 sqin', '274.9 cm2'],
    ['12 floz', '12 floz', '354.9 ml'],
    ['32 floz', '1 qt', '946.4 ml'],
    ['1 gal', '1 gal', '3.785 l'],
    ['450 g', '450 g', '450 g'],
    ['1 lb', '453.6 g', '453.6 g'],
    ['2500 g', '2.5 kg', '2.5 kg'],
    ['85 min', '1 h 25 min', '1 h 25 min'],
    ['120 min', '2 h', '2 h'],
    ['25 min', '25 min', '25 min'],
    ['59.5 min', '59.5 min', '59.5 min'],
    ['45 s', '45 s', '45 s'],
    ['2000 Hz', '2 kHz', '2 kHz'],
    ['35 Hz', '35 Hz', '35 Hz'],
    ['15 deg', '15 deg', '15 deg'],
    ['59.679 deg', '59.68 deg', '59.68 deg'],
    ['70 degF', '70 degF', '21.1 degC'],
    ['9 dF', '9 dF', '5 dC'],
    ['1.10 g/cm3', '1.1 g/cm3', '1.1 g/cm3'],
    ['1.5 oz/sqft', '457.7 g/m2', '457.7 g/m2'],
    ['12.5', '12.5', '12.5'],
    ['1234567.5', '1234568', '1234568'],
    ['0.3333333', '0.333333', '0.333333'],
    ['2 %', '0.02', '0.02'],
    ['0 floz', '0 floz', '0 ml'],
  ])('%s is shown as %s, in mm as %s', (text, inches, millimetres) => {
    expect(showQuantity(quantityOf(text), settings).text).toBe(inches);
    expect(showQuantity(quantityOf(text), metric).text).toBe(millimetres);
  });

  test('money shows its cents', () => {
    expect(showQuantity({ base: 12.5, dimension: money }, settings).text).toBe('12.50 USD');
    expect(showQuantity({ base: -0.001, dimension: money }, settings).text).toBe('0.00 USD');
    expect(showQuantity({ base: 1.005, dimension: money }, settings).text).toBe('1.01 USD');
    expect(showQuantity({ base: 85 / 60, dimension: divided(money, time) }, settings).text).toBe(
      '85.00 USD/h',
    );
    expect(
      showQuantity({ base: 0.0123, dimension: divided(money, mass) }, settings, 'USD/g').text,
    ).toBe('0.0123 USD/g');
  });

  test('a unit that is asked for is taken', () => {
    const shown = (text: string, unit: string) =>
      showQuantity(quantityOf(text), settings, unit).text;
    expect(shown('27 3/8 in', 'ft')).toBe('2 ft 3 3/8 in');
    expect(shown('24 in', 'ft')).toBe('2 ft');
    expect(shown('-27 in', 'ft')).toBe('-2 ft 3 in');
    expect(shown('5 in', 'ft')).toBe('5 in');
    expect(shown('1 3/8 in', 'mm')).toBe('34.9 mm');
    expect(shown('85 min', 'h')).toBe('1.417 h');
    expect(shown('0.015', '%')).toBe('1.5 %');
    expect(shown('25', 'each')).toBe('25 each');
    expect(shown('18.1 ml', 'floz')).toBe('0.612 floz');
    expect(shown('58 lb', 'lb')).toBe('58 lb');
  });

  test('a unit of another dimension is not taken', () => {
    expect(showQuantity(quantityOf('5 in'), settings, 'g').text).toBe('5 in');
    expect(showQuantity(quantityOf('12'), settings, 'g').text).toBe('12');
    expect(showQuantity(quantityOf('5 in'), settings, 'each').text).toBe('5 in');
  });

  test('it tells whether the text stands for quite this value', () => {
    expect(showQuantity(quantityOf('5 1/2 in'), settings).rounded).toBe(false);
    expect(showQuantity(quantityOf('5.005 in'), settings).rounded).toBe(true);
    expect(showQuantity(quantityOf('70 degF'), settings).rounded).toBe(false);
    expect(showQuantity(quantityOf('85.4 min'), settings).rounded).toBe(true);
    expect(showQuantity(quantityOf('34.925 mm'), metric).rounded).toBe(true);
  });

  test('a dimension without a unit word is shown by its exponents', () => {
    const shown = (dimension = plain, base = 1) => showQuantity({ base, dimension }, settings).text;
    expect(shown(raised(length, 4), inch ** 4)).toBe('1 in^4');
    expect(shown(raised(length, -1), 1 / inch)).toBe('1 1/in');
    expect(shown(multiplied(mass, money), 3)).toBe('3 USD·g');
    expect(showQuantity({ base: 2, dimension: raised(length, 4) }, metric).text).toBe('2 mm^4');
  });

  test('a number that is no number is said, not dressed up', () => {
    expect(showQuantity({ base: Infinity, dimension: length }, settings).text).toBe('Infinity');
  });

  test('rounding never moves a length by more than half a step, and marks what it moved far', () => {
    fc.assert(
      fc.property(fc.double({ min: -200, max: 200, noNaN: true }), (inches) => {
        const { text } = showQuantity({ base: inches * inch, dimension: length }, settings);
        const back = quantityOf(text.replace('≈ ', '')).base / inch;
        expect(Math.abs(back - inches)).toBeLessThanOrEqual(1 / 32 + 1e-9);
        if (text.startsWith('≈')) expect(Math.abs(back - inches)).toBeGreaterThan(1 / 128);
        else expect(Math.abs(back - inches)).toBeLessThanOrEqual(1 / 128 + 1e-9);
      }),
    );
  });

  test('every shown text is read back to the same dimension, near the value', () => {
    const dimensions = [
      area,
      volume,
      mass,
      time,
      angle,
      temperature,
      temperatureDifference,
      frequency,
      density,
      arealWeight,
      plain,
    ];
    const bases = fc.double({ min: 1e-2, max: 1e8, noNaN: true });
    fc.assert(
      fc.property(
        bases,
        fc.constantFrom(...dimensions),
        fc.constantFrom(settings, metric),
        (base, dimension, job) => {
          const { text } = showQuantity({ base, dimension }, job);
          const read = readQuantity(text, { settings: job, wanted: dimension });
          expect(read.ok).toBe(true);
          if (!read.ok) return;
          expect(read.value.completed).toBe(false);
          // From an hour on, times are told to the minute: half a minute of sixty.
          const share = dimension === time ? 1 / 120 : 6e-3;
          const tolerance = dimension === temperature ? 0.06 : Math.abs(base) * share;
          expect(Math.abs(read.value.value.base - base)).toBeLessThanOrEqual(tolerance);
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('exactText', () => {
  test.each([
    ['5.5 in', 'in', '5 1/2 in'],
    ['5 1/64 in', 'in', '5 1/64 in'],
    ['0.3 in', 'in', '0.3 in'],
    ['1 in', 'mm', '25.4 mm'],
    ['25.4 mm', 'in', '1 in'],
    ['70 degF', 'degF', '70 degF'],
    ['2 %', '%', '2 %'],
    ['12.50 USD', 'USD', '12.5 USD'],
    ['25', 'each', '25 each'],
    ['25', '', '25'],
    ['-1/4 in', 'in', '-1/4 in'],
  ])('%s in %s is %s', (text, unit, expected) => {
    expect(exactText(quantityOf(text), unit)).toBe(expected);
  });

  test('it reads back to the same value in every unit', () => {
    const words = unitWords().filter((word) => word !== '%');
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.constantFrom(...words),
        (number, word) => {
          const unit = unitOf(word, settings);
          if (unit === undefined) throw new Error(word);
          fc.pre(Math.abs(number) > 1e-6);
          const base = number * unit.factor + unit.offset;
          const text = exactText({ base, dimension: unit.dimension }, word);
          const back = readQuantity(text, { settings });
          expect(back.ok && sameValue(back.value.value.base, base)).toBe(true);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('switching a job between in and mm and back changes no value', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 64 * 200 }), (parts) => {
        const base = (parts / 64) * inch;
        const metricText = exactText({ base, dimension: length }, 'mm');
        const inMetric = readQuantity(metricText, { settings: metric });
        const back = inMetric.ok ? exactText(inMetric.value.value, 'in') : '';
        expect(back).toBe(exactText({ base, dimension: length }, 'in'));
      }),
    );
  });
});

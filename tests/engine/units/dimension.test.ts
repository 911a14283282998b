import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addedDimensions,
  angle,
  area,
  density,
  dimensionKey,
  divided,
  dividedDimensions,
  length,
  mass,
  money,
  multiplied,
  multipliedDimensions,
  plain,
  raised,
  rooted,
  sameDimension,
  temperature,
  temperatureDifference,
  time,
  volume,
  type Dimension,
} from '../../../extension/engine/units/dimension.ts';

const exponent = fc.integer({ min: -6, max: 6 }).map((n) => n / 2);
const dimensions: fc.Arbitrary<Dimension> = fc.record({
  length: exponent,
  mass: exponent,
  time: exponent,
  temperature: exponent,
  money: exponent,
});

describe('multiplied and divided', () => {
  test('length times length is area, mass by volume is density', () => {
    expect(sameDimension(multiplied(length, length), area)).toBe(true);
    expect(sameDimension(divided(mass, volume), density)).toBe(true);
  });

  test('a quotient times its divisor is what was divided', () => {
    fc.assert(
      fc.property(dimensions, dimensions, (a, b) => {
        expect(dimensionKey(multiplied(divided(a, b), b))).toBe(dimensionKey(a));
        expect(dimensionKey(multiplied(a, b))).toBe(dimensionKey(multiplied(b, a)));
      }),
    );
  });

  test('an angle is dropped by × and ÷', () => {
    expect(sameDimension(multiplied(length, angle), length)).toBe(true);
    expect(sameDimension(divided(angle, angle), plain)).toBe(true);
  });
});

describe('raised and rooted', () => {
  test('the root of a square is what was squared', () => {
    fc.assert(
      fc.property(dimensions, (a) => {
        expect(dimensionKey(rooted(raised(a, 2)))).toBe(dimensionKey(a));
      }),
    );
  });

  test('the power 0 of anything is a plain number', () => {
    expect(dimensionKey(raised(density, 0))).toBe(dimensionKey(plain));
  });

  test('the root of a length has half an exponent', () => {
    expect(rooted(length).length).toBe(0.5);
  });
});

describe('addedDimensions', () => {
  test('only like is added to like', () => {
    expect(addedDimensions(length, length, '+')).toBe(length);
    expect(addedDimensions(length, area, '+')).toBeUndefined();
    expect(addedDimensions(money, time, '-')).toBeUndefined();
  });

  test('an angle and a plain number are not added', () => {
    expect(addedDimensions(angle, angle, '+')).toBe(angle);
    expect(addedDimensions(angle, plain, '+')).toBeUndefined();
    expect(addedDimensions(plain, angle, '-')).toBeUndefined();
  });

  test('two temperatures differ by a difference, and a difference moves a temperature', () => {
    expect(addedDimensions(temperature, temperature, '-')).toBe(temperatureDifference);
    expect(addedDimensions(temperature, temperatureDifference, '+')).toBe(temperature);
    expect(addedDimensions(temperature, temperatureDifference, '-')).toBe(temperature);
    expect(addedDimensions(temperatureDifference, temperature, '+')).toBe(temperature);
  });

  test('everything else with a temperature is refused', () => {
    expect(addedDimensions(temperature, temperature, '+')).toBeUndefined();
    expect(addedDimensions(temperatureDifference, temperature, '-')).toBeUndefined();
    expect(addedDimensions(temperature, plain, '+')).toBeUndefined();
    expect(addedDimensions(length, temperature, '+')).toBeUndefined();
  });
});

describe('multipliedDimensions and dividedDimensions', () => {
  test('a temperature on a scale takes no part', () => {
    expect(multipliedDimensions(temperature, plain)).toBeUndefined();
    expect(dividedDimensions(plain, temperature)).toBeUndefined();
  });

  test('a difference of temperature does', () => {
    expect(multipliedDimensions(temperatureDifference, plain)).toEqual(temperatureDifference);
  });

  test('lengths by lengths are plain', () => {
    expect(dividedDimensions(length, length)).toEqual(plain);
    expect(multipliedDimensions(length, length)).toEqual(area);
  });
});

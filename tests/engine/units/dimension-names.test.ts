import { describe, expect, test } from 'vitest';
import { dimensionFrom, dimensionName } from '../../../extension/engine/units/dimension-names.ts';
import {
  area,
  density,
  divided,
  length,
  mass,
  money,
  multiplied,
  plain,
  raised,
  time,
} from '../../../extension/engine/units/dimension.ts';

describe('dimensionName', () => {
  test.each([
    ['number', plain],
    ['length', length],
    ['mass per area', divided(mass, area)],
    ['mass per volume', density],
    ['money per time', divided(money, time)],
    ['length^4', raised(length, 4)],
    ['number per length', raised(length, -1)],
    ['mass × time', multiplied(mass, time)],
    ['money per length and time', divided(money, multiplied(length, time))],
  ])('%s', (name, dimension) => {
    expect(dimensionName(dimension)).toBe(name);
  });
});

describe('dimensionFrom', () => {
  test.each([
    'number',
    'length',
    'area',
    'volume',
    'mass',
    'time',
    'frequency',
    'angle',
    'temperature',
    'temperature difference',
    'money',
    'mass per area',
    'money per time',
    'length^4',
  ])('%s is read back', (name) => {
    const dimension = dimensionFrom(name);
    expect(dimension === undefined || dimension === 'any' ? '' : dimensionName(dimension)).toBe(
      name,
    );
  });

  test('a slash is “per”, density and areal weight have their names', () => {
    expect(dimensionFrom('mass/volume')).toEqual(density);
    expect(dimensionFrom('density')).toEqual(density);
    expect(dimensionFrom('areal weight')).toEqual(divided(mass, area));
    expect(dimensionFrom('length*length')).toEqual(area);
  });

  test('any is any; other words are none', () => {
    expect(dimensionFrom('any')).toBe('any');
    expect(dimensionFrom('weight')).toBeUndefined();
    expect(dimensionFrom('mass/thing')).toBeUndefined();
    expect(dimensionFrom('length^x')).toBeUndefined();
    expect(dimensionFrom('length*thing')).toBeUndefined();
  });
});

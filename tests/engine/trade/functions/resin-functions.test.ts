import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Argument } from '../../../../extension/engine/formula/catalogue.ts';
import { density, mass, plain, volume } from '../../../../extension/engine/units/dimension.ts';
import {
  contextOf,
  entryOf,
  inches,
  millimetres,
  numberOf,
  shown,
} from '../../../helpers/trade-call.ts';

describe('MIX.QUANTITY', () => {
  test.each([
    ['MIX.QUANTITY(1kg, 2, by_mass, 1.1g/cm3, 1.15g/cm3)', '200 % of catalyst is outside'],
    ['MIX.QUANTITY(1kg, 0.4%, by_mass, 1.1g/cm3, 1.15g/cm3)', '0.4 % of catalyst is outside'],
    ['MIX.QUANTITY(1kg, 4.1%, by_mass, 1.1g/cm3, 1.15g/cm3)', '4.1 % of catalyst is outside'],
    ['MIX.QUANTITY(-1kg, 2%, by_mass, 1.1g/cm3, 1.15g/cm3)', 'resin is -1 kg'],
    ['MIX.QUANTITY(1in, 2%, by_mass, 1.1g/cm3, 1.15g/cm3)', 'give a mass or a volume'],
    ['MIX.QUANTITY(1kg, 2%, by_weight, 1.1g/cm3, 1.15g/cm3)', 'needs basis'],
    ['MIX.QUANTITY(1kg, 2%)', 'needs basis'],
    ['MIX.QUANTITY(1kg)', 'needs percent'],
    ['MIX.QUANTITY(1kg, 2%, by_mass, 1.1g/cm3)', 'the density of the catalyst is needed'],
    ['MIX.QUANTITY(1qt, 2%, by_mass, , 1.15g/cm3)', 'the density of the resin is needed'],
    ['MIX.QUANTITY(1kg, 2%, by_volume, , 1.15g/cm3)', 'the density of the resin is needed'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });

  test('the ends of the range are allowed', () => {
    expect(shown('MIX.QUANTITY(1kg, 4%, ml_per_100g)', millimetres)).toBe('40 ml');
    expect(shown('MIX.QUANTITY(1kg, 0.5%, ml_per_100g)', millimetres)).toBe('5 ml');
  });

  test('a density that a custom does not use may be missing', () => {
    expect(shown('MIX.QUANTITY(1qt, 2%, by_volume)', millimetres)).toBe('18.93 ml');
    expect(shown('MIX.QUANTITY(500g, 2%, ml_per_100g)', millimetres)).toBe('10 ml');
    expect(shown('MIX.QUANTITY(1kg, 2%, by_mass, , 1.18g/cm3)', millimetres)).toBe('16.95 ml');
  });

  test('resin by mass and the same resin by volume take the same catalyst', () => {
    const quantity = (base: number, dimension: typeof mass): Argument => {
      return { kind: 'quantity', base, dimension };
    };
    const run = (resin: Argument, basis: string): number => {
      const answer = entryOf('MIX.QUANTITY').run?.(
        [
          resin,
          quantity(0.02, plain),
          { kind: 'choice', word: basis },
          quantity(0.0011, density),
          quantity(0.00115, density),
        ],
        contextOf(inches),
      );
      if (answer?.ok !== true || answer.value.kind !== 'quantity') throw new Error('no answer');
      return answer.value.base;
    };
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e5, noNaN: true }),
        fc.constantFrom('by_mass', 'by_volume', 'ml_per_100g'),
        (grams, basis) => {
          const [one, other] = [
            run(quantity(grams, mass), basis),
            run(quantity(grams / 0.0011, volume), basis),
          ];
          expect(other / one).toBeCloseTo(1, 12);
        },
      ),
    );
  });
});

describe('MIX.QUANTITY and MIX.POTLIFE beyond their rules', () => {
  test('no resin takes no catalyst, by mass and by volume', () => {
    const densities = '1.1g/cm3, 1.12g/cm3';
    expect(numberOf(`MIX.QUANTITY(0g, 2%, by_volume, ${densities})`)).toBe(0);
    expect(numberOf(`MIX.QUANTITY(0, 2%, by_mass, ${densities})`)).toBe(0);
  });

  test('a density of nothing is told with its value', () => {
    expect(shown('MIX.QUANTITY(1qt, 2%, by_mass, 0g/cm3, 1.12g/cm3)', millimetres)).toBe(
      'MIX.QUANTITY: resin density is 0 g/cm3; it must be more than nothing.',
    );
  });

  test('gel times are not worked out for a freezer or an oven', () => {
    expect(shown('MIX.POTLIFE(2%, 200degF, 18min, 2%, 78degF)')).toBe(
      'MIX.POTLIFE: temperature is 200 degF; the rule holds from 32 degF to 140 degF, where a shop works.',
    );
    expect(shown('MIX.POTLIFE(2%, 60degF, 18min, 2%, 20degF)')).toContain('test temperature is 20');
  });
});

describe('MIX.CHART', () => {
  test('a band holds its lower border and not its upper', () => {
    expect(numberOf('MIX.CHART(13degC)')).toBe(0.03);
    expect(numberOf('MIX.CHART(12.999degC)')).toBe(0.04);
    expect(numberOf('MIX.CHART(61degF)')).toBe(0.02);
  });

  test('outside its bands the chart says where it begins or ends', () => {
    expect(shown('MIX.CHART(35degC)')).toBe(
      'The chart “catalyst” has no band for 95 degF; it ends below 95 degF. Write the percentage, or add a band to the shop book.',
    );
    expect(shown('MIX.CHART(4degC)', millimetres)).toBe(
      'The chart “catalyst” has no band for 4 degC; it begins at 5 degC. Write the percentage, or add a band to the shop book.',
    );
  });

  test('a gap between bands and a missing chart are told', () => {
    const run = entryOf('MIX.CHART').run;
    const at = { kind: 'quantity', base: 15, dimension: { ...plain, temperature: 1 } } as const;
    const bands = [
      { from: 5, to: 13, value: 0.04 },
      { from: 16, to: 20, value: 0.02 },
    ];
    const gap = run?.([at], { settings: millimetres, chart: () => bands });
    expect(gap?.ok === false && gap.problem.message).toContain('leave a gap');
    const none = run?.([at], { settings: millimetres, chart: () => [] });
    expect(none?.ok === false && none.problem.code).toBe('chart-empty');
  });
});

describe('resin functions', () => {
  test.each([
    ['RESIN.SOAK(-1sqft, 2000g/m2)', 'area is -1 sqft'],
    ['RESIN.SOAK(1sqft, 2000g/m2, -1)', 'layers is -1'],
    ['RESIN.GLASS(1m2, 0g/m2, 3, 2.5)', 'glass weight is 0 oz/sqyd'],
    ['RESIN.GLASS(1m2, 600g/m2, 3, 0)', 'ratio is 0'],
    ['RESIN.FILM(1m2, 1mm, 0g/cm3)', 'density is 0 lb/cuft'],
    ['RESIN.VOLUME(1kg, 0g/cm3)', 'density is 0 lb/cuft'],
    ['LAMINATE.THICKNESS(450g/m2, 100%, 2.56g/cm3, 1.2g/cm3)', 'the share of glass is 100 %'],
    ['LAMINATE.THICKNESS(450g/m2, 0%, 2.56g/cm3, 1.2g/cm3)', 'the share of glass is 0 %'],
    ['MIX.PERCENT(0lb, 40g)', 'resin mass is 0 g'],
    ['MIX.DROPS(2ml, 0ml)', 'drop is 0 floz'],
    ['MIX.POTLIFE(0%, 70degF, 18min, 2%, 77degF)', 'percent is 0 %'],
    ['MIX.POTLIFE(2%, 70degF, 0min, 2%, 77degF)', 'test minutes is 0 min'],
    ['MIX.BATCHES(3qt, 0pt)', 'pot is 0 floz'],
    ['MIX.BATCHES(3qt, 1pt, 0floz/min, 12min)', 'spread rate is 0 floz/min'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });

  test('one layer is soaked when layers is left out, and none takes none', () => {
    expect(shown('RESIN.SOAK(1m2, 2000g/m2)')).toBe('2 kg');
    expect(shown('RESIN.SOAK(1m2, 2000g/m2, 2)')).toBe('4 kg');
    expect(shown('RESIN.SOAK(1m2, 2000g/m2, 0)')).toBe('0 g');
  });

  test('a pot counts alone, or what is spread before it gels where that is less', () => {
    expect(shown('MIX.BATCHES(3qt, 1pt)')).toBe('6');
    expect(shown('MIX.BATCHES(3qt, 1pt, 1floz/min, 12min)')).toBe('8');
    expect(shown('MIX.BATCHES(3qt, 1pt, 10floz/min, 12min)')).toBe('6');
  });
});

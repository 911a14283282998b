import { describe, expect, test } from 'vitest';
import { answered, numberOf } from '../../../helpers/calculated.ts';

describe('RESIN.VOLUME', () => {
  test('a kilogram and a tenth at 1.1 g/cm3 is a litre', () => {
    expect(numberOf('RESIN.VOLUME(1100g, 1.1g/cm3)', 'l')).toBeCloseTo(1, 12);
  });

  test('a volume is that volume, whatever it weighs', () => {
    expect(numberOf('RESIN.VOLUME(24floz, 1.1g/cm3)', 'floz')).toBeCloseTo(24, 12);
  });

  test('an area is neither', () => {
    expect(answered('RESIN.VOLUME(4sqft, 1.1g/cm3)')).toContain('is an area');
  });

  test.each([
    ['RESIN.VOLUME(1kg, 0g/cm3)', 'density'],
    ['RESIN.VOLUME(0kg - 1kg, 1.1g/cm3)', 'less than nothing'],
  ])('%s is refused', (call, words) => {
    expect(answered(call)).toContain(words);
  });
});

describe('MIX.BATCHES', () => {
  // 3 kg in pots of 500 g are six; spread at 60 g/min for 5 min only 300 g go on, so ten.
  test('by weight as by volume', () => {
    expect(numberOf('MIX.BATCHES(3kg, 500g)')).toBe(6);
    expect(numberOf('MIX.BATCHES(3kg, 500g, 60g/min, 5min)')).toBe(10);
    expect(numberOf('MIX.BATCHES(3qt, 1pt, 1floz/min, 12min)')).toBe(8);
  });

  test.each([
    ['MIX.BATCHES(3kg, 1pt)', /total is .*, but pot is .*RESIN\.VOLUME/],
    ['MIX.BATCHES(3qt, 1pt, 60g/min, 12min)', /spread rate is 60 g\/min/],
  ])('%s: what is weighed is not held against what is measured', (call, words) => {
    expect(answered(call)).toMatch(words);
  });

  test('nothing takes no pot', () => {
    expect(numberOf('MIX.BATCHES(0g, 1pt)')).toBe(0);
  });
});

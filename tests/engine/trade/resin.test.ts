import { describe, expect, test } from 'vitest';
import {
  batchCount,
  catalystByMass,
  catalystPerHundredGrams,
  filmMass,
  laminateThickness,
  mixShare,
  potLife,
  resinForGlass,
  resinSoak,
} from '../../../extension/engine/trade/resin.ts';

describe('catalystByMass and catalystPerHundredGrams', () => {
  test('for a catalyst of 1 g/cm3 the two customs agree', () => {
    expect(catalystByMass(500, 0.02, 0.001)).toBeCloseTo(catalystPerHundredGrams(500, 0.02), 9);
  });

  test('a denser catalyst takes less room', () => {
    expect(catalystByMass(500, 0.02, 0.00118)).toBeLessThan(catalystByMass(500, 0.02, 0.001));
  });

  test('the share that was measured out is the share that was mixed', () => {
    const volume = catalystByMass(500, 0.02, 0.00118);
    expect(mixShare(500, volume * 0.00118)).toBeCloseTo(0.02, 12);
  });
});

describe('resinSoak, resinForGlass and filmMass', () => {
  test('1 m² of 2 kg/m² uptake soaks 2 kg a layer', () => {
    expect(resinSoak(1e6, 0.002, 1)).toBeCloseTo(2000, 9);
    expect(resinSoak(1e6, 0.002, 3)).toBeCloseTo(6000, 9);
  });

  test('3 layers of 600 g mat on 1 m² take 4.5 kg at 2.5 : 1', () => {
    expect(resinForGlass(1e6, { weight: 0.0006, layers: 3 }, 2.5)).toBeCloseTo(4500, 9);
  });

  test('1 mm of 1.2 g/cm3 on 1 m² weighs 1.2 kg', () => {
    expect(filmMass(1e6, 1, 0.0012)).toBeCloseTo(1200, 9);
  });
});

describe('laminateThickness', () => {
  test('a laminate of glass alone is as thick as its glass', () => {
    const densities = { glass: 0.00256, resin: 0.0012 };
    expect(laminateThickness(0.000256, 1, densities)).toBeCloseTo(0.1, 12);
    expect(laminateThickness(0.000256, 0.3, densities)).toBeGreaterThan(0.1);
  });
});

describe('potLife', () => {
  test('like the test it takes as long as the test; warmer or hotter mixed it takes less', () => {
    const gelTest = { minutes: 20, share: 0.02, celsius: 20 };
    expect(potLife({ share: 0.02, celsius: 20 }, gelTest)).toBe(20);
    expect(potLife({ share: 0.02, celsius: 30 }, gelTest)).toBe(10);
    expect(potLife({ share: 0.01, celsius: 20 }, gelTest)).toBe(40);
  });
});

describe('batchCount', () => {
  test('the smaller of pot and what is spread in time decides', () => {
    expect(batchCount(3, 0.5, { rate: Infinity, potLife: Infinity })).toBe(6);
    expect(batchCount(3, 0.5, { rate: 0.02, potLife: 15 })).toBe(10);
  });
});

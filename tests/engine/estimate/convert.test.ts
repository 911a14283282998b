import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Measure } from '../../../extension/engine/estimate/amount.ts';
import { conversion, type Properties } from '../../../extension/engine/estimate/convert.ts';

function factor(from: Measure, to: Measure, properties: Properties): number {
  const found = conversion(from, to, properties);
  return found.ok ? found.factor : Number.NaN;
}

describe('conversion', () => {
  test('1,100 g of resin at 1.10 g/cm³ are a litre', () => {
    expect(1100 * factor('mass', 'volume', { density: 0.0011 })).toBeCloseTo(1e6, 3);
  });

  test('a square metre of mat at 450 g/m² weighs 450 g', () => {
    expect(1e6 * factor('area', 'mass', { weight: 450e-6 })).toBeCloseTo(450, 9);
  });

  test('filler 1 mm thick over a square metre is a litre', () => {
    expect(1e6 * factor('area', 'volume', { thickness: 1 })).toBeCloseTo(1e6, 3);
  });

  test('coverage goes before thickness', () => {
    expect(factor('area', 'volume', { thickness: 1, coverage: 10 })).toBeCloseTo(0.1, 12);
  });

  test('an area off a bolt is a length by its width', () => {
    expect(factor('area', 'length', { width: 1000 }) * 5e6).toBeCloseTo(5000, 9);
  });

  test('two hops are taken where each has its property: area by weight to mass, then to volume', () => {
    const found = conversion('area', 'volume', { weight: 0.001, density: 0.001 });
    expect(found).toMatchObject({ ok: true, by: ['weight', 'density'] });
  });

  test('a missing property is named', () => {
    expect(conversion('mass', 'volume', {})).toEqual({ ok: false, missing: ['density'] });
    expect(conversion('length', 'count', {})).toEqual({ ok: false, missing: ['length'] });
    expect(conversion('area', 'mass', { density: 1 })).toEqual({ ok: false, missing: ['weight'] });
  });

  test('a property of nothing is missing', () => {
    expect(conversion('mass', 'volume', { density: 0 })).toEqual({
      ok: false,
      missing: ['density'],
    });
  });

  const measures = fc.constantFrom<Measure>('count', 'length', 'area', 'volume', 'mass');
  const positive = fc.double({ min: 0.001, max: 1000, noNaN: true });
  const whole = fc.record({
    density: positive,
    weight: positive,
    thickness: positive,
    coverage: positive,
    width: positive,
    length: positive,
  });

  test('there and back again is the same amount', () => {
    fc.assert(
      fc.property(measures, measures, whole, (from, to, properties) => {
        const back = factor(from, to, properties) * factor(to, from, properties);
        expect(back).toBeCloseTo(1, 9);
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../extension/engine/index.ts';
import { answered, baseOf } from '../../helpers/calculated.ts';

const inches = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const text = (number: number): string => number.toFixed(9);

/** Which way the answer goes while one argument grows and all others stay. */
type Way = 'rises' | 'falls';

/** A call in which x stands for the argument that grows, and the range it is tried in. */
type Course = readonly [call: string, from: number, to: number, way: Way];

const courses: readonly Course[] = [
  ['RING.LEAST(x in, 15deg, 5/8in)', 2, 10, 'rises'],
  ['RING.LEAST(8in, x deg, 5/8in)', 0, 60, 'rises'],
  ['RING.LEAST(8in, x deg, 5/8in, round_tube)', 0, 60, 'rises'],
  ['RING.LEAST(8in, 15deg, x in, square_wall)', 0, 3, 'rises'],
  ['RING.LOW(x in, 8in, 15deg)', 2, 6, 'rises'],
  ['RING.LOW(2in, x in, 15deg)', 2, 12, 'falls'],
  ['RING.HIGH(2in, x in, 15deg)', 2, 12, 'rises'],
  ['RING.HIGH(2in, 8in, x deg, round_tube)', 0, 25, 'rises'],
  ['RING.HIGH(2in, oval(9in, 6in), x deg, square_wall)', 0, 20, 'rises'],
  ['RING.STRIP(x in, 15deg)', 2, 12, 'rises'],
  ['RING.STRIP(8in, x deg)', 0, 60, 'falls'],
  ['RING.STRIP(8in, 0deg, round_baffle, x in)', 0, 0.5, 'falls'],
  ['RING.STRIP(8in, 0deg, round_baffle, 1/8in, x in)', 0, 3, 'rises'],
  ['RING.WALL(x in, 8in, 15deg)', 2, 6, 'rises'],
  ['RING.WALL(3in, x in, 15deg)', 2, 10, 'rises'],
  ['RING.SHADOW(8in, x deg)', 0, 60, 'falls'],
  ['RING.SHADOW(x in, 15deg)', 2, 12, 'rises'],
  ['RING.RADIUS(8in, x deg)', 0, 60, 'falls'],
  ['RING.VOLUME(x in, 8in, 15deg)', 2, 6, 'rises'],
  ['RING.DEPTH(2 3/4in, 2in, x in, 15deg, 3in)', 0, 2, 'rises'],
  ['RING.DEPTH(2 3/4in, 2in, 1/4in, 15deg, x in)', 0, 6, 'rises'],
  ['SHIM.HEIGHT(x in, 15deg)', 2, 12, 'rises'],
  ['SHIM.HEIGHT(8in, x deg)', 0, 80, 'rises'],
  ['SHIM.HEIGHT(8in, 15deg, x deg)', 0, 180, 'rises'],
  ['DRIVER.CLEARANCE(x in, 2 3/4in, 3in, 15deg, 2in)', 0, 5, 'rises'],
  ['DRIVER.CLEARANCE(2in, x in, 3in, 15deg, 2in)', 1, 5, 'falls'],
  ['DRIVER.CLEARANCE(2in, 2 3/4in, x in, 15deg, 2in)', 1, 6, 'falls'],
  ['DRIVER.REACH(x in, 3in, 15deg)', 1, 6, 'rises'],
  ['DRIVER.REACH(2 3/4in, x in, 15deg)', 1, 6, 'rises'],
  ['AIM.TILT(30in, 28in, x in)', 5, 60, 'falls'],
  ['AIM.TURN(x in, 28in, 24in)', 1, 60, 'rises'],
  ['AIM.OFFAXIS(30in, 28in, 24in, x deg, AIM.TURN(30in, 28in, 24in))', 0, 55, 'falls'],
  ['AIM.DISTANCE(x in, 28in, 24in)', 0, 60, 'rises'],
  ['DRIVER.OFFAXISLOSS(130mm, 2kHz, x deg)', 0, 80, 'falls'],
  ['DRIVER.OFFAXISLOSS(x mm, 2kHz, 40deg)', 10, 200, 'falls'],
  ['BEARING.OFFSET(1 3/8in, x in)', 0.25, 1.375, 'falls'],
  ['BEARING.SIZE(1 3/8in, x in)', 0, 0.6, 'falls'],
  ['BUSHING.OFFSET(x in, 1/4in)', 0.3, 1.5, 'rises'],
  ['BUSHING.TEMPLATE(x in, 3/4in, 1/2in, inside)', 2, 12, 'rises'],
  ['JIG.RADIUS(x in, 1/2in, hole)', 2, 12, 'rises'],
  ['HOLESAW.SIZE(x in)', 0.2, 6, 'rises'],
  ['GRILLE.SIZE(8in, x in, 1/32in)', 0, 0.3, 'falls'],
  ['GRILLE.SIZE(8in, 1/16in, x in)', 0, 0.3, 'falls'],
  ['SHAPE.AREA(SHAPE.GROW(roundrect(24in, 16in, 2in), x in))', -1.5, 3, 'rises'],
  ['SHAPE.PERIMETER(oval(9in, x in))', 1, 20, 'rises'],
  ['RESIN.SOAK(4sqft, x g/m2)', 0, 3000, 'rises'],
  ['RESIN.GLASS(x sqft, 450g/m2, 2, 2.5)', 0, 20, 'rises'],
  ['RESIN.FILM(4sqft, x mm, 1.2g/cm3)', 0, 5, 'rises'],
  ['RESIN.VOLUME(900g, x g/cm3)', 0.8, 2, 'falls'],
  ['MIX.QUANTITY(x qt, 2%, by_mass, 1.1g/cm3, 1.12g/cm3)', 0, 8, 'rises'],
  ['MIX.QUANTITY(1qt, x%, by_volume, 1.1g/cm3, 1.12g/cm3)', 0.5, 4, 'rises'],
  ['MIX.PERCENT(5lb, x g)', 0, 90, 'rises'],
  ['MIX.DROPS(x ml, 0.05ml)', 0, 20, 'rises'],
  ['MIX.CHART(x degC)', 5, 34.9, 'falls'],
  ['MIX.POTLIFE(2%, x degF, 20min, 2%, 77degF)', 50, 100, 'falls'],
  ['MIX.BATCHES(x qt, 1pt)', 0, 8, 'rises'],
  ['MIX.BATCHES(3kg, 500g, x g/min, 6min)', 20, 200, 'falls'],
  ['LAMINATE.THICKNESS(x g/m2, 30%, 2.56g/cm3, 1.2g/cm3)', 0, 900, 'rises'],
  ['LAMINATE.THICKNESS(450g/m2, x%, 2.56g/cm3, 1.2g/cm3)', 20, 80, 'falls'],
  ['WRAP.SIZE(24in, x in, 1in, 1in)', 0, 2, 'rises'],
  ['CLOTH.REPEAT(8yd, x in, 0in, 54in)', 0, 54, 'rises'],
  ['GLUE.COVERAGE(500g, 25%, x g/sqft)', 0.5, 5, 'falls'],
  ['GLUE.NEED(x sqft, 2, 2.5g/sqft, 25%)', 0, 40, 'rises'],
  ['STAPLE.COUNT(80in, x in)', 0.5, 4, 'falls'],
  ['BOARD.MASS(32sqft, x in, 43.5lb/cuft)', 0.1, 1, 'rises'],
  ['BOX.VOLUME(45l, 0.4, x)', 0.45, 1.2, 'falls'],
  ['BOX.QTC(45l, 0.4, x l)', 5, 100, 'falls'],
  ['BOX.RESONANCE(35Hz, 45l, x l)', 5, 100, 'falls'],
  ['BOX.F3(x Hz, 45l, 0.4, 20l)', 20, 90, 'rises'],
  ['TIME.THREEPOINT(10min, x min, 40min)', 10, 40, 'rises'],
  ['TIME.LEARN(60min, x%, 8, unit)', 55, 100, 'rises'],
  ['TIME.LEARNTOTAL(60min, x%, 8, average)', 60, 100, 'rises'],
  ['PRICE.FROMMARGIN(100USD, x%)', 0, 90, 'rises'],
  ['MARKUP.FROMMARGIN(x%)', 0, 90, 'rises'],
  ['PACKS(10qt, x qt)', 0.5, 8, 'falls'],
  ['ROUNDTO(x in, 1/8in)', 0, 5, 'rises'],
  ['ROUNDUPTO(x in, 1/8in)', 0, 5, 'rises'],
  ['ROUNDDOWNTO(x in, 1/8in)', 0, 5, 'rises'],
];

/** Functions with no argument that could grow, or whose courses stand with rows and drawings. */
const elsewhere = [
  ...['circle', 'oval', 'rect', 'roundrect', 'polygon', 'path'],
  ...['SHAPE.LENGTH', 'SHAPE.WIDTH', 'MIX.BORDER', 'SHOW', 'BUILD.UP'],
];

function at(call: string, x: number): number {
  // As a temperature is written, a sign belongs to its number.
  return baseOf(call.replaceAll(/\bx(?=[ %)])/g, x.toFixed(6)));
}

describe('while one argument grows and the others stay', () => {
  test('every function of the trade is asked', () => {
    const asked = new Set(courses.map(([call]) => call.slice(0, call.indexOf('('))));
    const inner = courses.flatMap(([call]) =>
      [...call.matchAll(/[A-Z]+\.[A-Z]+/g)].map(([name]) => name),
    );
    const missing = [...catalogue.values()]
      .filter(
        ({ group, name }) => group !== 'standard' && group !== 'skin' && !elsewhere.includes(name),
      )
      .filter(({ name }) => !asked.has(name) && !inner.includes(name));
    expect(missing.map(({ name }) => name)).toEqual([]);
  });

  test.each(courses)(
    '%s from %d to %d never does but what it must: it %s',
    (call, from, to, way) => {
      const place = fc.double({ min: from, max: to, noNaN: true });
      fc.assert(
        fc.property(place, place, (one, other) => {
          const [low, high] = [Math.min(one, other), Math.max(one, other)].map((x) => at(call, x));
          const [less, more] = way === 'rises' ? [low, high] : [high, low];
          expect(less).toBeLessThanOrEqual((more ?? 0) + Math.abs(more ?? 0) * 1e-9 + 1e-9);
        }),
        { numRuns: 40 },
      );
      // And it does move from one end to the other.
      expect(at(call, to) === at(call, from)).toBe(false);
    },
  );
});

describe('order', () => {
  test('leaning further never lowers a ring’s high side, and never raises its low side', () => {
    fc.assert(
      fc.property(
        inches(2, 6),
        inches(2, 10),
        inches(0, 25),
        inches(0, 20),
        (depth, size, tilt, more) => {
          const at = (side: string, lean: number): number | undefined => {
            const answer = answered(
              `RING.${side}(${text(depth)} in, ${text(size)} in, ${text(lean)} deg)`,
            );
            return typeof answer === 'string' || answer.kind !== 'quantity'
              ? undefined
              : answer.base;
          };
          const [high, higher] = [at('HIGH', tilt), at('HIGH', tilt + more)];
          const [low, lower] = [at('LOW', tilt), at('LOW', tilt + more)];
          if (high !== undefined && higher !== undefined)
            expect(higher).toBeGreaterThanOrEqual(high - 1e-9);
          if (low !== undefined && lower !== undefined)
            expect(lower).toBeLessThanOrEqual(low + 1e-9);
        },
      ),
      { numRuns: 100 },
    );
  });

  test('a deeper driver never takes a lower ring, and more room behind never a higher one', () => {
    const depth = (driver: number, behind: number): number =>
      baseOf(`RING.DEPTH(${text(driver)} in, ${text(behind)} in, 1/4in, 12deg, 3in)`);
    fc.assert(
      fc.property(inches(1, 5), inches(0, 4), inches(0, 2), (driver, behind, more) => {
        expect(depth(driver + more, behind)).toBeGreaterThanOrEqual(depth(driver, behind) - 1e-9);
        expect(depth(driver, behind + more)).toBeLessThanOrEqual(depth(driver, behind) + 1e-9);
        expect(depth(driver, behind)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 100 },
    );
  });

  test('warmer or more catalyst never gives a longer pot life', () => {
    const life = (percent: number, fahrenheit: number): number =>
      baseOf(`MIX.POTLIFE(${text(percent)}%, ${text(fahrenheit)} degF, 20min, 2%, 77degF)`);
    fc.assert(
      fc.property(inches(0.5, 3), inches(50, 95), inches(0, 10), (percent, heat, more) => {
        expect(life(percent, heat + more)).toBeLessThanOrEqual(life(percent, heat) + 1e-9);
        expect(life(percent + more / 10, heat)).toBeLessThanOrEqual(life(percent, heat) + 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  test('packs for more are never fewer', () => {
    fc.assert(
      fc.property(inches(0, 40), inches(0, 20), inches(0.5, 8), (need, more, pack) => {
        const packs = (amount: number): number =>
          baseOf(`PACKS(${text(amount)} qt, ${text(pack)} qt)`);
        expect(packs(need + more)).toBeGreaterThanOrEqual(packs(need));
        expect(packs(need) * pack * 1.0101).toBeGreaterThanOrEqual(need - 1e-6);
      }),
      { numRuns: 100 },
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cheapestPacks,
  tightness,
  wholeSteps,
  type Offer,
} from '../../../extension/engine/estimate/packs.ts';

const quart: Offer = { id: 'qt', holds: 1, price: 2400 };
const gallon: Offer = { id: 'gal', holds: 4, price: 6200 };

/** Tries every combination up to the number that one pack alone would need. */
function bruteForce(need: number, offers: readonly Offer[]): number {
  const most = offers.map(({ holds }) => Math.ceil(need / holds));
  let best = Number.POSITIVE_INFINITY;
  const tryFrom = (index: number, amount: number, cost: number): void => {
    if (amount >= need * (1 - 1e-9)) best = Math.min(best, cost);
    const offer = offers[index];
    if (offer === undefined) return;
    for (let count = 0; count <= (most[index] ?? 0); count++) {
      tryFrom(index + 1, amount + count * offer.holds, cost + count * offer.price);
    }
  };
  tryFrom(0, 0, 0);
  return best;
}

const anyOffers = fc
  .array(
    fc.record({ holds: fc.integer({ min: 1, max: 12 }), price: fc.integer({ min: 0, max: 90 }) }),
    {
      minLength: 1,
      maxLength: 3,
    },
  )
  .map((offers) => offers.map((offer, index) => ({ ...offer, id: String(index) })));

describe('cheapestPacks', () => {
  test('two quarts are cheaper than a gallon, three are not', () => {
    expect(cheapestPacks(2, [quart, gallon], 0)).toEqual({
      packs: [{ id: 'qt', count: 2 }],
      cost: 4800,
      amount: 2,
    });
    expect(cheapestPacks(3, [quart, gallon], 0)?.packs).toEqual([{ id: 'gal', count: 1 }]);
  });

  test('five quarts are a gallon and a quart', () => {
    expect(cheapestPacks(5, [quart, gallon], 0)).toEqual({
      packs: [
        { id: 'gal', count: 1 },
        { id: 'qt', count: 1 },
      ],
      cost: 8600,
      amount: 5,
    });
  });

  test('2.003 quarts are two quarts where a hundredth short is allowed, else a gallon', () => {
    expect(cheapestPacks(2.003, [quart, gallon], 0.01)?.cost).toBe(4800);
    expect(cheapestPacks(2.003, [quart, gallon], 0)?.cost).toBe(6200);
  });

  test('packs of the same price for what they hold are taken as large as fits', () => {
    const foot = { id: 'ft', holds: 1, price: 45 };
    const spool = { id: 'spool', holds: 10, price: 450 };
    expect(cheapestPacks(9.5, [foot, spool], 0)?.packs).toEqual([{ id: 'spool', count: 1 }]);
    expect(cheapestPacks(1_000_000.5, [foot, spool], 0)?.cost).toBe(45_000_045);
  });

  test('nothing needed is nothing bought, and no offer is no answer', () => {
    expect(cheapestPacks(0, [quart], 0)).toEqual({ packs: [], cost: 0, amount: 0 });
    expect(cheapestPacks(1, [], 0)).toBeUndefined();
    expect(cheapestPacks(1, [{ id: 'empty', holds: 0, price: 5 }], 0)).toBeUndefined();
  });

  test('what is given away is taken first', () => {
    const given = { id: 'given', holds: 0.5, price: 0 };
    expect(cheapestPacks(2, [quart, given], 0)?.cost).toBe(0);
  });

  test('no combination that is tried one by one is cheaper', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), anyOffers, (need, offers) => {
        const found = cheapestPacks(need, offers, 0);
        expect(found?.cost).toBe(bruteForce(need, offers));
        expect(found?.amount).toBeGreaterThanOrEqual(need);
      }),
      { numRuns: 500 },
    );
  });

  test('cost and amount are those of the packs', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 50, noNaN: true }), anyOffers, (need, offers) => {
        const found = cheapestPacks(need, offers, 0.01);
        const sum = (pick: (offer: Offer) => number): number =>
          (found?.packs ?? []).reduce((total, { id, count }) => {
            const offer = offers.find((candidate) => candidate.id === id);
            return total + count * (offer === undefined ? Number.NaN : pick(offer));
          }, 0);
        expect(found?.cost).toBe(sum(({ price }) => price));
        expect(found?.amount).toBe(sum(({ holds }) => holds));
      }),
    );
  });

  test('more is never cheaper', () => {
    fc.assert(
      fc.property(fc.nat(60), fc.nat(20), anyOffers, (need, more, offers) => {
        const less = cheapestPacks(need, offers, 0)?.cost ?? 0;
        expect(cheapestPacks(need + more, offers, 0)?.cost).toBeGreaterThanOrEqual(less);
      }),
    );
  });
});

describe('wholeSteps', () => {
  const cloth = { id: 'cloth', step: 0.25, rate: 950, least: 0 };

  test('cloth at 9.50 a yard by the quarter: 0.847 yd is one yard for 9.50', () => {
    expect(wholeSteps(0.847, cloth, 0)).toEqual({
      packs: [{ id: 'cloth', count: 4 }],
      cost: 950,
      amount: 1,
    });
  });

  test('the line is rounded once: three quarters at 9.50 are 7.13, not 3 × 2.38', () => {
    expect(wholeSteps(0.7, cloth, 0).cost).toBe(713);
  });

  test('the least that is sold is taken, but not for nothing', () => {
    expect(wholeSteps(0.1, { ...cloth, least: 0.5 }, 0).amount).toBe(0.5);
    expect(wholeSteps(0, { ...cloth, least: 0.5 }, 0)).toEqual({ packs: [], cost: 0, amount: 0 });
  });

  test('a need of whole steps takes no step more', () => {
    expect(wholeSteps(0.1 + 0.2, { ...cloth, step: 0.1 }, 0).packs).toEqual([
      { id: 'cloth', count: 3 },
    ]);
  });
});

describe('tightness', () => {
  test('says how much is short or to spare', () => {
    expect(tightness(2.003, 2)).toBe('tight, 0.1 % short');
    expect(tightness(100, 101.4)).toBe('tight, 1.4 % to spare');
    expect(tightness(2, 2)).toBe('tight, nothing to spare');
  });

  test('three in a hundred to spare is enough', () => {
    expect(tightness(100, 103)).toBeUndefined();
    expect(tightness(0, 0)).toBeUndefined();
  });
});

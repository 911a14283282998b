import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cheapestCount,
  fewestMoney,
  priceOf,
  type PackOnOffer,
} from '../../../../extension/engine/cutting/packs/cheapest-packs.ts';

const quart = { id: 'qt', holds: 32, price: 2499 };
const gallon = { id: 'gal', holds: 128, price: 6999 };
const pail = { id: 'pail', holds: 640, price: 28900 };

const anyOffer = fc.record({
  holds: fc.integer({ min: 1, max: 12 }),
  price: fc.integer({ min: 1, max: 90 }),
  limit: fc.option(fc.integer({ min: 0, max: 4 }), { nil: undefined }),
  least: fc.constantFrom(0, 0, 0, 2, 3),
  breaks: fc.option(
    fc.record({ from: fc.integer({ min: 2, max: 6 }), off: fc.integer({ min: 1, max: 30 }) }),
    { nil: undefined },
  ),
});

const anyOffers = fc.array(anyOffer, { minLength: 1, maxLength: 3 }).map((offers) =>
  offers.map(({ holds, price, limit, least, breaks }, index): PackOnOffer => ({
    id: String(index),
    holds,
    price,
    least,
    ...(limit === undefined ? {} : { limit }),
    ...(breaks === undefined
      ? {}
      : { breaks: [{ from: breaks.from, price: Math.max(1, price - breaks.off) }] }),
  })),
);

function bruteForce(need: number, offers: readonly PackOnOffer[]): number {
  let best = Infinity;
  const tryFrom = (index: number, amount: number, cost: number): void => {
    if (amount >= need) best = Math.min(best, cost);
    const offer = offers[index];
    if (offer === undefined) return;
    const most = Math.min(offer.limit ?? Infinity, Math.ceil(need / offer.holds) + 7);
    for (let count = 0; count <= most; count++) {
      if (count > 0 && count < (offer.least ?? 0)) continue;
      tryFrom(index + 1, amount + count * offer.holds, cost + priceOf(offer, count));
    }
  };
  tryFrom(0, 0, 0);
  return best;
}

describe('cheapestCount', () => {
  const disc = { id: 'disc', holds: 1, price: 110, breaks: [{ from: 12, price: 90 }] };

  test('is what is asked for, or as many as cost less', () => {
    expect([0, 3, 9, 10, 12, 13].map((count) => cheapestCount(disc, count))).toEqual([
      0, 3, 9, 12, 12, 13,
    ]);
  });

  test('is no fewer than are sold, and no more than there are', () => {
    expect(cheapestCount({ ...disc, least: 5 }, 3)).toBe(5);
    expect(cheapestCount({ ...disc, limit: 11 }, 10)).toBe(10);
  });
});

describe('fewestMoney', () => {
  test('500 random needs cost what trying everything costs', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), anyOffers, (need, offers) => {
        const chosen = fewestMoney(need, offers, 0);
        expect(chosen?.cost ?? Infinity).toBe(bruteForce(need, offers));
        if (chosen !== undefined) expect(chosen.amount).toBeGreaterThanOrEqual(need);
      }),
      { numRuns: 500 },
    );
  });

  test.each([
    // Prices of an example, not of a market; costs found by trying everything.
    [40, 4998],
    [90, 6999],
    [160, 9498],
    [205, 13998],
    [256, 13998],
    [300, 18996],
    [520, 28900],
    [700, 33898],
    [1000, 49897],
  ])('%i fl oz of resin in quarts, gallons and pails cost %i cents', (need, cost) => {
    expect(fewestMoney(need, [quart, gallon, pail], 0)?.cost).toBe(cost);
  });

  test('what the shelf does not hold cannot be bought', () => {
    const two = { ...quart, limit: 2 };
    expect(fewestMoney(96, [two], 0)).toBeUndefined();
    expect(fewestMoney(96, [two, gallon], 0)?.packs).toEqual([{ id: 'gal', count: 1 }]);
  });

  test('a dozen at the lower price beats ten at the higher', () => {
    const disc = { id: 'disc', holds: 1, price: 110, breaks: [{ from: 12, price: 90 }] };
    expect(fewestMoney(10, [disc], 0)).toEqual({
      packs: [{ id: 'disc', count: 12 }],
      cost: 1080,
      amount: 12,
    });
  });
});

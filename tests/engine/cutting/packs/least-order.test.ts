import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { priceOf } from '../../../../extension/engine/cutting/packs/cheapest-packs.ts';
import { farthest, leastOrder } from '../../../../extension/engine/cutting/packs/least-order.ts';
import type {
  OrderLine,
  OrderOffer,
} from '../../../../extension/engine/cutting/packs/line-costs.ts';

const anyOffer = fc
  .record({
    holds: fc.integer({ min: 1, max: 5 }),
    price: fc.integer({ min: 6, max: 15 }),
    least: fc.constantFrom(0, 0, 0, 2, 3),
    limit: fc.constantFrom(undefined, undefined, undefined, 0, 2, 4),
    from: fc.constantFrom(0, 0, 2, 4),
    off: fc.integer({ min: 1, max: 3 }),
  })
  .map(({ holds, price, least, limit, from, off }): Omit<OrderOffer, 'id'> => ({
    ...{ holds, price, least },
    ...(limit === undefined ? {} : { limit }),
    ...(from === 0 ? {} : { breaks: [{ from, price: price - off }] }),
  }));

const anyLine = fc
  .record({
    need: fc.integer({ min: 1, max: 9 }),
    offers: fc.array(anyOffer, { minLength: 1, maxLength: 2 }),
    floors: fc.constantFrom(false, false, true),
  })
  .map(({ need, offers, floors }): OrderLine => {
    const named = offers.map((offer, index) => ({ ...offer, id: String(index) }));
    if (!floors) return { need, offers: named };
    // A line that was laid out takes so many of one pack, and may take more of any.
    const first = { ...(named[0] ?? { id: '0', holds: 1, price: 5 }), limit: Infinity };
    return { need: 0, offers: [{ ...first, floor: need }, ...named.slice(1)] };
  });

/** All totals up to `most` that a line can be bought for, by trying every number of every pack. */
function totals(line: OrderLine, most: number): ReadonlySet<number> {
  const found = new Set<number>();
  const tryFrom = (index: number, amount: number, cost: number): void => {
    const offer = line.offers[index];
    if (offer === undefined) {
      if (amount >= line.need && cost <= most) found.add(cost);
      return;
    }
    for (let count = 0; count <= Math.min(offer.limit ?? 60, 60); count++) {
      if (count < (offer.floor ?? 0) || (count > 0 && count < (offer.least ?? 0))) continue;
      tryFrom(index + 1, amount + count * offer.holds, cost + priceOf(offer, count));
    }
  };
  tryFrom(0, 0, 0);
  return found;
}

function bruteForce(lines: readonly OrderLine[], minimum: number): number {
  const sums = lines.reduce<ReadonlySet<number>>(
    (before, line) => {
      const own = [...totals(line, 220)];
      return new Set([...before].flatMap((sum) => own.map((one) => sum + one)));
    },
    new Set([0]),
  );
  return Math.min(...[...sums].filter((sum) => sum >= minimum));
}

const resin: OrderLine = {
  need: 2,
  offers: [
    { id: 'quart', holds: 1, price: 2499 },
    { id: 'gallon', holds: 4, price: 6999 },
  ],
};
const mat: OrderLine = { need: 3, offers: [{ id: 'yard', holds: 1, price: 900 }] };

describe('leastOrder', () => {
  test('500 random orders cost what trying everything costs, and are what they say', () => {
    let [met, never] = [0, 0];
    fc.assert(
      fc.property(
        fc.array(anyLine, { minLength: 1, maxLength: 3 }),
        fc.integer({ min: 0, max: 90 }),
        (lines, minimum) => {
          const chosen = leastOrder(lines, minimum);
          expect(chosen?.cost ?? Infinity).toBe(bruteForce(lines, minimum));
          if (chosen === undefined) never += 1;
          else met += 1;
          chosen?.lines.forEach(({ packs, cost }, index) => {
            const line = lines[index];
            const bought = (line?.offers ?? []).map((offer) => {
              const count = packs.find(({ id }) => id === offer.id)?.count ?? 0;
              expect(count).toBeGreaterThanOrEqual(offer.floor ?? 0);
              expect(count).toBeLessThanOrEqual(offer.limit ?? Infinity);
              if (count > 0) expect(count).toBeGreaterThanOrEqual(offer.least ?? 0);
              return { amount: count * offer.holds, cost: priceOf(offer, count) };
            });
            expect(bought.reduce((sum, one) => sum + one.cost, 0)).toBe(cost);
            expect(bought.reduce((sum, { amount }) => sum + amount, 0)).toBeGreaterThanOrEqual(
              line?.need ?? 0,
            );
          });
        },
      ),
      { numRuns: 500 },
    );
    expect(Math.min(met, never)).toBeGreaterThan(5);
  });

  test('an order that is large enough is left as it is', () => {
    expect(leastOrder([resin, mat], 7698)).toMatchObject({ cost: 4998 + 2700 });
  });

  test('a gallon for two quarts reaches 95 dollars, two yards of mat more reach 94', () => {
    // Two quarts and three yards are 76.98; a gallon instead makes 96.99, and two yards more 94.98.
    expect(leastOrder([resin, mat], 9500)).toEqual({
      cost: 9699,
      lines: [
        { packs: [{ id: 'gallon', count: 1 }], cost: 6999 },
        { packs: [{ id: 'yard', count: 3 }], cost: 2700 },
      ],
    });
    expect(leastOrder([resin, mat], 9400)).toMatchObject({
      cost: 9498,
      lines: [{ cost: 4998 }, { packs: [{ id: 'yard', count: 5 }] }],
    });
  });

  test('what cannot be bought, or is far from the minimum, has no answer', () => {
    expect(leastOrder([{ need: 1, offers: [] }], 10)).toBeUndefined();
    const last = { id: 'last', holds: 1, price: 100, limit: 2 };
    expect(leastOrder([{ need: 1, offers: [last] }], 201)).toBeUndefined();
    expect(leastOrder([{ need: 1, offers: [last] }], 200)?.cost).toBe(200);
    expect(leastOrder([mat], 2700 + farthest)).toBeUndefined();
  });

  test('what is given away is of use only as far as it is needed', () => {
    const given = { id: 'given', holds: 1, price: 0 };
    const paid = { id: 'paid', holds: 1, price: 7 };
    expect(leastOrder([{ need: 3, offers: [given, paid] }], 20)?.cost).toBe(21);
    expect(leastOrder([{ need: 3, offers: [given] }], 20)).toBeUndefined();
  });
});

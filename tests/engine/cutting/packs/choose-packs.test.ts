import { describe, expect, test } from 'vitest';
import { centsIn, choosePacks } from '../../../../extension/engine/cutting/packs/choose-packs.ts';

const packs = [
  { id: 'quart', size: 32, price: 24.99 },
  { id: 'gallon', size: 128, price: 69.99 },
];

describe('centsIn', () => {
  test('is the smallest part of money in which every amount is whole', () => {
    expect(centsIn({ kind: 'packs', need: 1, packs, minimum: 100 })).toBe(100);
    expect(centsIn({ kind: 'packs', need: 1, packs: [{ size: 1, price: 7 }] })).toBe(1);
    expect(centsIn({ kind: 'packs', need: 1, packs: [{ size: 1, price: 1 / 3 }] })).toBeUndefined();
  });
});

describe('choosePacks', () => {
  test('160 fl oz are a gallon and a quart, 98.75 % of them a use for 158', () => {
    const answer = choosePacks({ kind: 'packs', need: 158, packs });
    expect(answer.patterns.map(({ stock, times }) => [stock, times])).toEqual([
      ['gallon', 1],
      ['quart', 1],
    ]);
    expect(answer.price).toBeCloseTo(94.98, 6);
    expect([answer.count, answer.proven]).toEqual([2, true]);
    expect(answer.utilisation).toBeCloseTo(158 / 160, 9);
  });

  test('a minimum order of 100 for one quart is met by a gallon and two quarts', () => {
    // 32 fl oz are a quart at 24.99; of 5 quarts 124.95, 2 gallons 139.98, a gallon and 2 quarts 119.97
    // and 4 quarts 99.96, which is 4 cents too little.
    const order = choosePacks({ kind: 'packs', need: 32, packs, minimum: 100 });
    expect(order.patterns.map(({ stock, times }) => [stock, times])).toEqual([
      ['quart', 2],
      ['gallon', 1],
    ]);
    expect([order.price, order.priceBound]).toEqual([119.97, 119.97]);
    const nearly = choosePacks({ kind: 'packs', need: 32, packs, minimum: 99.96 });
    expect([nearly.price, nearly.count]).toEqual([99.96, 4]);
    expect(choosePacks({ kind: 'packs', need: 32, packs, minimum: 20 }).price).toBe(24.99);
  });

  test('a minimum that the packs cannot come to is told', () => {
    const last = [{ size: 32, price: 24.99, limit: 2 }];
    const answer = choosePacks({ kind: 'packs', need: 32, packs: last, minimum: 60 });
    expect(answer.unplaced).toEqual([{ part: 'minimum', count: 1 }]);
  });

  test('packs without an id are numbered, and too few of them are told', () => {
    const answer = choosePacks({
      kind: 'packs',
      need: 100,
      packs: [{ size: 32, price: 1, limit: 2 }],
    });
    expect(answer.unplaced).toEqual([{ part: 'need', count: 1 }]);
    expect(answer.proven).toBe(false);
  });
});

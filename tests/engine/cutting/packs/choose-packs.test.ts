import { describe, expect, test } from 'vitest';
import { choosePacks } from '../../../../extension/engine/cutting/packs/choose-packs.ts';

const packs = [
  { id: 'quart', size: 32, price: 24.99 },
  { id: 'gallon', size: 128, price: 69.99 },
];

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

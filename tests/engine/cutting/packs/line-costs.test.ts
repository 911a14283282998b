import { describe, expect, test } from 'vitest';
import { costsOf, packsAt } from '../../../../extension/engine/cutting/packs/line-costs.ts';

const line = {
  need: 3,
  offers: [
    { id: 'one', holds: 1, price: 4 },
    { id: 'three', holds: 3, price: 10, least: 2, breaks: [{ from: 3, price: 8 }] },
  ],
};

describe('costsOf', () => {
  test('holds the most that each total buys', () => {
    const { amounts } = costsOf(line, 24);
    const bought = [...amounts].flatMap((amount, cost) => (amount < 0 ? [] : [[cost, amount]]));
    // Two threes are 20, three of them 24: more than the six ones that 24 would buy.
    expect(bought).toEqual([
      [0, 0],
      [4, 1],
      [8, 2],
      [12, 3],
      [16, 4],
      [20, 6],
      [24, 9],
    ]);
  });

  test('leaves out what takes less than the line must have', () => {
    const { amounts } = costsOf(
      { need: 0, offers: [{ id: 'one', holds: 1, price: 4, floor: 2 }] },
      9,
    );
    expect([...amounts].findIndex((amount) => amount >= 0)).toBe(8);
  });
});

describe('packsAt', () => {
  test('names the packs of a total', () => {
    const table = costsOf(line, 40);
    expect(packsAt(table, 24)).toEqual([{ id: 'three', count: 3 }]);
    expect(packsAt(table, 28)).toEqual([
      { id: 'one', count: 1 },
      { id: 'three', count: 3 },
    ]);
  });
});

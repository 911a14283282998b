import { describe, expect, test } from 'vitest';
import { noRoll, rollAnswer } from '../../../extension/engine/cutting/roll-answer.ts';

// Sold by the quarter yard of 228.6 mm off a bolt of 1,000 mm, at 2.00 a unit.
const stock = { id: 'fleece', length: 228.6, width: 1000, price: 200 };
const laid = { stock, area: 400_000, placements: [], unplaced: [] };

describe('rollAnswer', () => {
  test('buys whole selling units and says how few any layout takes', () => {
    const answer = rollAnswer({ ...laid, length: 500, leastLength: 400 });
    expect(answer).toMatchObject({ count: 3, price: 600, bound: 2, priceBound: 400 });
    expect(answer.proven).toBe(false);
    expect(answer.utilisation).toBeCloseTo(0.8, 12);
  });

  test('a length that ends on a unit takes no further one, and then nothing less is possible', () => {
    const answer = rollAnswer({ ...laid, length: 2 * 228.6, leastLength: 400 });
    expect(answer).toMatchObject({ count: 2, bound: 2, proven: true });
  });

  test('is never proven while a part has no place', () => {
    const unplaced = [{ part: 'base', count: 1 }];
    const answer = rollAnswer({ ...laid, length: 228.6, leastLength: 228.6, unplaced });
    expect(answer).toMatchObject({ proven: false, unplaced });
  });

  test('nothing laid on no roll takes nothing', () => {
    const answer = rollAnswer({ ...laid, stock: noRoll, length: 0, leastLength: 0 });
    expect(answer).toMatchObject({ count: 0, price: 0, utilisation: 0, sheets: [] });
  });
});

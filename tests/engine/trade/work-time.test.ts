import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  learnedTime,
  learnedTotal,
  learningModels,
  markupFromMargin,
  priceFromMargin,
  threePointTime,
} from '../../../extension/engine/trade/work-time.ts';

describe('threePointTime', () => {
  test('where the three agree, so does the answer', () => {
    expect(threePointTime(15, 15, 15)).toBe(15);
  });
});

describe('learnedTime and learnedTotal', () => {
  test('the times of all units make the total', () => {
    const rate = fc.integer({ min: 50, max: 100 }).map((percent) => percent / 100);
    const count = fc.integer({ min: 1, max: 40 });
    fc.assert(
      fc.property(rate, count, fc.constantFrom(...learningModels), (share, units, model) => {
        let sum = 0;
        for (let unit = 1; unit <= units; unit++) sum += learnedTime(100, share, { unit, model });
        expect(learnedTotal(100, share, { unit: units, model })).toBeCloseTo(sum, 6);
      }),
    );
  });

  test('doubling the count takes the rate of the unit, or of the average', () => {
    const at = (unit: number) => learnedTime(100, 0.85, { unit, model: 'unit' });
    expect(at(8) / at(4)).toBeCloseTo(0.85, 12);
    const average = (unit: number) => learnedTotal(100, 0.85, { unit, model: 'average' }) / unit;
    expect(average(8) / average(4)).toBeCloseTo(0.85, 12);
  });
});

describe('priceFromMargin and markupFromMargin', () => {
  test('the markup of a margin makes the price of that margin', () => {
    expect(100 * (1 + markupFromMargin(0.3))).toBeCloseTo(priceFromMargin(100, 0.3), 12);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  minorDigits,
  minorPerUnit,
  moneyNumber,
  moneyText,
  roundedMinor,
  splitMoney,
  toMinor,
} from '../../../extension/engine/estimate/money.ts';

describe('toMinor', () => {
  test('dollars become cents and yen stay yen', () => {
    expect(toMinor(14.5, 'USD')).toBe(1450);
    expect(toMinor(1450, 'JPY')).toBe(1450);
    expect(toMinor(1.234, 'KWD')).toBe(1234);
  });

  test('a half goes away from zero, also where binary fractions fall short of it', () => {
    expect(toMinor(1.005, 'USD')).toBe(101);
    expect(toMinor(2.375, 'USD')).toBe(238);
    expect(toMinor(-2.375, 'USD')).toBe(-238);
  });
});

describe('roundedMinor', () => {
  test('never gives minus zero', () => {
    expect(Object.is(roundedMinor(-0.2), 0)).toBe(true);
  });
});

describe('minorDigits', () => {
  test('ISO 4217 gives most currencies hundredths', () => {
    expect([minorDigits('EUR'), minorDigits('JPY'), minorDigits('BHD')]).toEqual([2, 0, 3]);
  });
});

describe('minorPerUnit', () => {
  test('a dollar has a hundred cents', () => {
    expect([minorPerUnit('USD'), minorPerUnit('KRW')]).toEqual([100, 1]);
  });
});

describe('moneyNumber', () => {
  test('keeps its noughts', () => {
    expect(moneyNumber(1450, 'USD')).toBe('14.50');
    expect(moneyNumber(1450, 'JPY')).toBe('1450');
  });
});

describe('moneyText', () => {
  test('names the currency', () => {
    expect(moneyText(123450, 'USD')).toBe('1234.50 USD');
  });
});

describe('splitMoney', () => {
  test('three equal shares of a dollar are 34, 33 and 33 cents', () => {
    expect(splitMoney(100, [1, 1, 1])).toEqual([34, 33, 33]);
  });

  test('where nobody has a share the first bears all', () => {
    expect(splitMoney(100, [0, 0])).toEqual([100, 0]);
    expect(splitMoney(0, [])).toEqual([]);
  });

  test('the parts add up, and none is a cent away from its share', () => {
    const shares = fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1 });
    fc.assert(
      fc.property(fc.nat(1_000_000), shares, (whole, list) => {
        const parts = splitMoney(whole, list);
        expect(parts.reduce((sum, part) => sum + part, 0)).toBe(whole);
        const sum = list.reduce((total, share) => total + share, 0);
        if (sum === 0) return;
        parts.forEach((part, index) => {
          expect(Math.abs(part - (whole * (list[index] ?? 0)) / sum)).toBeLessThan(1 + 1e-6);
        });
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  comparedValues,
  roundedTo,
  sameValue,
} from '../../../extension/engine/units/same-value.ts';

const inch = 25.4;

describe('sameValue', () => {
  test('0.1 in + 0.2 in is 0.3 in', () => {
    expect(0.1 * inch + 0.2 * inch).not.toBe(0.3 * inch);
    expect(sameValue(0.1 * inch + 0.2 * inch, 0.3 * inch)).toBe(true);
  });

  test('what is left of 0.3 − 0.1 − 0.2 is nothing', () => {
    expect(sameValue(0.3 - 0.1 - 0.2, 0)).toBe(true);
  });

  test('a thousandth of a millimetre in ten metres is a difference', () => {
    expect(sameValue(10_000, 10_000.001)).toBe(false);
    expect(sameValue(1, 1.000_001)).toBe(false);
  });
});

describe('comparedValues', () => {
  test('orders what differs and joins what does not', () => {
    expect(comparedValues(0.1 + 0.2, 0.3)).toBe(0);
    expect(comparedValues(1, 2)).toBe(-1);
    expect(comparedValues(2, 1)).toBe(1);
  });
});

describe('roundedTo', () => {
  test('0.3 / 0.1 rounded up is 3', () => {
    expect(roundedTo(0.3 / 0.1, 1, 'up')).toBe(3);
    expect(roundedTo((0.1 + 0.2) / 0.1, 1, 'up')).toBe(3);
    expect(roundedTo(0.7 / 0.1, 1, 'down')).toBe(7);
  });

  test('half a step goes away from nothing', () => {
    expect(roundedTo(2.5, 1)).toBe(3);
    expect(roundedTo(-2.5, 1)).toBe(-3);
    expect(roundedTo(1.005, 0.01)).toBe(1.01);
  });

  test('up and down are towards plus and minus infinity', () => {
    expect(roundedTo(-1.2, 1, 'up')).toBe(-1);
    expect(roundedTo(-1.2, 1, 'down')).toBe(-2);
    expect(Object.is(roundedTo(-0.2, 1, 'up'), 0)).toBe(true);
  });

  test('a rounded value is a whole number of steps, no more than a step away', () => {
    const steps = fc.constantFrom(0.01, 0.1, inch / 16, inch / 8, 1, 5, 0.25);
    fc.assert(
      fc.property(fc.double({ min: -1e4, max: 1e4, noNaN: true }), steps, (x, step) => {
        const [down, near, up] = (['down', 'nearest', 'up'] as const).map((way) =>
          roundedTo(x, step, way),
        ) as [number, number, number];
        // What is nothing beside a step rounds to nothing in every direction.
        const nothing = Math.abs(x) < step * 1e-9;
        expect(nothing || comparedValues(down, x) <= 0).toBe(true);
        expect(nothing || comparedValues(up, x) >= 0).toBe(true);
        expect(near === down || near === up).toBe(true);
        expect(sameValue(near / step, Math.round(near / step))).toBe(true);
        expect(roundedTo(up, step, 'up')).toBe(up);
      }),
      { examples: [[-3e-12, 5]] },
    );
  });

  test('a step of nothing changes nothing', () => {
    expect(roundedTo(1.23, 0)).toBe(1.23);
    expect(roundedTo(Infinity, 1)).toBe(Infinity);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sameList } from '../../../extension/engine/units/same-list.ts';

describe('sameList', () => {
  test('lists are the same where each holds the same thing in the same place', () => {
    const thing = {};
    expect(sameList([thing, 1], [thing, 1])).toBe(true);
    expect(sameList([thing, 1], [1, thing])).toBe(false);
    expect(sameList([thing], [{}])).toBe(false);
  });

  test('a list is no other that only begins like it', () => {
    expect(sameList([1, 2], [1, 2, 3])).toBe(false);
    expect(sameList([1, 2, 3], [1, 2])).toBe(false);
    expect(sameList([], [undefined])).toBe(false);
  });

  test('it says of numbers and texts what comparing them one by one says, however they are kept', () => {
    const list = fc.array(fc.integer({ min: 0, max: 2 }), { maxLength: 4 });
    fc.assert(
      fc.property(list, list, (one, other) => {
        const same = JSON.stringify(one) === JSON.stringify(other);
        expect(sameList(one, other)).toBe(same);
        expect(sameList(Int32Array.from(one), Int32Array.from(other))).toBe(same);
        expect(sameList(one.map(String), other.map(String))).toBe(same);
      }),
    );
  });
});

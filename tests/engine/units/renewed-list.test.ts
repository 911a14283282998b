import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { differingPlaces, renewedList } from '../../../extension/engine/units/renewed-list.ts';

/** Places that differ, found by looking at all of them. */
function looked(before: readonly unknown[], now: readonly unknown[]): number[] {
  return [...now.keys()].filter((place) => before[place] !== now[place]);
}

describe('renewedList', () => {
  test('puts things in some places and leaves the list as it was', () => {
    const list = ['a', 'b', 'c'];
    expect(renewedList(list, new Map([[1, 'x']]))).toEqual(['a', 'x', 'c']);
    expect(list).toEqual(['a', 'b', 'c']);
  });
});

describe('differingPlaces', () => {
  test('of lists of two lengths nothing is told', () => {
    expect(differingPlaces([1], [1, 2])).toBeUndefined();
    expect(differingPlaces([], [])).toEqual([]);
  });

  test('a place that was given the same thing again does not differ', () => {
    const list = ['a', 'b'];
    const next = renewedList(list, new Map([[1, 'b']]));
    expect(differingPlaces(list, next)).toEqual([]);
  });

  test('what became of one list twice is told apart', () => {
    const list = ['a', 'b', 'c'];
    const one = renewedList(list, new Map([[0, 'x']]));
    const two = renewedList(list, new Map([[2, 'y']]));
    expect(differingPlaces(one, two)).toEqual([0, 2]);
    expect(differingPlaces(list, two)).toEqual([2]);
    expect(differingPlaces(two, list)).toEqual([2]);
  });

  test('any two of any lists that came out of each other differ where looking finds it', () => {
    const step = fc.record({
      from: fc.nat(30),
      places: fc.array(fc.tuple(fc.nat(5), fc.nat(3)), { maxLength: 3 }),
    });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), fc.nat(30), fc.nat(30), (steps, one, two) => {
        const lists: (readonly number[])[] = [[0, 0, 0, 0, 0, 0]];
        for (const { from, places } of steps)
          lists.push(renewedList(lists[from % lists.length] ?? [], new Map(places)));
        const [a, b] = [lists[one % lists.length] ?? [], lists[two % lists.length] ?? []];
        expect(differingPlaces(a, b)).toEqual(looked(a, b));
      }),
      { numRuns: 400 },
    );
  });
});

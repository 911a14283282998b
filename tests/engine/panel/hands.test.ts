import { describe, expect, test } from 'vitest';
import { isMirrored, isOnHand, seenOn } from '../../../extension/engine/panel/hands.ts';

describe('isMirrored', () => {
  test('x runs to the rear on the right side of a car, seen from its seats; the left is its mirror', () => {
    expect([isMirrored('drawn'), isMirrored('right'), isMirrored('left')]).toEqual([
      false,
      false,
      true,
    ]);
  });
});

describe('isOnHand', () => {
  test('a part for both hands is on each; a left one is not on the right panel', () => {
    expect(isOnHand('both', 'left')).toBe(true);
    expect(isOnHand('', 'right')).toBe(true);
    expect(isOnHand('left', 'right')).toBe(false);
    expect(isOnHand('left', 'drawn')).toBe(true);
  });
});

describe('seenOn', () => {
  test('the left hand swaps front and rear and leaves heights', () => {
    expect(seenOn('left', [{ x: 3, y: 4 }])).toEqual([{ x: -3, y: 4 }]);
    expect(seenOn('right', [{ x: 3, y: 4 }])).toEqual([{ x: 3, y: 4 }]);
  });
});

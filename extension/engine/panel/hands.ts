import type { Point } from '../geometry/outline.ts';

/** Which panel of a pair is shown: as its rows place it, or the left or the right one of the car. */
export type Hand = 'drawn' | 'left' | 'right';

/**
 * Whether a hand is the mirror image of what the rows say. They measure x to the rear, y up and z into
 * the cabin, which is how the right side of a car is seen from its seats; the left side is its mirror.
 */
export function isMirrored(hand: Hand): boolean {
  return hand === 'left';
}

/** Whether a row made for `hand` (both, left or right; blank for both) is on the panel shown. */
export function isOnHand(hand: string, shown: Hand): boolean {
  return shown === 'drawn' || (hand !== 'left' && hand !== 'right') || hand === shown;
}

/** Points of the panel's frame as they are seen on a hand. */
export function seenOn(hand: Hand, points: readonly Point[]): readonly Point[] {
  return isMirrored(hand) ? points.map(({ x, y }) => ({ x: -x, y })) : points;
}

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { largestFree, type Box } from '../../../extension/engine/shop/free-rectangle.ts';

const sheet = { length: 100, width: 60 };

describe('largestFree', () => {
  test('an empty sheet is free as a whole', () => {
    expect(largestFree(sheet, [], 3)).toEqual({ x: 0, y: 0, length: 100, width: 60 });
  });

  test('beside one part lies the larger of the two rests, a saw cut away', () => {
    const part = { x: 0, y: 0, length: 40, width: 60 };
    expect(largestFree(sheet, [part], 3)).toEqual({ x: 43, y: 0, length: 57, width: 60 });
  });

  test('a full sheet has none', () => {
    expect(largestFree(sheet, [{ x: 0, y: 0, length: 100, width: 60 }], 3)).toBeUndefined();
  });

  const boxes = fc.array(
    fc.record({
      x: fc.nat(9),
      y: fc.nat(9),
      length: fc.integer({ min: 1, max: 5 }),
      width: fc.integer({ min: 1, max: 5 }),
    }),
    { maxLength: 6 },
  );

  test('it touches no part, and no larger one is free (tried square by square)', () => {
    fc.assert(
      fc.property(boxes, (parts) => {
        const small = { length: 10, width: 10 };
        const free = largestFree(small, parts, 0);
        const area = (free?.length ?? 0) * (free?.width ?? 0);
        expect(area).toBe(bestBySquares(small, parts));
        const touched = parts.some(
          (part) =>
            free !== undefined &&
            part.x < free.x + free.length &&
            part.x + part.length > free.x &&
            part.y < free.y + free.width &&
            part.y + part.width > free.y,
        );
        expect(touched).toBe(false);
      }),
      { numRuns: 60 },
    );
  });
});

function isFree(x: number, y: number, parts: readonly Box[]): boolean {
  return !parts.some(
    (part) => x >= part.x && x < part.x + part.length && y >= part.y && y < part.y + part.width,
  );
}

/** Largest free rectangle whose corner is a square, by trying all of them. */
function bestFrom(
  [left, low]: readonly [number, number],
  { length, width }: { readonly length: number; readonly width: number },
  parts: readonly Box[],
): number {
  let best = 0;
  let most = width;
  for (let right = left; right < length; right++) {
    let high = low;
    while (high < most && isFree(right, high, parts)) high += 1;
    most = high;
    best = Math.max(best, (right - left + 1) * (most - low));
  }
  return best;
}

function bestBySquares(
  size: { readonly length: number; readonly width: number },
  parts: readonly Box[],
): number {
  const corners = [...Array(size.length * size.width).keys()].map(
    (index): readonly [number, number] => [index % size.length, Math.floor(index / size.length)],
  );
  return Math.max(...corners.map((corner) => bestFrom(corner, size, parts)));
}

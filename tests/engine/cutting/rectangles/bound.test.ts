import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  plainSheetBound,
  sheetBound,
} from '../../../../extension/engine/cutting/rectangles/bound.ts';
import type { Piece } from '../../../../extension/engine/cutting/rectangles/sheet.ts';

type Size = readonly [length: number, width: number];

function piecesOf(sizes: readonly Size[], turns = false): readonly Piece[] {
  return sizes.map(([length, width], index) => ({
    index,
    ...{ length, width, area: length * width },
    turns: turns && length !== width,
  }));
}

const small = { length: 6, width: 5 };

/** Every place of a piece on the small sheet, in whole millimetres. */
function placesOf({ length, width, turns }: Piece): readonly (readonly number[])[] {
  const ways = turns ? [[length, width] as const, [width, length] as const] : [[length, width]];
  return ways.flatMap(([along = 0, across = 0]) =>
    Array.from({ length: Math.max(0, small.length - along + 1) }, (_, x) =>
      Array.from({ length: Math.max(0, small.width - across + 1) }, (_, y) => [
        ...[x, y],
        ...[x + along, y + across],
      ]),
    ).flat(),
  );
}

/** Whether pieces lie on one sheet, by trying every place of every piece. */
function lieOnOne(pieces: readonly Piece[], laid: readonly (readonly number[])[] = []): boolean {
  const [piece, ...rest] = pieces;
  if (piece === undefined) return true;
  return placesOf(piece).some((place) => {
    const [left = 0, low = 0, right = 0, high = 0] = place;
    const meets = laid.some(
      ([x = 0, y = 0, end = 0, top = 0]) => left < end && right > x && low < top && high > y,
    );
    return !meets && lieOnOne(rest, [...laid, place]);
  });
}

/** The fewest sheets, by trying every way to share the pieces out. */
function fewest(pieces: readonly Piece[], sheets: readonly (readonly Piece[])[] = []): number {
  const [piece, ...rest] = pieces;
  if (piece === undefined) return sheets.length;
  const more = [...sheets.map((_, at) => at), sheets.length].map((at) => {
    const own = [...(sheets[at] ?? []), piece];
    if (!lieOnOne(own)) return Infinity;
    return fewest(
      rest,
      at < sheets.length
        ? sheets.map((one, index) => (index === at ? own : one))
        : [...sheets, own],
    );
  });
  return Math.min(...more);
}

const anySize = fc.tuple(
  fc.integer({ min: 1, max: small.length }),
  fc.integer({ min: 1, max: small.width }),
);

/** A sheet cut apart at random: the pieces of it lie on one sheet. */
function apart(size: Size, shares: readonly number[]): readonly Size[] {
  const [share = 0, ...rest] = shares;
  const [length, width] = size;
  const long = length > width;
  const at = Math.round((long ? length : width) * share);
  if (shares.length === 0 || at <= 0 || at >= Math.max(length, width)) return [size];
  const half = Math.floor(rest.length / 2);
  const parts: readonly [Size, Size] = long
    ? [
        [at, width],
        [length - at, width],
      ]
    : [
        [length, at],
        [length, width - at],
      ];
  return [...apart(parts[0], rest.slice(0, half)), ...apart(parts[1], rest.slice(half))];
}

const shares = fc.array(fc.double({ min: 0.15, max: 0.85, noNaN: true }), {
  minLength: 1,
  maxLength: 15,
});

describe('sheetBound', () => {
  test('up to five pieces: never more than the fewest sheets that trying everything finds', () => {
    fc.assert(
      fc.property(
        fc.array(anySize, { minLength: 1, maxLength: 5 }),
        fc.boolean(),
        (sizes, turns) => {
          const pieces = piecesOf(sizes, turns);
          expect(sheetBound(pieces, small)).toBeLessThanOrEqual(fewest(pieces));
        },
      ),
      { numRuns: 120 },
    );
  });

  test('pieces that sheets were cut into need no more than these sheets', () => {
    fc.assert(
      fc.property(fc.array(shares, { minLength: 1, maxLength: 6 }), fc.boolean(), (cuts, turns) => {
        const sheet = { length: 100, width: 70 };
        const sizes = cuts.flatMap((own) => apart([sheet.length, sheet.width], own));
        expect(sheetBound(piecesOf(sizes, turns), sheet)).toBeLessThanOrEqual(cuts.length);
      }),
      { numRuns: 100 },
    );
  });

  test('what is always lost beside a piece is told: three of 61 by 50 and one of 45 by 90 take three sheets', () => {
    // No 61 lies beside or above 45 by 90; by area, 13,200 mm², two sheets of 10,000 would do.
    const sheet = { length: 100, width: 100 };
    const pieces = piecesOf([
      [61, 50],
      [61, 50],
      [61, 50],
      [45, 90],
    ]);
    expect(sheetBound(pieces, sheet)).toBe(3);
    expect(plainSheetBound(pieces, sheet)).toBe(2);
  });
});

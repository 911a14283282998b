import { describe, expect, test } from 'vitest';
import { grownWays, waysOf } from '../../../../extension/engine/cutting/rectangles/grown.ts';
import type { Piece } from '../../../../extension/engine/cutting/rectangles/sheet.ts';

const sheet = { length: 100, width: 60 };

function pieces(...sizes: readonly (readonly [number, number, boolean?])[]): readonly Piece[] {
  return sizes.map(([length, width, turns = false], index) => ({
    index,
    ...{ length, width, area: length * width, turns },
  }));
}

describe('grownWays', () => {
  test('a piece beside which no other fits takes the whole length', () => {
    const ways = grownWays(pieces([70, 60], [40, 60]), sheet);
    expect(ways).toEqual([[{ along: 100, across: 60 }], [{ along: 100, across: 60 }]]);
  });

  test('two pieces of 40 share a sheet of 100: one grows to 60, the other then stays', () => {
    const ways = grownWays(pieces([40, 60], [40, 60]), sheet);
    expect(ways.map(([way]) => way?.along)).toEqual([60, 40]);
  });

  test('where the sizes of others add up to the room, nothing grows', () => {
    const ways = grownWays(pieces([70, 60], [20, 60], [10, 60]), sheet);
    expect(ways.map(([way]) => way?.along)).toEqual([70, 20, 10]);
  });

  test('another piece counts by both of its sides where it may be turned', () => {
    const [large] = grownWays(pieces([50, 60], [30, 50, true]), sheet);
    expect(large).toEqual([{ along: 50, across: 60 }]);
  });
});

describe('waysOf', () => {
  test('a piece lies in none, one or two ways, as sheet and grain allow', () => {
    const ways = pieces([110, 10], [110, 10, true], [80, 50], [50, 40, true], [80, 50, true]).map(
      (piece) => waysOf(piece, sheet).length,
    );
    expect(ways).toEqual([0, 0, 1, 2, 1]);
  });
});

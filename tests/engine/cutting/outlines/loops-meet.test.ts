import { describe, expect, test } from 'vitest';
import { loopsMeet } from '../../../../extension/engine/cutting/outlines/loops-meet.ts';
import type { Loops } from '../../../../extension/engine/cutting/outlines/shape-rows.ts';

type Loop = Loops['outer'];

function box(x: number, y: number, length: number, width = length): Loop {
  return [
    [x, y],
    [x + length, y],
    [x + length, y + width],
    [x, y + width],
  ];
}

function part(outer: Loop, ...holes: readonly Loop[]): Loops {
  return { outer, holes };
}

const frame = part(box(0, 0, 100), box(20, 20, 60));

describe('loopsMeet', () => {
  test.each([
    ['side by side', part(box(110, 0, 50)), false],
    ['one over the edge of the other', part(box(90, 0, 50)), true],
    ['across the whole frame', part(box(-10, 40, 120, 20)), true],
    ['in the opening', part(box(30, 30, 40)), false],
    ['on the wood of the frame', part(box(2, 2, 10)), true],
    ['a ring around the frame', part(box(-50, -50, 200), box(-5, -5, 110)), false],
  ])('%s', (_, other, meets) => {
    expect([loopsMeet(frame, other), loopsMeet(other, frame)]).toEqual([meets, meets]);
  });
});

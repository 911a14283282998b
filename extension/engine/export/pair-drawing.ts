import type { Placement } from '../cutting/instance.ts';
import { turnedLoops } from '../cutting/outlines/forms.ts';
import type { TaperedPair } from '../cutting/strips/tapered-pair.ts';
import type { DrawnRow, Mark } from '../drawing/drawing.ts';
import type { Point } from '../geometry/outline.ts';

/** What is told of a blank that is two strips. */
export function pairWords({ turned }: TaperedPair): string {
  return turned
    ? 'two like strips head to tail, cut apart along the curve: one is the other turned end for end'
    : 'two strips head to tail, cut apart along the curve: one with its seam at the high side, the other with its seam at the low side';
}

/** Where the words of a piece stand: over the middle of its hump, and how high that is; mm. */
interface Room {
  readonly middle: readonly [number, number];
  readonly high: number;
  readonly long: number;
}

// The strip with its seam at the low side is highest in its middle; the other in its middle is lowest.
// Where both are alike, each is highest somewhere else.
function roomsOf({ length, width, turned, highSeam, lowSeam }: TaperedPair): readonly [Room, Room] {
  const highest = highSeam.reduce((best, at) => (at[1] > best[1] ? at : best), [0, 0])[0];
  const middle = turned ? Math.min(0.75, Math.max(0.25, highest / length)) * length : length / 2;
  const about = (loop: TaperedPair['highSeam'], x: number): readonly number[] =>
    loop.filter((at) => Math.abs(at[0] - x) < 0.25 * length).map(([, y]) => y);
  const inside = (ys: readonly number[], edge: number): readonly number[] =>
    ys.filter((y) => Math.abs(y - edge) > 1e-9);
  const top = Math.min(...inside(about(highSeam, middle), 0));
  const foot = Math.max(...inside(about(lowSeam, length - middle), width));
  const room = (x: number, from: number, to: number): Room => ({
    middle: [x, (from + to) / 2],
    high: to - from,
    long: length / 2,
  });
  return [room(middle, 0, top), room(length - middle, foot, width)];
}

/**
 * A blank that is two tapered strips, where it lies: its rectangle, both strips with the cut between
 * them, and at which side of its ring each has its seam.
 */
export function pairMarks(
  one: Placement,
  pair: TaperedPair,
  { name, row }: { readonly name: string; readonly row: DrawnRow | undefined },
): readonly Mark[] {
  const { length, width, highSeam, lowSeam } = pair;
  const blank = [
    [0, 0],
    [length, 0],
    [length, width],
    [0, width],
  ] as const;
  const rooms = roomsOf(pair);
  const { outer, holes } = turnedLoops(
    { outer: blank, holes: [highSeam, lowSeam, rooms.map(({ middle }) => middle)] },
    one.rotation,
  );
  const placed = (loop: readonly (readonly [number, number])[]): readonly Point[] =>
    loop.map(([x, y]) => ({ x: x + one.x, y: y + one.y }));
  const [high = [], low = [], middles = []] = holes;
  const at = placed(middles);
  const owned = row === undefined ? {} : { row };
  const upright = one.rotation % 180 !== 0;
  const words = pair.turned
    ? ([name, name] as const)
    : ([`${name}, seam at the high side`, `${name}, seam at the low side`] as const);
  const loop = (points: readonly Point[], filled: boolean): Mark => ({
    ...{ kind: 'line', role: 'outline', points, closed: true, filled },
    ...owned,
  });
  return [
    loop(placed(outer), false),
    loop(placed(high), true),
    loop(placed(low), true),
    ...rooms.flatMap((room, index): readonly Mark[] => {
      const middle = at[index];
      const text = words[index];
      if (middle === undefined || text === undefined) return [];
      const height = Math.max(3, Math.min(14, 0.5 * room.high, (1.2 * room.long) / text.length));
      const turn = upright ? { angle: Math.PI / 2 } : {};
      return [
        {
          ...{ kind: 'text', role: 'note', at: middle, text, height, anchor: 'middle' },
          ...turn,
          ...owned,
        },
      ];
    }),
  ];
}

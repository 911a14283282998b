import type { Placement } from '../cutting/instance.ts';
import { turnedLoops } from '../cutting/outlines/forms.ts';
import type { TaperedPair } from '../cutting/strips/tapered-pair.ts';
import type { DrawnRow, Mark } from '../drawing/drawing.ts';
import type { Point } from '../geometry/outline.ts';

/** What is told of a blank that is two strips. */
export const pairWords =
  'two strips head to tail, cut apart along the curve: one with its seam at the high side, the other with its seam at the low side';

/** Where the words of a piece stand: over the middle of its hump, and how high that is; mm. */
interface Room {
  readonly middle: readonly [number, number];
  readonly high: number;
  readonly long: number;
}

// The strip with its seam at the low side is highest in its middle; the other in its middle is lowest.
function roomsOf({ length, width, highSeam, lowSeam }: TaperedPair): readonly [Room, Room] {
  const inMiddle = (loop: TaperedPair['highSeam']): readonly number[] =>
    loop.filter(([x]) => x > 0.25 * length && x < 0.75 * length).map(([, y]) => y);
  const top = Math.min(...inMiddle(highSeam));
  const foot = Math.max(...inMiddle(lowSeam));
  const room = (from: number, to: number): Room => ({
    middle: [length / 2, (from + to) / 2],
    high: to - from,
    long: length / 2,
  });
  return [room(0, top), room(foot, width)];
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
  const words = [`${name}, seam at the high side`, `${name}, seam at the low side`] as const;
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

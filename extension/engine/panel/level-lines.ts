import type { SpacePoint } from '../skin/ring-plan.ts';

/** A surface as triangles: x, y and z of each node in turn, three nodes a triangle. */
export interface Surface {
  readonly points: readonly number[];
  readonly triangles: readonly number[];
}

/** An edge of the mesh that a line crosses, named by its two nodes. */
type Crossing = readonly [low: number, high: number];

function crossings(
  corners: readonly [number, number, number],
  above: (node: number) => boolean,
): readonly Crossing[] {
  return corners.flatMap((from, index): readonly Crossing[] => {
    const to = corners[(index + 1) % 3] ?? from;
    if (above(from) === above(to)) return [];
    return [from < to ? [from, to] : [to, from]];
  });
}

/** Where a field reaches a level between two nodes. */
function pointOn(
  [low, high]: Crossing,
  { points }: Surface,
  field: (node: number) => number,
  level: number,
): SpacePoint {
  const [from, to] = [field(low), field(high)];
  const share = to === from ? 0.5 : (level - from) / (to - from);
  const at = (axis: number): number => {
    const [one, other] = [points[3 * low + axis] ?? 0, points[3 * high + axis] ?? 0];
    return one + share * (other - one);
  };
  return { x: at(0), y: at(1), z: at(2) };
}

/** Pieces of lines by the names of their ends; a piece that is taken is gone from both. */
interface Pieces {
  readonly all: readonly (readonly [string, string])[];
  readonly at: ReadonlyMap<string, Set<number>>;
}

/** The other end of a piece that goes on from here, which is taken; undefined where none does. */
function goneOn(from: string, { all, at }: Pieces): string | undefined {
  const [next] = at.get(from) ?? [];
  const piece = next === undefined ? undefined : all[next];
  if (next === undefined || piece === undefined) return undefined;
  for (const end of piece) at.get(end)?.delete(next);
  return piece[0] === from ? piece[1] : piece[0];
}

/** A piece with all that go on from its two ends. */
function chained([one, other]: readonly [string, string], pieces: Pieces): readonly string[] {
  const chain = [one, other];
  for (let end = goneOn(other, pieces); end !== undefined; end = goneOn(end, pieces))
    chain.push(end);
  for (let end = goneOn(one, pieces); end !== undefined; end = goneOn(end, pieces))
    chain.unshift(end);
  return chain;
}

/**
 * Lines of a surface on which a field has a value: contours where it is the height, a section where it
 * is the distance from a plane. A line that closes ends where it began.
 */
export function levelLines(
  surface: Surface,
  field: (node: number) => number,
  level: number,
): readonly (readonly SpacePoint[])[] {
  const { triangles } = surface;
  const places = new Map<string, Crossing>();
  const pieces: (readonly [string, string])[] = [];
  const ends = new Map<string, Set<number>>();
  for (let at = 0; at + 2 < triangles.length; at += 3) {
    const [a = 0, b = 0, c = 0] = [triangles[at], triangles[at + 1], triangles[at + 2]];
    const found = crossings([a, b, c], (node) => field(node) > level);
    const [one, other] = found.map((crossing) => crossing.join());
    if (one === undefined || other === undefined) continue;
    found.forEach((crossing) => places.set(crossing.join(), crossing));
    for (const end of [one, other]) {
      const there = ends.get(end) ?? new Set();
      ends.set(end, there.add(pieces.length));
    }
    pieces.push([one, other]);
  }
  const lines: (readonly SpacePoint[])[] = [];
  pieces.forEach((piece, index) => {
    if (ends.get(piece[0])?.has(index) !== true) return;
    for (const end of piece) ends.get(end)?.delete(index);
    const line = chained(piece, { all: pieces, at: ends }).flatMap((key) => {
      const crossing = places.get(key);
      return crossing === undefined ? [] : [pointOn(crossing, surface, field, level)];
    });
    lines.push(line);
  });
  return lines;
}

import type { CutAnswer, OutlinesInstance, Part } from '../../extension/engine/cutting/instance.ts';

type Corner = readonly [number, number];
type Loop = readonly Corner[];

interface Lying {
  readonly part: Part;
  readonly loops: readonly Loop[];
  readonly outer: Loop;
  readonly box: readonly [number, number, number, number];
}

function turned(loop: Loop, degrees: number): Loop {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return loop.map(([x, y]) => [x * cos - y * sin, x * sin + y * cos]);
}

/** Where the drawn outlines lie: turned, then moved so that their box stands where it is told. */
function lyingParts(
  instance: OutlinesInstance,
  answer: CutAnswer,
  index: number,
): readonly Lying[] {
  return answer.placements
    .filter((one) => one.index === index)
    .map((one) => {
      const part = instance.parts.find(({ id }) => id === one.part);
      if (part === undefined) throw new Error(`no part ${one.part}`);
      const { length, width } = part;
      const points = part.points ?? [
        [0, 0],
        [length, 0],
        [length, width],
        [0, width],
      ];
      const outer = turned(points, one.rotation);
      const left = Math.min(...outer.map(([x]) => x));
      const low = Math.min(...outer.map(([, y]) => y));
      const move = (loop: Loop): Loop => loop.map(([x, y]) => [x - left + one.x, y - low + one.y]);
      const moved = move(outer);
      const holes = (part.holes ?? []).map((hole) => move(turned(hole, one.rotation)));
      const xs = moved.map(([x]) => x);
      const ys = moved.map(([, y]) => y);
      return {
        part,
        outer: moved,
        loops: [moved, ...holes],
        box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)],
      };
    });
}

function edges(loop: Loop): readonly (readonly [Corner, Corner])[] {
  return loop.map((from, at) => [from, loop[(at + 1) % loop.length] ?? from]);
}

function toSegment([px, py]: Corner, [[ax, ay], [bx, by]]: readonly [Corner, Corner]): number {
  const [dx, dy] = [bx - ax, by - ay];
  const along = dx * dx + dy * dy;
  const t = along === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / along));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
}

function side([ax, ay]: Corner, [bx, by]: Corner, [px, py]: Corner): number {
  return (bx - ax) * (py - ay) - (by - ay) * (px - ax);
}

function apart(a: Loop, b: Loop): number {
  let least = Infinity;
  for (const one of edges(a)) {
    for (const other of edges(b)) {
      const crosses =
        side(one[0], one[1], other[0]) * side(one[0], one[1], other[1]) < 0 &&
        side(other[0], other[1], one[0]) * side(other[0], other[1], one[1]) < 0;
      if (crosses) return 0;
      least = Math.min(
        least,
        toSegment(one[0], other),
        toSegment(one[1], other),
        toSegment(other[0], one),
        toSegment(other[1], one),
      );
    }
  }
  return least;
}

function contains(loops: readonly Loop[], [px, py]: Corner): boolean {
  let inside = false;
  for (const loop of loops) {
    for (const [[ax, ay], [bx, by]] of edges(loop)) {
      if (ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax)) inside = !inside;
    }
  }
  return inside;
}

/**
 * Faults of a layout of outlines, found from the drawn outlines alone: over the edge, nearer than the
 * kerf (but for `slack` mm), one on another's material, parts that are missing.
 */
export function outlineFaults(
  instance: OutlinesInstance,
  answer: CutAnswer,
  slack = 0.02,
): readonly string[] {
  const { kerf = 0, trim = 0 } = instance;
  const faults: string[] = [];
  answer.sheets.forEach(({ stock }, index) => {
    const sheet = instance.stocks.find(({ id }) => id === stock);
    const lying = lyingParts(instance, answer, index);
    lying.forEach((one, at) => {
      const [left, low, right, high] = one.box;
      const over =
        left < trim - slack ||
        low < trim - slack ||
        right > (sheet?.length ?? 0) - trim + slack ||
        high > (sheet?.width ?? 0) - trim + slack;
      if (over) faults.push(`${one.part.id}: over the edge of sheet ${index}`);
      for (const other of lying.slice(at + 1)) faults.push(...pairFaults(one, other, kerf - slack));
    });
  });
  for (const { id, count } of instance.parts) {
    const laid = answer.placements.filter(({ part }) => part === id).length;
    const missing = answer.unplaced.find(({ part }) => part === id)?.count ?? 0;
    if (laid + missing !== count) faults.push(`${id}: ${laid} laid`);
  }
  return faults;
}

function pairFaults(one: Lying, other: Lying, kerf: number): readonly string[] {
  const [l1, b1, r1, t1] = one.box;
  const [l2, b2, r2, t2] = other.box;
  if (l1 > r2 + kerf || l2 > r1 + kerf || b1 > t2 + kerf || b2 > t1 + kerf) return [];
  const least = Math.min(...one.loops.flatMap((a) => other.loops.map((b) => apart(a, b))));
  const start = (loop: Loop): Corner => loop[0] ?? [0, 0];
  // A corner that touches an edge lies on neither side of it.
  const within = (loops: readonly Loop[], loop: Loop): boolean =>
    contains(loops, start(loop)) &&
    loops.every((edge) => edges(edge).every((one) => toSegment(start(loop), one) > 0.02));
  const on = within(one.loops, other.outer) || within(other.loops, one.outer);
  const names = `${one.part.id} and ${other.part.id}`;
  if (on) return [`${names}: one on the other`];
  return least < kerf ? [`${names}: ${least.toFixed(3)} mm apart`] : [];
}

import type { Loops } from './shape-rows.ts';

/** A part where it lies exactly: its loops moved by x and y, mm. */
export interface Lying {
  readonly loops: Loops;
  readonly length: number;
  readonly width: number;
  x: number;
  y: number;
}

interface Edge {
  /** Along the way it slides, at the two ends. */
  readonly a: number;
  readonly b: number;
  /** Across it; a stands at low, b at high. */
  readonly low: number;
  readonly high: number;
}

// Edges that run along the slide stop nothing.
const flat = 1e-9;
// What touches within rounding has no room between.
const touching = 1e-7;

function edgesOf({ outer, holes }: Loops, along: 'x' | 'y'): readonly Edge[] {
  const [u, v] = along === 'x' ? ([0, 1] as const) : ([1, 0] as const);
  return [outer, ...holes].flatMap((loop) =>
    loop.flatMap((from, index) => {
      const to = loop[(index + 1) % loop.length] ?? from;
      const [p, q] = from[v] < to[v] ? [from, to] : [to, from];
      return q[v] - p[v] < flat ? [] : [{ a: p[u], b: q[u], low: p[v], high: q[v] }];
    }),
  );
}

interface Sliding {
  readonly edges: { readonly x: readonly Edge[]; readonly y: readonly Edge[] };
  readonly part: Lying;
}

/**
 * How far a part can move against an axis before it meets another: the least gap between two of their
 * edges, which lies at an end of what their spans across share.
 */
function gapBefore(part: Sliding, other: Sliding, along: 'x' | 'y'): number {
  const [across, side] = along === 'x' ? (['y', 'width'] as const) : (['x', 'length'] as const);
  if (
    other.part[across] >= part.part[across] + part.part[side] ||
    other.part[across] + other.part[side] <= part.part[across]
  ) {
    return Infinity;
  }
  const shift = part.part[along] - other.part[along];
  const lift = part.part[across] - other.part[across];
  let least = Infinity;
  for (const own of part.edges[along]) {
    for (const stop of other.edges[along]) {
      const low = Math.max(own.low + lift, stop.low);
      const high = Math.min(own.high + lift, stop.high);
      if (high - low < touching) continue;
      least = Math.min(least, gapAt(own, stop, low, { shift, lift }));
      least = Math.min(least, gapAt(own, stop, high, { shift, lift }));
    }
  }
  return Math.max(0, least);
}

// Edges that lie behind are no stop.
function gapAt(
  own: Edge,
  stop: Edge,
  level: number,
  { shift, lift }: { readonly shift: number; readonly lift: number },
): number {
  const gap = at(own, level - lift) + shift - at(stop, level);
  return gap > -touching ? gap : Infinity;
}

function at({ a, b, low, high }: Edge, level: number): number {
  return a + ((b - a) * (level - low)) / (high - low);
}

// Sweeps after which hardly anything moves any more.
const mostSweeps = 30;

/**
 * Slides parts towards the start of the sheet and towards its lower edge, in turn, as far as their
 * exact outlines let them: what the raster left between them is taken out.
 */
export function slideTogether(parts: readonly Lying[], origin: { x: number; y: number }): void {
  const sliding = parts.map((part) => ({
    part,
    edges: { x: edgesOf(part.loops, 'x'), y: edgesOf(part.loops, 'y') },
  }));
  for (let sweep = 0; sweep < mostSweeps; sweep++) {
    const moved = slideOnce(sliding, 'x', origin.x) + slideOnce(sliding, 'y', origin.y);
    if (moved < 1e-3) return;
  }
}

function slideOnce(parts: readonly Sliding[], along: 'x' | 'y', start: number): number {
  let moved = 0;
  const order = [...parts].sort((a, b) => a.part[along] - b.part[along]);
  for (const one of order) {
    let room = one.part[along] - start;
    for (const other of parts) {
      if (other === one || room <= touching) continue;
      room = Math.min(room, gapBefore(one, other, along));
    }
    if (room <= touching) continue;
    one.part[along] -= room;
    moved += room;
  }
  return moved;
}

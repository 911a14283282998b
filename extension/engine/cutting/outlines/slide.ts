import { signedArea } from '../../geometry/outline.ts';
import type { Corner, Loops } from './shape-rows.ts';

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

/**
 * Edges of a part by the side its material lies on, for slides along an axis: those it goes ahead with
 * (towards the start) and those that stop what comes from behind.
 */
interface Edges {
  readonly ahead: readonly Edge[];
  readonly behind: readonly Edge[];
}

function edgesOf({ outer, holes }: Loops, along: 'x' | 'y'): Edges {
  const [u, v] = along === 'x' ? ([0, 1] as const) : ([1, 0] as const);
  const ahead: Edge[] = [];
  const behind: Edge[] = [];
  [outer, ...holes].forEach((loop, order) => {
    // Run so that the material lies on the left: an edge that falls (for x) has it after the edge.
    const turns = windsLeft(loop) === (order === 0);
    loop.forEach((from, index) => {
      const to = loop[(index + 1) % loop.length] ?? from;
      const rises = from[v] < to[v];
      const [p, q] = rises ? [from, to] : [to, from];
      if (q[v] - p[v] < flat) return;
      const isBehind = (rises === turns) === (along === 'x');
      (isBehind ? behind : ahead).push({ a: p[u], b: q[u], low: p[v], high: q[v] });
    });
  });
  return { ahead, behind };
}

function windsLeft(loop: readonly Corner[]): boolean {
  return signedArea(loop.map(([x, y]) => ({ x, y }))) > 0;
}

interface Sliding {
  readonly edges: { readonly x: Edges; readonly y: Edges };
  readonly part: Lying;
}

/**
 * How far a part can move against an axis before it meets another: the least gap between two of their
 * edges, which lies at an end of what their spans across share.
 */
function gapBefore(part: Sliding, other: Sliding, along: 'x' | 'y'): number {
  const [across, side, size] =
    along === 'x' ? (['y', 'width', 'length'] as const) : (['x', 'length', 'width'] as const);
  if (
    other.part[across] >= part.part[across] + part.part[side] ||
    other.part[across] + other.part[side] <= part.part[across] ||
    // Wholly behind it.
    other.part[along] >= part.part[along] + part.part[size]
  ) {
    return Infinity;
  }
  const shift = part.part[along] - other.part[along];
  const lift = part.part[across] - other.part[across];
  let least = Infinity;
  for (const own of part.edges[along].ahead) {
    for (const stop of other.edges[along].behind) {
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

import type { Point } from '../geometry/outline.ts';

/** Pieces of all loops as x, y of both ends. */
export function piecesOf(loops: readonly (readonly Point[])[]): Float64Array {
  const pieces: number[] = [];
  for (const loop of loops) {
    loop.forEach((from, index) => {
      const to = loop[(index + 1) % loop.length] ?? from;
      pieces.push(from.x, from.y, to.x, to.y);
    });
  }
  return Float64Array.from(pieces);
}

/** Square of the distance from a point to the nearest piece. */
export function nearestSquared(x: number, y: number, pieces: Float64Array): number {
  let nearest = Infinity;
  for (let at = 0; at < pieces.length; at += 4) {
    const ax = pieces[at] ?? 0;
    const ay = pieces[at + 1] ?? 0;
    const dx = (pieces[at + 2] ?? 0) - ax;
    const dy = (pieces[at + 3] ?? 0) - ay;
    const along = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1);
    const share = Math.min(1, Math.max(0, along));
    const ox = x - ax - share * dx;
    const oy = y - ay - share * dy;
    nearest = Math.min(nearest, ox * ox + oy * oy);
  }
  return nearest;
}

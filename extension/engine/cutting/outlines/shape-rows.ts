/** A corner of an outline, in cells of the raster. */
export type Corner = readonly [x: number, y: number];

/** An outline with its openings; loops run either way. */
export interface Loops {
  readonly outer: readonly Corner[];
  readonly holes: readonly (readonly Corner[])[];
}

// A corner on a line between columns touches both; what touches by less is rounding.
const touch = 1e-6;

type Spans = [number, number][];

/** Gives each row that an edge touches the span of x it covers there. */
function addEdge([ax, ay]: Corner, [bx, by]: Corner, rows: readonly Spans[]): void {
  const top = Math.max(ay, by);
  const bottom = Math.min(ay, by);
  // One row more on either side, where rounding could decide.
  const last = Math.min(rows.length - 1, Math.floor(top) + 1);
  for (let row = Math.max(0, Math.floor(bottom) - 1); row <= last; row++) {
    const low = row + touch;
    const high = row + 1 - touch;
    if (top < low || bottom > high) continue;
    if (ay === by) {
      rows[row]?.push([Math.min(ax, bx), Math.max(ax, bx)]);
      continue;
    }
    const from = Math.max(0, Math.min(1, (Math.max(low, bottom) - ay) / (by - ay)));
    const to = Math.max(0, Math.min(1, (Math.min(high, top) - ay) / (by - ay)));
    const x1 = ax + (bx - ax) * from;
    const x2 = ax + (bx - ax) * to;
    rows[row]?.push([Math.min(x1, x2), Math.max(x1, x2)]);
  }
}

/** Gives each row whose middle an edge crosses the x of the crossing. */
function addCrossings([ax, ay]: Corner, [bx, by]: Corner, rows: readonly number[][]): void {
  const last = Math.min(rows.length - 1, Math.floor(Math.max(ay, by)) + 1);
  for (let row = Math.max(0, Math.floor(Math.min(ay, by)) - 1); row <= last; row++) {
    const y = row + 0.5;
    if (ay > y !== by > y) rows[row]?.push(ax + ((y - ay) / (by - ay)) * (bx - ax));
  }
}

/** Whole cells that a size takes. */
export function fineCells(size: number): number {
  return Math.max(1, Math.ceil(size - touch));
}

/**
 * A part whose box begins at 0, 0 as rows of spans on a fine grid: for each row from 0, starts and ends
 * (first and last column) in turn, rising. Every square that the part touches is in a span, so that
 * parts whose rows do not touch do not touch either. Sizes in whole fine cells.
 */
export function shapeRows(
  loops: Loops,
  { width, height }: { readonly width: number; readonly height: number },
): readonly (readonly number[])[] {
  const edges = Array.from({ length: height }, (): Spans => []);
  const crossings = Array.from({ length: height }, (): number[] => []);
  for (const loop of [loops.outer, ...loops.holes]) {
    loop.forEach((from, at) => {
      const to = loop[(at + 1) % loop.length] ?? from;
      addEdge(from, to, edges);
      addCrossings(from, to, crossings);
    });
  }
  return edges.map((spans, row) => {
    // Inside by the even-odd rule.
    const xs = (crossings[row] ?? []).sort((a, b) => a - b);
    for (let at = 0; at + 1 < xs.length; at += 2) spans.push([xs[at] ?? 0, xs[at + 1] ?? 0]);
    return joinedSpans(spans, width);
  });
}

function joinedSpans(spans: Spans, width: number): number[] {
  for (const span of spans) {
    const start = Math.max(0, Math.min(width - 1, Math.floor(span[0] + touch)));
    const end = Math.max(0, Math.min(width - 1, Math.ceil(span[1] - touch) - 1));
    span[0] = start;
    span[1] = Math.max(start, end);
  }
  spans.sort((a, b) => a[0] - b[0]);
  const joined: number[] = [];
  for (const [a, b] of spans) {
    const last = joined[joined.length - 1];
    if (last !== undefined && a <= last + 1) joined[joined.length - 1] = Math.max(last, b);
    else joined.push(a, b);
  }
  return joined;
}

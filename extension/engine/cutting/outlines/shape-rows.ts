/** A corner of an outline, in cells of the raster. */
export type Corner = readonly [x: number, y: number];

/** An outline with its openings; loops run either way. */
export interface Loops {
  readonly outer: readonly Corner[];
  readonly holes: readonly (readonly Corner[])[];
}

/**
 * A part as rows of spans on a fine grid: every square that the part touches is in a span, so that
 * parts whose rows do not touch do not touch either.
 */
export interface ShapeRows {
  /** For each fine row from 0: starts and ends (first and last column) in turn, rising. */
  readonly rows: readonly (readonly number[])[];
  readonly width: number;
  readonly height: number;
}

/** Span of x that a loop's edges cover between two heights, for each edge, widened to whole columns. */
function edgeSpans(loop: readonly Corner[], low: number, high: number): [number, number][] {
  const spans: [number, number][] = [];
  for (let at = 0; at < loop.length; at++) {
    const [ax, ay] = loop[at] ?? [0, 0];
    const [bx, by] = loop[(at + 1) % loop.length] ?? [0, 0];
    const top = Math.max(ay, by);
    const bottom = Math.min(ay, by);
    if (top < low || bottom > high) continue;
    if (ay === by) {
      spans.push([Math.min(ax, bx), Math.max(ax, bx)]);
      continue;
    }
    const from = Math.max(0, Math.min(1, (Math.max(low, bottom) - ay) / (by - ay)));
    const to = Math.max(0, Math.min(1, (Math.min(high, top) - ay) / (by - ay)));
    const x1 = ax + (bx - ax) * from;
    const x2 = ax + (bx - ax) * to;
    spans.push([Math.min(x1, x2), Math.max(x1, x2)]);
  }
  return spans;
}

/** Where a line at one height runs inside the loops, by the even-odd rule. */
function insideSpans({ outer, holes }: Loops, y: number): [number, number][] {
  const crossings: number[] = [];
  for (const loop of [outer, ...holes]) {
    for (let at = 0; at < loop.length; at++) {
      const [ax, ay] = loop[at] ?? [0, 0];
      const [bx, by] = loop[(at + 1) % loop.length] ?? [0, 0];
      if (ay > y === by > y) continue;
      crossings.push(ax + ((y - ay) / (by - ay)) * (bx - ax));
    }
  }
  crossings.sort((a, b) => a - b);
  const spans: [number, number][] = [];
  for (let at = 0; at + 1 < crossings.length; at += 2) {
    spans.push([crossings[at] ?? 0, crossings[at + 1] ?? 0]);
  }
  return spans;
}

// A corner on a line between columns touches both; what touches by less is rounding.
const touch = 1e-6;

/** Raster of a part whose box begins at 0, 0; sizes in fine cells. */
export function shapeRows(loops: Loops, size: { width: number; height: number }): ShapeRows {
  const width = Math.max(1, Math.ceil(size.width - touch));
  const height = Math.max(1, Math.ceil(size.height - touch));
  const rows: number[][] = [];
  for (let row = 0; row < height; row++) {
    const spans = [
      ...insideSpans(loops, row + 0.5),
      ...[loops.outer, ...loops.holes].flatMap((loop) =>
        edgeSpans(loop, row + touch, row + 1 - touch),
      ),
    ];
    rows.push(joinedSpans(spans, width));
  }
  return { rows, width, height };
}

function joinedSpans(spans: readonly [number, number][], width: number): number[] {
  const whole = spans
    .map(([a, b]): [number, number] => [
      Math.max(0, Math.min(width - 1, Math.floor(a + touch))),
      Math.max(0, Math.min(width - 1, Math.ceil(b - touch) - 1)),
    ])
    .map(([a, b]): [number, number] => [a, Math.max(a, b)])
    .sort((a, b) => a[0] - b[0]);
  const joined: number[] = [];
  for (const [a, b] of whole) {
    const last = joined[joined.length - 1];
    if (last !== undefined && a <= last + 1) joined[joined.length - 1] = Math.max(last, b);
    else joined.push(a, b);
  }
  return joined;
}

import { depthAt, intAt } from './cells.ts';
import { finePitch, type Form } from './forms.ts';

/**
 * Where one form may not lie from another: for each step of cells from the first's corner to the
 * second's, how deep they overlap (0: not at all), in fifths of a cell; 1 for any overlap until it is
 * deepened.
 */
export interface NoFit {
  readonly minX: number;
  readonly minY: number;
  readonly nx: number;
  readonly ny: number;
  /** By column: the step (dx, dy) stands at (dx − minX) × ny + dy − minY. */
  readonly depth: Uint16Array;
}

/** Maps of all pairs of forms, each made when it is asked for first. */
export interface NoFits {
  /** Tells only whether they overlap: enough to fill. */
  readonly blocked: (a: number, b: number) => NoFit;
  readonly deep: (a: number, b: number) => NoFit;
}

function blockedSteps(a: Form, b: Form): NoFit {
  const minX = -Math.floor((b.fineColumns - 1) / finePitch);
  const minY = -Math.floor((b.fineRows - 1) / finePitch);
  const nx = Math.floor((a.fineColumns - 1) / finePitch) - minX + 1;
  const ny = Math.floor((a.fineRows - 1) / finePitch) - minY + 1;
  // Where runs of overlapping steps begin (1) and have ended (−1), column by column.
  const change = new Int16Array((nx + 1) * ny);
  for (let at = 0; at < ny; at++)
    markRow(a, b, { at, shift: (minY + at) * finePitch, minX, ny, change });
  const depth = new Uint16Array(nx * ny);
  for (let at = 0; at < depth.length; at++) {
    const open = (at < ny ? 0 : runAt(change, at - ny)) + runAt(change, at);
    change[at] = open;
    if (open > 0) depth[at] = 1;
  }
  return { minX, minY, nx, ny, depth };
}

function runAt(list: Int16Array, index: number): number {
  return list[index] ?? 0;
}

interface Row {
  /** Which step across, and how many fine rows that is. */
  readonly at: number;
  readonly shift: number;
  readonly minX: number;
  readonly ny: number;
  readonly change: Int16Array;
}

function markRow(a: Form, b: Form, steps: Row): void {
  const { shift } = steps;
  const end = Math.min(a.fineRows, shift + b.fineRows);
  for (let row = Math.max(0, shift); row < end; row++) {
    const aEnd = intAt(a.first, row + 1);
    for (let at = intAt(a.first, row); at < aEnd; at += 2) {
      markSpan(intAt(a.spans, at), intAt(a.spans, at + 1), { b, row: row - shift, steps });
    }
  }
}

function markSpan(
  start: number,
  end: number,
  { b, row, steps }: { readonly b: Form; readonly row: number; readonly steps: Row },
): void {
  const { at: step, minX, ny, change } = steps;
  const last = intAt(b.first, row + 1);
  for (let at = intAt(b.first, row); at < last; at += 2) {
    // Rounded up and down to whole cells.
    const low = Math.floor((start + finePitch - 1 - intAt(b.spans, at + 1)) / finePitch) - minX;
    const high = Math.floor((end - intAt(b.spans, at)) / finePitch) - minX;
    if (high < low) continue;
    change[low * ny + step] = runAt(change, low * ny + step) + 1;
    change[(high + 1) * ny + step] = runAt(change, (high + 1) * ny + step) - 1;
  }
}

/** The map from the second form to the first: every step is taken back. */
function turnedBack({ minX, minY, nx, ny, depth }: NoFit): NoFit {
  return { minX: 1 - nx - minX, minY: 1 - ny - minY, nx, ny, depth: depth.slice().reverse() };
}

// Steps of a chamfer distance: straight ones count 5, slanting ones 7.
const straight = 5;
const slanting = 7;
const far = 60_000;

/** The map with the depth of each overlap: how far it is to the nearest step that has none. */
function deepened({ minX, minY, nx, ny, depth: blocked }: NoFit): NoFit {
  // Steps all around stay at 0.
  const stride = ny + 2;
  const padded = new Uint16Array((nx + 2) * stride);
  for (let x = 0; x < nx; x++) {
    for (let y = 0; y < ny; y++) {
      if (depthAt(blocked, x * ny + y) !== 0) padded[(x + 1) * stride + y + 1] = far;
    }
  }
  const first = stride + 1;
  const last = nx * stride + ny;
  for (let at = first; at <= last; at++) nearer(padded, at, -1, stride);
  for (let at = last; at >= first; at--) nearer(padded, at, 1, stride);
  const depth = new Uint16Array(nx * ny);
  for (let x = 0; x < nx; x++) {
    const start = (x + 1) * stride + 1;
    depth.set(padded.subarray(start, start + ny), x * ny);
  }
  return { minX, minY, nx, ny, depth };
}

function nearer(list: Uint16Array, at: number, way: 1 | -1, stride: number): void {
  let own = depthAt(list, at);
  if (own === 0) return;
  const next = at + way * stride;
  own = Math.min(own, depthAt(list, next) + straight, depthAt(list, at + way) + straight);
  own = Math.min(own, depthAt(list, next - 1) + slanting, depthAt(list, next + 1) + slanting);
  list[at] = own;
}

/** No-fit maps of all pairs of forms, each made when it is asked for first. */
export function openNoFits(forms: readonly Form[]): NoFits {
  const known: (NoFit | undefined)[] = [];
  const deepKnown: (NoFit | undefined)[] = [];
  const blocked = (a: number, b: number): NoFit => {
    const key = a * forms.length + b;
    const found = known[key];
    if (found !== undefined) return found;
    const [one, other] = [forms[a], forms[b]];
    if (one === undefined || other === undefined) throw new Error('no such form');
    const back = known[b * forms.length + a];
    const map = back === undefined ? blockedSteps(one, other) : turnedBack(back);
    known[key] = map;
    return map;
  };
  const deep = (a: number, b: number): NoFit => {
    const key = a * forms.length + b;
    const found = deepKnown[key];
    if (found !== undefined) return found;
    const back = deepKnown[b * forms.length + a];
    const map = back === undefined ? deepened(blocked(a, b)) : turnedBack(back);
    deepKnown[key] = map;
    return map;
  };
  return { blocked, deep };
}

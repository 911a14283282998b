import { blockedAt, depthAt, intAt } from './cells.ts';
import { finePitch, type Form, type Raster } from './forms.ts';

/**
 * Where one form may not lie from another, for each step of cells from the first's corner to the
 * second's: by column, from as far back and down as the second reaches. The step (dx, dy) stands at
 * (dx + columns of the second) × ny + dy + rows of the second, where ny is the rows of both and 1. Maps
 * are kept for pairs whose first form is the lower one; from the higher to the lower each step is taken
 * back, so that the same map is read from its end.
 */
export interface NoFits {
  /** Whole cells from each form's corner to its last fine column, and to its last fine row. */
  readonly columns: Int32Array;
  readonly rows: Int32Array;
  /** 1 where two forms overlap: enough to fill. */
  readonly blocked: MapOf<Uint8Array>;
  /** How deep they overlap (0: not at all), in fifths of a cell. */
  readonly deep: MapOf<Uint16Array>;
}

/** The map of a pair of forms, the lower one first. */
type MapOf<Cells> = (a: number, b: number) => Cells;

/** How deep two forms overlap at a step of their map. */
export function depthOf(deep: MapOf<Uint16Array>, a: number, b: number, step: number): number {
  if (a <= b) return depthAt(deep(a, b), step);
  const map = deep(b, a);
  return depthAt(map, map.length - 1 - step);
}

interface Size {
  readonly nx: number;
  readonly ny: number;
}

function sizeOf(a: Form, b: Form): Size {
  return {
    nx: reach(a.fineColumns) + reach(b.fineColumns) + 1,
    ny: reach(a.fineRows) + reach(b.fineRows) + 1,
  };
}

function reach(fine: number): number {
  return Math.floor((fine - 1) / finePitch);
}

function blockedSteps(a: Form, b: Form): Uint8Array {
  const { nx, ny } = sizeOf(a, b);
  const blocked = new Uint8Array(nx * ny);
  const cells = wholeCells(ny * finePitch + a.fineRows);
  const column = { cells, blocked, base: 0, from: 0, to: -1 };
  const first = -reach(b.fineColumns);
  // Where the first form's corner stands among the whole cells.
  const pair = { a: rasterFor(a, b), b: rasterFor(b, a), zero: reach(b.fineRows) * finePitch };
  for (let step = 0; step < nx; step++) {
    column.base = step * ny;
    const shift = (first + step) * finePitch;
    const end = Math.min(a.fineColumns, shift + b.fineColumns);
    for (let at = Math.max(0, shift); at < end; at++) markPair(column, pair, at, at - shift);
    markRun(column);
  }
  return blocked;
}

/** A form's raster as far as another is kept from it: openings that it does not go into are closed. */
function rasterFor({ raster, solid, openings }: Form, other: Form): Raster {
  const isOpen = openings.some(
    ({ length, width }) => other.length <= length && other.width <= width,
  );
  return isOpen ? raster : solid;
}

/** Whole cells, rounded down, of so many fine ones. */
function wholeCells(count: number): Int32Array {
  const cells = new Int32Array(count);
  for (let at = 0; at < count; at++) cells[at] = Math.floor(at / finePitch);
  return cells;
}

/** A column of a map. */
interface Column {
  readonly cells: Int32Array;
  readonly blocked: Uint8Array;
  base: number;
  /** Runs that follow each other mostly overlap: they are joined before they are marked. */
  from: number;
  to: number;
}

interface Pair {
  readonly a: Raster;
  readonly b: Raster;
  readonly zero: number;
}

/** Marks where a fine column of the one meets a fine column of the other. */
function markPair(column: Column, { a, b, zero }: Pair, atA: number, atB: number): void {
  const { cells } = column;
  const [from, to] = [intAt(b.first, atB), intAt(b.first, atB + 1)];
  const last = intAt(a.first, atA + 1);
  for (let own = intAt(a.first, atA); own < last; own += 2) {
    const start = intAt(a.spans, own) + zero;
    const end = intAt(a.spans, own + 1) + zero;
    for (let at = from; at < to; at += 2) {
      // Rounded up and down to whole cells.
      const low = intAt(cells, start + finePitch - 1 - intAt(b.spans, at + 1));
      const high = intAt(cells, end - intAt(b.spans, at));
      if (high >= low) markCells(column, low, high);
    }
  }
}

function markCells(column: Column, low: number, high: number): void {
  if (low >= column.from && high <= column.to) return;
  if (low <= column.to && high >= column.from) {
    if (low < column.from) column.from = low;
    if (high > column.to) column.to = high;
    return;
  }
  markRun(column);
  column.from = low;
  column.to = high;
}

function markRun(column: Column): void {
  const { blocked, base, from, to } = column;
  if (to >= from) blocked.fill(1, base + from, base + to + 1);
  column.from = 0;
  column.to = -1;
}

// Steps of a chamfer distance: straight ones count 5, slanting ones 7.
const straight = 5;
const slanting = 7;
const far = 60_000;

/** The depth of each overlap of a map: how far it is to the nearest step that has none. */
function deepened(blocked: Uint8Array, { nx, ny }: Size): Uint16Array {
  // Steps all around stay at 0.
  const stride = ny + 2;
  const padded = new Uint16Array((nx + 2) * stride);
  for (let x = 0; x < nx; x++) {
    for (let y = 0; y < ny; y++) {
      if (blockedAt(blocked, x * ny + y) !== 0) padded[(x + 1) * stride + y + 1] = far;
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
  return depth;
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
  const count = forms.length;
  const pair = (a: number, b: number): readonly [Form, Form] => {
    const [one, other] = [forms[a], forms[b]];
    if (one === undefined || other === undefined) throw new Error('no such form');
    return [one, other];
  };
  const known: (Uint8Array | undefined)[] = Array.from({ length: count * count });
  const blocked = (a: number, b: number): Uint8Array =>
    known[a * count + b] ?? (known[a * count + b] = blockedSteps(...pair(a, b)));
  const deepKnown: (Uint16Array | undefined)[] = Array.from({ length: count * count });
  const deep = (a: number, b: number): Uint16Array =>
    deepKnown[a * count + b] ??
    (deepKnown[a * count + b] = deepened(blocked(a, b), sizeOf(...pair(a, b))));
  return {
    columns: Int32Array.from(forms, ({ fineColumns }) => reach(fineColumns)),
    rows: Int32Array.from(forms, ({ fineRows }) => reach(fineRows)),
    blocked,
    deep,
  };
}

import { fineCells, shapeRows, type Corner, type Loops } from './shape-rows.ts';

/** Fine rows and columns to one cell of the grid that parts are placed on. */
export const finePitch = 3;

/** A part as it lies in one of its ways: loops in mm with their box at 0, 0, and its raster. */
export interface Form {
  readonly index: number;
  readonly type: number;
  readonly rotation: number;
  readonly loops: Loops;
  /** Size of its box, mm. */
  readonly length: number;
  readonly width: number;
  /** Where the box of the part as drawn lies in the box of the grown one, and its size; mm. */
  readonly drawn: DrawnBox;
  /** The same in cells, rounded up. */
  readonly columns: number;
  readonly rows: number;
  readonly fineColumns: number;
  readonly fineRows: number;
  readonly raster: Raster;
  /** The same without openings. */
  readonly solid: Raster;
  /** Sizes of the boxes around its openings, mm. */
  readonly openings: readonly { readonly length: number; readonly width: number }[];
}

/** Spans of all fine columns, start and end in turn; column c's from `first[c]` to `first[c + 1]`. */
export interface Raster {
  readonly spans: Int32Array;
  readonly first: Int32Array;
}

export interface DrawnBox {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

function drawnBox(drawn: Loops, grown: Loops, degrees: number): DrawnBox {
  const boxOf = ({ outer }: Loops): readonly [number, number, number, number] => {
    const corners = outer.map((corner) => turned(corner, degrees));
    const xs = corners.map(([x]) => x);
    const ys = corners.map(([, y]) => y);
    return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  };
  const [left, low, right, high] = boxOf(drawn);
  const [grownLeft, grownLow] = boxOf(grown);
  return { x: left - grownLeft, y: low - grownLow, length: right - left, width: high - low };
}

function turned([x, y]: Corner, degrees: number): Corner {
  // Quarter turns are exact.
  const quarters = ((degrees / 90) % 4) + (degrees < 0 ? 4 : 0);
  if (quarters % 4 === 0) return [x, y];
  if (quarters === 1) return [-y, x];
  if (quarters === 2) return [-x, -y];
  if (quarters === 3) return [y, -x];
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [x * cos - y * sin, x * sin + y * cos];
}

/** Loops turned about the origin and moved so that their box begins at 0, 0. */
export function turnedLoops(loops: Loops, degrees: number): Loops {
  const outer = loops.outer.map((corner) => turned(corner, degrees));
  const left = Math.min(...outer.map(([x]) => x));
  const low = Math.min(...outer.map(([, y]) => y));
  const moved = (loop: readonly Corner[]): Corner[] => loop.map(([x, y]) => [x - left, y - low]);
  return {
    outer: moved(outer),
    holes: loops.holes.map((hole) => moved(hole.map((corner) => turned(corner, degrees)))),
  };
}

/** A part's raster in one way of lying, on a grid of `cell` mm; `grown` is what it keeps free. */
export function formOf(
  { grown: loops, drawn }: { readonly grown: Loops; readonly drawn: Loops },
  of: { readonly index: number; readonly type: number; readonly rotation: number },
  cell: number,
): Form {
  const lying = turnedLoops(loops, of.rotation);
  const length = Math.max(...lying.outer.map(([x]) => x));
  const width = Math.max(...lying.outer.map(([, y]) => y));
  const fine = cell / finePitch;
  const size = { fineColumns: fineCells(length / fine), fineRows: fineCells(width / fine) };
  const raster = rasterOf(lying, fine, size);
  const isSolid = lying.holes.length === 0;
  return {
    ...of,
    loops: lying,
    length,
    width,
    drawn: drawnBox(drawn, loops, of.rotation),
    columns: Math.ceil(size.fineColumns / finePitch),
    rows: Math.ceil(size.fineRows / finePitch),
    ...size,
    raster,
    solid: isSolid ? raster : rasterOf({ outer: lying.outer, holes: [] }, fine, size),
    openings: lying.holes.map(boxSize),
  };
}

function boxSize(loop: readonly Corner[]): { readonly length: number; readonly width: number } {
  const [xs, ys] = [loop.map(([x]) => x), loop.map(([, y]) => y)];
  return {
    length: Math.max(...xs) - Math.min(...xs),
    width: Math.max(...ys) - Math.min(...ys),
  };
}

function rasterOf(
  { outer, holes }: Loops,
  fine: number,
  { fineColumns, fineRows }: { readonly fineColumns: number; readonly fineRows: number },
): Raster {
  // By columns: rows of the part laid on its side.
  const scaled = (loop: readonly Corner[]): Corner[] => loop.map(([x, y]) => [y / fine, x / fine]);
  const rows = shapeRows(
    { outer: scaled(outer), holes: holes.map(scaled) },
    { width: fineRows, height: fineColumns },
  );
  const first = new Int32Array(rows.length + 1);
  const spans: number[] = [];
  rows.forEach((row, index) => {
    spans.push(...row);
    first[index + 1] = spans.length;
  });
  return { spans: Int32Array.from(spans), first };
}

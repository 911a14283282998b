import { shapeRows, type Corner, type Loops } from './shape-rows.ts';

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
  /** Spans of all fine rows, start and end in turn; row r's from `first[r]` to `first[r + 1]`. */
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
  const scaled = (loop: readonly Corner[]): Corner[] => loop.map(([x, y]) => [x / fine, y / fine]);
  const raster = shapeRows(
    { outer: scaled(lying.outer), holes: lying.holes.map(scaled) },
    { width: length / fine, height: width / fine },
  );
  const first = new Int32Array(raster.height + 1);
  const spans: number[] = [];
  raster.rows.forEach((row, index) => {
    spans.push(...row);
    first[index + 1] = spans.length;
  });
  return {
    ...of,
    loops: lying,
    length,
    width,
    drawn: drawnBox(drawn, loops, of.rotation),
    columns: Math.ceil(raster.width / finePitch),
    rows: Math.ceil(raster.height / finePitch),
    fineColumns: raster.width,
    fineRows: raster.height,
    spans: Int32Array.from(spans),
    first,
  };
}

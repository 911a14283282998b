import type { Drawing, LineMark } from '../drawing/drawing.ts';
import { inside, type Box, type Point } from '../geometry/outline.ts';

/** Sheets that a shop's printer takes. */
export type Paper = 'letter' | 'a4';

/** Sizes of sheets held upright, in mm. */
const sheets: Readonly<Record<Paper, { readonly width: number; readonly height: number }>> = {
  letter: { width: 215.9, height: 279.4 },
  a4: { width: 210, height: 297 },
};

/** Size of a sheet held upright, in mm. */
export function sheetSize(paper: Paper): { readonly width: number; readonly height: number } {
  return sheets[paper];
}

/** Edge that printers leave white, in mm. */
export const marginMm = 10;

/** Strip at the foot of each page for its title and the check lines, in mm. */
export const footMm = 20;

/** What neighbouring tiles both show, in mm: they are joined in the middle of it. */
export const overlapMm = 10;

/** One page of a drawing that is larger than its paper. */
export interface Tile {
  /** From 1, from the top. */
  readonly row: number;
  /** From 1, from the left. */
  readonly column: number;
  /** Part of the drawing that it shows. */
  readonly window: Box;
}

/** How a drawing lies on sheets of paper at full size. */
export interface TilePlan {
  readonly page: { readonly width: number; readonly height: number };
  readonly rows: number;
  readonly columns: number;
  /** Places at which columns are joined, in the drawing. */
  readonly seamsX: readonly number[];
  readonly seamsY: readonly number[];
  /** Tiles with something on them, row by row. */
  readonly tiles: readonly Tile[];
}

function countOf(size: number, window: number): number {
  return Math.max(1, Math.ceil((size - overlapMm) / (window - overlapMm) - 1e-9));
}

/** Whether a straight piece comes into a box. */
function meetsBox(a: Point, b: Point, { left, right, bottom, top }: Box): boolean {
  let [from, to] = [0, 1];
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const sides: readonly (readonly [number, number])[] = [
    [-dx, a.x - left],
    [dx, right - a.x],
    [-dy, a.y - bottom],
    [dy, top - a.y],
  ];
  for (const [run, room] of sides) {
    if (run === 0 && room < 0) return false;
    if (run < 0) from = Math.max(from, room / run);
    if (run > 0) to = Math.min(to, room / run);
  }
  return from <= to;
}

/** Whether a line, or the area of a part inside it, comes into a box. */
export function isMet({ points, closed, role }: LineMark, box: Box): boolean {
  const last = closed ? points.length : points.length - 1;
  for (let index = 0; index < last; index++) {
    const [a, b] = [points[index], points[(index + 1) % points.length]];
    if (a !== undefined && b !== undefined && meetsBox(a, b, box)) return true;
  }
  const middle = { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 };
  return closed && role === 'outline' && inside(middle, points);
}

function planOn(drawing: Drawing, page: TilePlan['page']): TilePlan {
  const { left, bottom, right, top } = drawing.box;
  const wide = page.width - 2 * marginMm;
  const high = page.height - 2 * marginMm - footMm;
  const [columns, rows] = [countOf(right - left, wide), countOf(top - bottom, high)];
  // What the sheets are larger than the drawing is white on both sides of it.
  const spareX = (columns * (wide - overlapMm) + overlapMm - (right - left)) / 2;
  const spareY = (rows * (high - overlapMm) + overlapMm - (top - bottom)) / 2;
  const startX = (column: number): number => left - spareX + column * (wide - overlapMm);
  const startY = (row: number): number => top + spareY - high - row * (high - overlapMm);
  const all = Array.from({ length: rows * columns }, (_, index): Tile => {
    const [row, column] = [Math.floor(index / columns), index % columns];
    const [x, y] = [startX(column), startY(row)];
    const window = { left: x, bottom: y, right: x + wide, top: y + high };
    return { row: row + 1, column: column + 1, window };
  });
  const lines = drawing.marks.filter((mark) => mark.kind === 'line');
  const seams = (count: number, at: (index: number) => number): readonly number[] =>
    Array.from({ length: count - 1 }, (_, index) => at(index + 1));
  return {
    page,
    rows,
    columns,
    seamsX: seams(columns, (column) => startX(column) + overlapMm / 2),
    seamsY: seams(rows, (row) => startY(row) + high - overlapMm / 2),
    tiles: all.filter(({ window }) => lines.some((line) => isMet(line, window))),
  };
}

/** Lays a drawing at full size on as few sheets as it takes, upright or lengthwise. */
export function tilePlan(drawing: Drawing, paper: Paper): TilePlan {
  const { width, height } = sheetSize(paper);
  const upright = planOn(drawing, { width, height });
  const lengthwise = planOn(drawing, { width: height, height: width });
  return lengthwise.tiles.length < upright.tiles.length ? lengthwise : upright;
}

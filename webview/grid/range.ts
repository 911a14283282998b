import type { GridView } from './grid-view.ts';
import { rectangleOf, type Rectangle, type Spot } from './selection.ts';

export function selectedRange(view: GridView): Rectangle | undefined {
  return view.selection && rectangleOf(view.selection);
}

/** Keys of the rows of a range, in display order. */
export function rowKeys(view: GridView, range: Rectangle): readonly string[] {
  return view.lines.keys.slice(range.top, range.bottom + 1);
}

/** Column keys of a range. */
export function columnKeys(view: GridView, range: Rectangle): readonly string[] {
  const keys: string[] = [];
  for (let column = range.left; column <= range.right; column += 1)
    keys.push(view.columnKey(column));
  return keys;
}

/** Every cell of a range, line by line. */
export function spotsOf(range: Rectangle): readonly Spot[] {
  const spots: Spot[] = [];
  for (let row = range.top; row <= range.bottom; row += 1)
    for (let column = range.left; column <= range.right; column += 1) spots.push({ row, column });
  return spots;
}

/**
 * Where Ctrl with an arrow goes: to the last filled cell before a gap, or over a gap to the next
 * filled one, else to the edge.
 */
export function jumpSpot(
  view: GridView,
  from: Spot,
  by: { readonly rows: number; readonly columns: number },
): Spot {
  const { rows, columns } = view.bounds;
  const filled = (spot: Spot): boolean => (view.cellAt(spot)?.shown ?? '') !== '';
  const next = (spot: Spot): Spot => ({
    row: spot.row + by.rows,
    column: spot.column + by.columns,
  });
  const inside = (spot: Spot): boolean =>
    spot.row >= 0 && spot.row < rows && spot.column >= 0 && spot.column < columns;
  let spot = from;
  if (!inside(next(spot))) return spot;
  const run = filled(spot) && filled(next(spot));
  spot = next(spot);
  while (inside(next(spot)) && (run ? filled(next(spot)) : !filled(spot))) spot = next(spot);
  return spot;
}

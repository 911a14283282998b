/** A cell by its place: row among the sheet's rows, column with the row header as 0. */
export interface Spot {
  readonly row: number;
  readonly column: number;
}

/** `active` takes what is typed; the range runs between `from` (fixed) and `to` (moves with Shift). */
export interface Selection {
  readonly active: Spot;
  readonly from: Spot;
  readonly to: Spot;
}

/** How many rows and columns there are; columns count the row header. */
export interface Bounds {
  readonly rows: number;
  readonly columns: number;
}

export interface Rectangle {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

export function clampSpot(spot: Spot, bounds: Bounds): Spot {
  return {
    row: Math.max(0, Math.min(spot.row, bounds.rows - 1)),
    column: Math.max(0, Math.min(spot.column, bounds.columns - 1)),
  };
}

export function selectSpot(spot: Spot): Selection {
  return { active: spot, from: spot, to: spot };
}

export function rectangleOf({ from, to }: Selection): Rectangle {
  return {
    top: Math.min(from.row, to.row),
    bottom: Math.max(from.row, to.row),
    left: Math.min(from.column, to.column),
    right: Math.max(from.column, to.column),
  };
}

export function isSingle(selection: Selection): boolean {
  const { from, to } = selection;
  return from.row === to.row && from.column === to.column;
}

export function contains(rectangle: Rectangle, spot: Spot): boolean {
  return (
    spot.row >= rectangle.top &&
    spot.row <= rectangle.bottom &&
    spot.column >= rectangle.left &&
    spot.column <= rectangle.right
  );
}

export function extendTo(selection: Selection, to: Spot): Selection {
  return { ...selection, to };
}

/** The rows of the range, whole; what is typed still goes where it went. */
export function selectRows(selection: Selection, bounds: Bounds): Selection {
  const { active, from, to } = selection;
  return {
    active,
    from: { row: from.row, column: 0 },
    to: { row: to.row, column: bounds.columns - 1 },
  };
}

export function selectColumns(selection: Selection, bounds: Bounds): Selection {
  const { active, from, to } = selection;
  return {
    active,
    from: { row: 0, column: from.column },
    to: { row: bounds.rows - 1, column: to.column },
  };
}

export function selectAll(selection: Selection, bounds: Bounds): Selection {
  return {
    active: selection.active,
    from: { row: 0, column: 0 },
    to: { row: bounds.rows - 1, column: bounds.columns - 1 },
  };
}

/** Next cell inside a range, as Enter and Tab walk it: down the columns or along the rows, round. */
export function nextInRange(
  selection: Selection,
  along: 'rows' | 'columns',
  by: 1 | -1,
): Selection {
  const { top, bottom, left, right } = rectangleOf(selection);
  const height = bottom - top + 1;
  const width = right - left + 1;
  const { row, column } = selection.active;
  const size = height * width;
  const place =
    along === 'rows'
      ? (row - top) * width + (column - left)
      : (column - left) * height + (row - top);
  const next = (place + by + size) % size;
  const active =
    along === 'rows'
      ? { row: top + Math.floor(next / width), column: left + (next % width) }
      : { row: top + (next % height), column: left + Math.floor(next / height) };
  return { ...selection, active };
}

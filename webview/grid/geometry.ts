/** Sizes in px that grid.css repeats: rows are of one height so that nothing need be measured. */
export const rowHeight = 24;
export const headerHeight = 28;
export const leastColumnWidth = 40;

/** Rows painted beyond each edge, so that a quick scroll meets painted rows. */
const overscan = 12;

export interface Viewport {
  readonly top: number;
  readonly left: number;
  readonly width: number;
  readonly height: number;
}

/** Half-open range of lines to keep painted for a viewport. */
export function paintedRange(
  viewport: Pick<Viewport, 'top' | 'height'>,
  lines: number,
): { readonly from: number; readonly to: number } {
  const first = Math.floor(viewport.top / rowHeight) - overscan;
  const count = Math.ceil(viewport.height / rowHeight) + 2 * overscan;
  const from = Math.max(0, Math.min(first, lines - count));
  return { from, to: Math.min(lines, Math.max(0, from) + count) };
}

/** Rows that a Page key moves by. */
export function pageRows(height: number): number {
  return Math.max(1, Math.floor((height - headerHeight) / rowHeight) - 1);
}

/** Left edge of each column, the first (the row header) at 0; one more entry for the whole width. */
export function columnEdges(widths: readonly number[]): readonly number[] {
  const edges = [0];
  for (const width of widths) edges.push((edges[edges.length - 1] ?? 0) + width);
  return edges;
}

/** Where to scroll so that a line and a column can be seen; the row header hides what is under it. */
export function scrollToShow(
  viewport: Viewport,
  spot: { readonly line: number; readonly column: number },
  edges: readonly number[],
): { readonly top: number; readonly left: number } {
  const lineTop = spot.line * rowHeight;
  const seen = viewport.height - headerHeight;
  let { top, left } = viewport;
  if (lineTop < top) top = lineTop;
  else if (lineTop + rowHeight > top + seen) top = lineTop + rowHeight - seen;
  if (spot.column > 0) {
    const pinned = edges[1] ?? 0;
    const start = edges[spot.column] ?? 0;
    const end = edges[spot.column + 1] ?? start;
    if (end > left + viewport.width) left = end - viewport.width;
    if (start < left + pinned) left = start - pinned;
  }
  return { top: Math.max(0, top), left: Math.max(0, left) };
}

/** Sides of a cell that are not for its text, in px: padding and line. */
const cellSides = 17;

/** Width of a letter in words of many capitals, in parts of the font's size. */
const wideLetter = 0.6;

/**
 * Letters that find room in a cell without being clipped.
 *
 * @param width - of the cell, in px
 * @param fontSize - in px
 */
export function lettersThatFit(width: number, fontSize: number): number {
  return Math.max(0, Math.floor((width - cellSides) / (wideLetter * fontSize)));
}

import type { CellLabel } from './cell-editor.ts';
import type { GridView } from './grid-view.ts';
import type { Spot } from './selection.ts';

// Roughly the width of a letter, and what a cell needs beside its text, in px.
const letterPx = 7.2;
const roomPx = 22;
const least = 56;
const most = 640;

/** What the entry in a cell says to screen readers, and the text that Copy finds in it. */
export function cellLabel(view: GridView, spot: Spot): CellLabel {
  const cell = view.cellAt(spot);
  const column = view.columnView(spot.column)?.label ?? 'Id';
  const key = view.lines.keys[spot.row] ?? '';
  const message = cell === undefined || cell.message === '' ? '' : `. ${cell.message}`;
  const mark = cell?.mark === undefined ? '' : `. ${cell.mark.told}`;
  return { label: `${column} of ${key}${message}${mark}`, text: cell?.shown ?? '' };
}

/** Width for the longest text of a column, told by its letters: nothing is measured. */
export function fittingWidth(view: GridView, column: number): number {
  let letters = view.columnView(column)?.label.length ?? 2;
  for (let row = 0; row < view.lines.keys.length; row += 1)
    letters = Math.max(letters, view.cellAt({ row, column })?.shown.length ?? 0);
  return Math.max(least, Math.min(most, Math.ceil(letters * letterPx) + roomPx));
}

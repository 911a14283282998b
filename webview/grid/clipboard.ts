import type { CellAddress, GridEdit } from '../../extension/protocol/messages.ts';
import { cellAddress, idColumn } from '../addresses.ts';
import {
  readOwnHtml,
  readTsv,
  writeHtmlTable,
  writeTsv,
  type Block,
  type CopiedCell,
} from './clipboard-text.ts';
import type { Grid } from './grid.ts';
import { rectangleOf, type Rectangle, type Spot } from './selection.ts';
import { spotsOf } from './range.ts';

/** What a gesture over many cells comes to, and what it had to leave alone. */
export interface BlockEdits {
  readonly edits: readonly GridEdit[];
  /** Results and locked rows among the cells. */
  readonly skipped: number;
  /** Lines or columns of the block beyond the sheet's edge. */
  readonly outside: number;
}

function copiedCell(grid: Grid, spot: Spot): CopiedCell {
  const view = grid.view.cellAt(spot);
  if (view === undefined) return { shown: '', typed: '' };
  // A default stays a default where it is pasted; a result is pasted as its value.
  const typed = view.look === 'computed' ? view.shown : view.typed;
  return { shown: view.shown, typed };
}

/** The selection as text for other programs and as a table that keeps formulas. */
export function copiedSelection(grid: Grid): { readonly text: string; readonly html: string } {
  const { selection } = grid;
  if (selection === undefined) return { text: '', html: '' };
  const { top, bottom, left, right } = rectangleOf(selection);
  const block: CopiedCell[][] = [];
  for (let row = top; row <= bottom; row += 1) {
    const line: CopiedCell[] = [];
    for (let column = left; column <= right; column += 1)
      line.push(copiedCell(grid, { row, column }));
    block.push(line);
  }
  return {
    text: writeTsv(block.map((row) => row.map((cell) => cell.shown))),
    html: writeHtmlTable(block),
  };
}

/** A cell's address in the sheet that the grid shows. */
function spotAddress(grid: Grid, spot: Spot): CellAddress | undefined {
  const key = grid.view.lines.keys[spot.row];
  return key === undefined
    ? undefined
    : cellAddress(grid.table, key, grid.view.columnKey(spot.column));
}

/** One `type` step for each cell that takes typing, ids apart: renaming many rows is never meant. */
export function typeInto(
  grid: Grid,
  spots: readonly Spot[],
  text: (spot: Spot) => string,
): { readonly edits: readonly GridEdit[]; readonly skipped: number } {
  const edits: GridEdit[] = [];
  let skipped = 0;
  for (const spot of spots) {
    const cell = spotAddress(grid, spot);
    if (cell === undefined) continue;
    if (cell.column === idColumn) continue;
    if (grid.editorAt(spot) !== 'none') edits.push({ kind: 'type', cell, text: text(spot) });
    else skipped += 1;
  }
  return { edits, skipped };
}

function repeats(
  block: Block,
  rectangle: Rectangle,
): { readonly rows: number; readonly columns: number } {
  const height = block.length;
  const width = Math.max(...block.map((row) => row.length));
  const rows = rectangle.bottom - rectangle.top + 1;
  const columns = rectangle.right - rectangle.left + 1;
  // A block fills a selection that is a whole multiple of it; otherwise it lies at its corner.
  const fits = rows % height === 0 && columns % width === 0;
  return fits ? { rows, columns } : { rows: height, columns: width };
}

/** The steps of pasting a block at the selection's corner. */
export function pasteEdits(grid: Grid, block: Block): BlockEdits {
  const { selection } = grid;
  if (selection === undefined || block.length === 0) return { edits: [], skipped: 0, outside: 0 };
  const rectangle = rectangleOf(selection);
  const height = block.length;
  const width = Math.max(...block.map((row) => row.length));
  const size = repeats(block, rectangle);
  const { bounds } = grid.view;
  const bottom = Math.min(rectangle.top + size.rows, bounds.rows) - 1;
  const right = Math.min(rectangle.left + size.columns, bounds.columns) - 1;
  const target = { top: rectangle.top, left: rectangle.left, bottom, right };
  const { edits, skipped } = typeInto(grid, spotsOf(target), ({ row, column }) => {
    const line = block[(row - target.top) % height];
    return (line?.[(column - target.left) % width] ?? '').replace(/[\r\n]+/g, ' ').trim();
  });
  const outside =
    size.rows - (bottom - target.top + 1) + (size.columns - (right - target.left + 1));
  return { edits, skipped, outside };
}

/** Reads the clipboard of a paste: our own table first, it keeps formulas. */
export function pastedBlock(data: DataTransfer | null): Block {
  const html = data?.getData('text/html') ?? '';
  return readOwnHtml(html) ?? readTsv(data?.getData('text/plain') ?? '');
}

/** One sentence about what a paste left out; empty when nothing. */
export function leftOutText({ skipped, outside }: BlockEdits): string {
  const parts: string[] = [];
  if (skipped > 0)
    parts.push(`${String(skipped)} cells that are worked out or locked were left alone`);
  if (outside > 0) parts.push('what lay beyond the last row or column was not pasted');
  const text = parts.join('; ');
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

export interface ClipboardHooks {
  readonly send: (edits: readonly GridEdit[]) => void;
  readonly say: (text: string) => void;
}

/** Pastes a block as one gesture and shows what it covered. */
export function pasteBlock(grid: Grid, block: Block, hooks: ClipboardHooks): void {
  const pasted = pasteEdits(grid, block);
  if (pasted.edits.length === 0) hooks.say(grid.whyNot());
  else {
    hooks.send(pasted.edits);
    const said = leftOutText(pasted);
    if (said !== '') hooks.say(said);
  }
}

/** Cut, copy and paste of cells; within an open edit the text's own are left alone. */
export function listenToClipboard(grid: Grid, hooks: ClipboardHooks): void {
  const { entry } = grid.editor;
  const copy = (event: ClipboardEvent): boolean => {
    if (grid.editor.editing || event.clipboardData === null) return false;
    event.preventDefault();
    const { text, html } = copiedSelection(grid);
    event.clipboardData.setData('text/plain', text);
    event.clipboardData.setData('text/html', html);
    return true;
  };
  entry.addEventListener('copy', copy);
  entry.addEventListener('cut', (event) => {
    if (copy(event)) hooks.send(clearEdits(grid));
  });
  entry.addEventListener('paste', (event) => {
    if (grid.editor.editing) return;
    event.preventDefault();
    pasteBlock(grid, pastedBlock(event.clipboardData), hooks);
  });
}

/** The steps that empty the selection. */
export function clearEdits(grid: Grid): readonly GridEdit[] {
  const { selection } = grid;
  if (selection === undefined) return [];
  const spots = spotsOf(rectangleOf(selection)).filter(
    (spot) => grid.view.cellAt(spot)?.typed !== '',
  );
  return typeInto(grid, spots, () => '').edits;
}

/** The steps that repeat the first row of the selection (or the row above) in the rest of it. */
export function fillDownEdits(grid: Grid): readonly GridEdit[] {
  const { selection } = grid;
  if (selection === undefined) return [];
  const rectangle = rectangleOf(selection);
  const single = rectangle.top === rectangle.bottom;
  const source = single ? rectangle.top - 1 : rectangle.top;
  if (source < 0) return [];
  const spots = spotsOf({ ...rectangle, top: source + 1 });
  return typeInto(grid, spots, ({ column }) => copiedCell(grid, { row: source, column }).typed)
    .edits;
}

/** The steps that write one text into every cell of the selection. */
export function fillEdits(grid: Grid, text: string): readonly GridEdit[] {
  const { selection } = grid;
  return selection === undefined
    ? []
    : typeInto(grid, spotsOf(rectangleOf(selection)), () => text).edits;
}

import { closest } from '../dom.ts';
import { headerHeight, rowHeight } from './geometry.ts';
import type { Grid } from './grid.ts';
import { extendTo, selectSpot, type Spot } from './selection.ts';

// Distance from an edge, in px, at which a drag scrolls, and how far it scrolls a frame.
const edgePx = 28;
const scrollPx = 16;

type Drag = 'cells' | 'rows' | 'columns';

/** The spot of a cell element. */
function spotOf(grid: Grid, cell: HTMLElement): Spot | undefined {
  const row = cell.closest<HTMLElement>('[data-row]')?.dataset['row'];
  const index = row === undefined ? undefined : grid.view.lines.rowOfKey.get(row);
  const column = Number(cell.getAttribute('aria-colindex')) - 1;
  return index === undefined ? undefined : { row: index, column };
}

function spotAt(grid: Grid, event: Event): Spot | undefined {
  const cell = closest(event, '[data-cell]');
  return cell === undefined ? undefined : spotOf(grid, cell);
}

/** Selecting with the mouse: press, drag, Shift, row headers, titles; the wheel is the browser's. */
export class PointerSelection {
  readonly #grid: Grid;
  #drag: Drag | undefined;
  #frame = 0;

  constructor(grid: Grid) {
    this.#grid = grid;
    const { scroller } = grid.view;
    scroller.addEventListener('mousedown', (event) => {
      this.#press(event);
    });
    scroller.addEventListener('dblclick', (event) => {
      if (grid.editor.editing || spotAt(grid, event) === undefined) return;
      grid.editor.begin('caret');
    });
    scroller.addEventListener('pointerover', (event) => {
      const spot = spotAt(grid, event);
      if (this.#drag !== undefined && spot !== undefined) this.#extend(spot);
      else if (this.#drag === undefined) grid.hint.hover(spot);
    });
    scroller.addEventListener('pointerleave', () => {
      grid.hint.hover(undefined);
    });
    scroller.addEventListener('contextmenu', (event) => {
      this.#menu(event);
    });
    window.addEventListener('pointermove', (event) => {
      if (this.#drag !== undefined) this.#scrollAtEdge(event);
    });
    window.addEventListener('pointerup', () => {
      this.#drag = undefined;
      cancelAnimationFrame(this.#frame);
    });
  }

  #press(event: MouseEvent): void {
    const grid = this.#grid;
    const title = closest(event, '.title');
    const spot = spotAt(grid, event);
    if (title === undefined && spot === undefined) return;
    event.preventDefault();
    if (grid.editor.editing) grid.finish();
    if (title !== undefined) this.#pressTitle(Number(title.dataset['columnIndex']), event);
    else if (spot !== undefined) this.#pressCell(spot, event);
  }

  #pressTitle(column: number, event: MouseEvent): void {
    const grid = this.#grid;
    const { rows } = grid.view.bounds;
    if (rows === 0) return;
    const top = { row: 0, column };
    const bottom = { row: rows - 1, column };
    const first = Math.max(0, Math.floor(grid.view.viewport.top / rowHeight));
    const shown = { row: Math.min(grid.selection?.active.row ?? first, rows - 1), column };
    const { selection } = grid;
    if (event.shiftKey && selection !== undefined)
      grid.select(
        { ...selection, from: { ...top, column: selection.from.column }, to: bottom },
        { reveal: shown },
      );
    else grid.select({ active: shown, from: top, to: bottom }, { reveal: shown });
    if (event.button === 0) this.#drag = 'columns';
  }

  #pressCell(spot: Spot, event: MouseEvent): void {
    const grid = this.#grid;
    const { selection } = grid;
    if (event.button === 2 && this.#inside(spot)) return;
    if (event.shiftKey && selection !== undefined) {
      grid.select(extendTo(selection, spot), { reveal: spot });
    } else if (spot.column === 0 && event.detail < 2) {
      const last = grid.view.bounds.columns - 1;
      grid.select(
        { active: spot, from: spot, to: { row: spot.row, column: last } },
        { reveal: spot },
      );
    } else grid.select(selectSpot(spot));
    if (event.button === 0) this.#drag = spot.column === 0 ? 'rows' : 'cells';
  }

  #inside(spot: Spot): boolean {
    const cell = this.#grid.view.cellElement(spot);
    return cell?.getAttribute('aria-selected') === 'true';
  }

  #extend(spot: Spot): void {
    const grid = this.#grid;
    const { selection } = grid;
    if (selection === undefined) return;
    const { rows, columns } = grid.view.bounds;
    const to =
      this.#drag === 'rows'
        ? { row: spot.row, column: columns - 1 }
        : this.#drag === 'columns'
          ? { row: rows - 1, column: spot.column }
          : spot;
    grid.select(extendTo(selection, to), { reveal: spot });
  }

  #scrollAtEdge(event: PointerEvent): void {
    cancelAnimationFrame(this.#frame);
    const { scroller } = this.#grid.view;
    this.#frame = requestAnimationFrame(() => {
      const box = scroller.getBoundingClientRect();
      const down = edgePull(event.clientY, box.top + headerHeight, box.bottom);
      const right = edgePull(event.clientX, box.left, box.right);
      if (down === 0 && right === 0) return;
      scroller.scrollBy(right * scrollPx, down * scrollPx);
      if (this.#drag !== undefined) this.#scrollAtEdge(event);
    });
  }

  // The menu's commands get the cell as their argument.
  #menu(event: MouseEvent): void {
    const grid = this.#grid;
    const cell = closest(event, '[data-cell]');
    const spot = cell && spotOf(grid, cell);
    if (cell === undefined || spot === undefined) return;
    if (!this.#inside(spot)) grid.select(selectSpot(spot));
    const [row = '', occurrence = '0'] = (grid.view.lines.keys[spot.row] ?? '').split('#');
    cell.dataset['vscodeContext'] = JSON.stringify({
      webviewSection: spot.column === 0 ? 'rowHeader' : 'cell',
      preventDefaultContextMenuItems: true,
      table: grid.table,
      row,
      occurrence: Number(occurrence),
      column: grid.view.columnKey(spot.column),
      canEdit: grid.editorAt({ row: spot.row, column: 0 }) !== 'none',
    });
  }
}

function edgePull(at: number, low: number, high: number): -1 | 0 | 1 {
  if (at < low + edgePx) return -1;
  return at > high - edgePx ? 1 : 0;
}

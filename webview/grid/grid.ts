import type { CellAddress, RowAddress } from '../../extension/protocol/messages.ts';
import type {
  CellEditor as CellEditorKind,
  CellView,
  SheetView,
} from '../../extension/protocol/views.ts';
import { idColumn, rowAddress, rowKey } from '../addresses.ts';
import { element } from '../dom.ts';
import type { State } from '../state.ts';
import type { GridHooks, GridParts } from './grid-parts.ts';
import type { EntryTarget } from '../suggest/suggester.ts';
import type { ViewMemory } from '../view-state.ts';
import { CellEditor, type Move } from './cell-editor.ts';
import { Editing } from './editing.ts';
import { GridView } from './grid-view.ts';
import { Groups } from './groups.ts';
import { HeldFocus, type FocusWish } from './held-focus.ts';
import { Hint } from './hint.ts';
import { sameColumns } from './lines.ts';
import { cellLabel, fittingWidth } from './describe.ts';
import { columnKeys, rowKeys, selectedRange } from './range.ts';
import {
  clampSpot,
  isSingle,
  nextInRange,
  selectSpot,
  type Selection,
  type Spot,
} from './selection.ts';

/** The grid as one thing: a sheet on screen, a cursor in it, one cell being edited. */
export class Grid {
  readonly root: HTMLElement;
  readonly view: GridView;
  readonly editor: CellEditor;
  readonly hint: Hint;
  readonly groups: Groups;
  readonly #state: State;
  readonly #memory: ViewMemory;
  readonly #hooks: GridHooks;
  readonly #focus: HeldFocus;
  #wanted: RowAddress | undefined;
  #tabStart: number | undefined;

  constructor(parts: GridParts) {
    const { state, memory, hooks } = parts;
    this.#state = state;
    this.#memory = memory;
    this.#hooks = hooks;
    this.view = new GridView(state, {
      width: (column) => this.view.widths[column] ?? 0,
      resize: (column, width, done) => {
        this.resizeColumn(column, width, done);
      },
      fit: (column) => {
        this.fitColumn(column);
      },
    });
    this.hint = new Hint(this.view);
    this.editor = new CellEditor(new Editing(this, hooks), parts);
    this.#focus = new HeldFocus(this.editor.entry);
    this.groups = new Groups(this, parts);
    this.root = element('div', { class: 'grid-frame' }, this.view.scroller, this.hint.root);
    this.view.scroller.addEventListener('scroll', () => {
      this.hint.hide();
      // The row that it stands in may become another's: what was typed must not show there.
      this.editor.shut();
    });
  }

  get table(): string {
    return this.view.sheet?.table ?? '';
  }

  get selection(): Selection | undefined {
    return this.view.selection;
  }

  get hasFocus(): boolean {
    return this.#focus.held;
  }

  get activeRow(): RowAddress | undefined {
    const key = this.view.lines.keys[this.selection?.active.row ?? -1];
    return key === undefined ? undefined : rowAddress(this.table, key);
  }

  get activeCell(): CellAddress | undefined {
    const { activeRow, selection } = this;
    if (activeRow === undefined || selection === undefined) return undefined;
    return { ...activeRow, column: this.view.columnKey(selection.active.column) };
  }

  get activeView(): CellView | undefined {
    return this.selection && this.view.cellAt(this.selection.active);
  }

  /** Shows a sheet, with the cursor where it was when the sheet was left. */
  show(sheet: SheetView, focus: FocusWish): void {
    const switched = this.table !== sheet.table;
    // What is being typed goes on where its cell stays.
    const stays = !switched && sameColumns(this.view.sheet, sheet);
    if (this.editor.editing && !stays) this.editor.finish('stay');
    if (switched) {
      this.view.selection = undefined;
      this.view.collapsed = this.groups.collapsedIn(sheet.table);
    }
    this.view.setSheet(sheet, this.#memory.now.widths[sheet.table] ?? {});
    if (switched) this.view.scrollTo(0, 0);
    if (this.selection === undefined) this.#startSelection(sheet.table);
    this.afterRepaint(focus);
  }

  /** After the state changed: repaints, lays the lines again if rows came, and keeps the cursor. */
  refresh(relay: boolean): void {
    const sheet = this.#state.sheet(this.table);
    if (sheet === undefined) return;
    const focus = this.hasFocus ? 'keep' : 'leave';
    const before = this.activeCell;
    if (sheet !== this.view.sheet)
      this.view.setSheet(sheet, this.#memory.now.widths[sheet.table] ?? {});
    else if (relay) this.view.relay();
    else this.view.paint();
    if (this.selection === undefined) this.#startSelection(sheet.table);
    if (this.#wanted !== undefined) this.goToRow(this.#wanted);
    this.afterRepaint(focus);
    if (before?.id !== this.activeCell?.id) this.#hooks.selection();
    this.#hooks.cursor();
  }

  /** The focus comes to the grid, or to the page until it has a sheet. */
  takeFocus(): void {
    this.#focus.take();
  }

  /** Puts the entry back into the active cell and lets it say what the cell holds now. */
  afterRepaint(focus: FocusWish): void {
    const { selection } = this;
    const cell = selection && this.view.cellElement(selection.active);
    if (selection === undefined || cell === undefined) return;
    if (this.editor.open && cell === this.editor.entry.parentElement) {
      this.editor.relabel(cellLabel(this.view, selection.active));
      return;
    }
    if (this.editor.editing) return;
    this.editor.attach(cell, cellLabel(this.view, selection.active));
    this.#focus.wish(focus);
  }

  select(
    selection: Selection,
    how: { readonly reveal?: Spot; readonly focus?: boolean } = {},
  ): void {
    const before = this.activeCell;
    this.#tabStart = undefined;
    this.view.reveal(how.reveal ?? selection.active);
    this.view.select(selection);
    this.afterRepaint(how.focus === false ? 'leave' : 'take');
    this.#showHint();
    const { activeCell } = this;
    if (activeCell !== undefined)
      this.#memory.setCursor(this.table, rowKey(activeCell), activeCell.column);
    if (before?.id !== activeCell?.id || before?.column !== activeCell?.column)
      this.#hooks.cursor();
    this.#hooks.selection();
  }

  /** Goes to a cell of this sheet; false if there is no such row. */
  goTo(cell: CellAddress, focus = true): boolean {
    this.groups.uncover(rowKey(cell));
    const row = this.view.lines.rowOfKey.get(rowKey(cell));
    if (row === undefined) return false;
    const column = this.columnOf(cell.column);
    this.select(selectSpot({ row, column: Math.max(0, column) }), { focus });
    return true;
  }

  /** Goes to a row once it is there: the answer to an insertion may come before the row does. */
  goToRow(row: RowAddress): void {
    this.#wanted = undefined;
    if (row.table === this.table) this.groups.uncover(rowKey(row));
    const index = this.view.lines.rowOfKey.get(rowKey(row));
    if (row.table !== this.table || index === undefined) {
      this.#wanted = row;
      return;
    }
    const column = Math.max(1, this.selection?.active.column ?? 1);
    this.select(selectSpot({ row: index, column: Math.min(column, this.view.bounds.columns - 1) }));
  }

  columnOf(key: string): number {
    if (key === idColumn) return 0;
    return (this.view.sheet?.columns.findIndex((column) => column.key === key) ?? -1) + 1;
  }

  /** What typing into the active cell edits; `undefined` where nothing may be typed. */
  target(): EntryTarget | undefined {
    const { selection, activeCell } = this;
    if (selection === undefined || activeCell === undefined) return undefined;
    const editor = this.editorAt(selection.active);
    return editor === 'none' ? undefined : { cell: activeCell, editor };
  }

  /** How a cell takes typing, if at all. */
  editorAt(spot: Spot): CellEditorKind {
    const key = this.view.lines.keys[spot.row];
    const locked = key !== undefined && this.#state.row(this.table, key)?.locked === true;
    if (!this.#state.editable || key === undefined || locked) return 'none';
    // Settings of the job are named by the format: their ids are not typed.
    if (spot.column === 0) return this.table === 'job' ? 'none' : 'text';
    return this.view.columnView(spot.column)?.editor ?? 'none';
  }

  /** Why nothing may be typed into the active cell. */
  whyNot(): string {
    const { job } = this.#state;
    if (!this.#state.editable) return job?.message ?? 'The job is still being read.';
    const row = this.activeRow && this.#state.row(this.table, rowKey(this.activeRow));
    if (row?.locked === true) return `This row cannot be read: ${row.message}`;
    const column = this.view.columnView(this.selection?.active.column ?? 0)?.label ?? 'Id';
    return `${column} is a result: it is worked out, not typed.`;
  }

  /** Commits the open edit, if any; the cell's own checks follow from the host. */
  finish(): void {
    this.editor.finish('stay');
  }

  moveAfter(move: Move): void {
    const { selection, view } = this;
    if (selection === undefined || move === 'stay') return;
    const along = move === 'next' || move === 'previous' ? 'rows' : 'columns';
    const by = move === 'up' || move === 'previous' || move === 'left' ? -1 : 1;
    if (!isSingle(selection) && move !== 'left' && move !== 'right') {
      this.select(nextInRange(selection, along, by));
      return;
    }
    this.#step(selection.active, move, by, view.bounds);
  }

  resizeColumn(column: number, width: number, done: boolean): void {
    this.view.setWidth(column, width);
    if (done) this.#memory.setWidth(this.table, this.view.columnKey(column), width);
  }

  /** As wide as the longest text of the column, told by its letters: nothing is measured. */
  fitColumn(column: number): void {
    this.resizeColumn(column, fittingWidth(this.view, column), true);
  }

  /** Rows and columns of the selection, for sums and for rows to act on. */
  selected(): { readonly rows: readonly RowAddress[]; readonly columns: readonly string[] } {
    const range = selectedRange(this.view);
    if (range === undefined) return { rows: [], columns: [] };
    const rows = rowKeys(this.view, range).map((key) => rowAddress(this.table, key));
    return { rows, columns: columnKeys(this.view, range) };
  }

  // Enter after a run of Tabs goes below the cell that the run began at.
  #step(active: Spot, move: Move, by: 1 | -1, bounds: { rows: number; columns: number }): void {
    const sideways = move === 'next' || move === 'previous' || move === 'left' || move === 'right';
    const tabStart = this.#tabStart;
    let column = active.column;
    if (sideways) column += by;
    else if (move === 'down' && tabStart !== undefined) column = tabStart;
    const row = sideways ? active.row : active.row + by;
    this.select(selectSpot(clampSpot({ row, column }, bounds)));
    if (move === 'next' || move === 'previous') this.#tabStart = tabStart ?? active.column;
  }

  #startSelection(table: string): void {
    const { keys } = this.view.lines;
    if (keys.length === 0) return;
    const [row, column] = this.#memory.now.cursors[table] ?? [];
    const spot = {
      row: this.view.lines.rowOfKey.get(row ?? '') ?? 0,
      column:
        column === undefined ? Math.min(1, this.view.bounds.columns - 1) : this.columnOf(column),
    };
    this.view.reveal(spot);
    this.view.select(selectSpot(clampSpot(spot, this.view.bounds)));
    this.#hooks.cursor();
  }

  #showHint(): void {
    const { selection } = this;
    const view = this.activeView;
    this.hint.hide();
    if (selection === undefined || view === undefined || view.severity === '') return;
    if (this.hasFocus) this.hint.show(selection.active, view.message, view.severity);
    this.#hooks.say(view.message);
  }
}

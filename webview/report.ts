import type { CellAddress } from '../extension/protocol/messages.ts';
import { idColumn, sameCell } from './addresses.ts';
import type { Channel } from './channel.ts';
import type { Grid } from './grid/grid.ts';

const quietMs = 50;

/** Tells the host where the cursor is and what is selected, at most once in a while. */
export class Report {
  readonly #channel: Channel;
  readonly #grid: Grid;
  #waiting = false;
  #selection = false;
  #cursor: { readonly cell: CellAddress | undefined; readonly editing: boolean } | undefined;

  constructor(channel: Channel, grid: Grid) {
    this.#channel = channel;
    this.#grid = grid;
  }

  cursor(): void {
    this.#later();
  }

  selection(): void {
    this.#selection = true;
    this.#later();
  }

  #later(): void {
    if (this.#waiting) return;
    this.#waiting = true;
    setTimeout(() => {
      this.#waiting = false;
      this.#send();
    }, quietMs);
  }

  #send(): void {
    const cell = this.#grid.activeCell;
    const { entry, editing: editingCell } = this.#grid.editor;
    const { activeElement } = document;
    // Text is typed in the bars and the card too: row commands are not for their keys.
    const editing =
      editingCell ||
      (activeElement !== entry && activeElement?.matches('input, textarea') === true);
    const before = this.#cursor;
    if (before?.editing !== editing || !sameCell(before.cell, cell)) {
      this.#cursor = { cell, editing };
      this.#channel.post({ type: 'cursor', cell, editing });
    }
    if (!this.#selection) return;
    this.#selection = false;
    const { rows, columns } = this.#grid.selected();
    this.#channel.post({
      type: 'selection',
      table: this.#grid.table,
      rows,
      columns: columns.filter((column) => column !== idColumn),
    });
  }
}

import type { CellAddress, GridEdit, RowAddress } from '../extension/protocol/messages.ts';
import type { ProblemView, SheetView } from '../extension/protocol/views.ts';
import { idColumn } from './addresses.ts';
import { askText, pickOne } from './dialogs.ts';
import type { Edits } from './edits.ts';
import { clearEdits, fillDownEdits } from './grid/clipboard.ts';
import type { Grid } from './grid/grid.ts';
import { askKit, askTemplate } from './panes/kit-dialog.ts';
import { askTrace } from './panes/trace-dialog.ts';
import { showWhereFrom } from './panes/where-from.ts';
import type { State } from './state.ts';

export interface ActionParts {
  readonly state: State;
  readonly grid: Grid;
  readonly edits: Edits;
  readonly say: (text: string) => void;
  readonly goTo: (cell: CellAddress) => void;
}

/** Gestures on rows, kits and figures: the same from keys, buttons, menus and commands. */
export class Actions {
  readonly #parts: ActionParts;

  constructor(parts: ActionParts) {
    this.#parts = parts;
  }

  clear(): void {
    const { grid, edits, say } = this.#parts;
    const steps = clearEdits(grid);
    if (steps.length === 0) say('There is nothing to clear.');
    void edits.send(steps);
  }

  fillDown(): void {
    const { grid, edits } = this.#parts;
    void edits.send(fillDownEdits(grid));
  }

  /** Inserts a row below the cursor; asks what it is to be where the table has kinds. */
  async insertRow(kind: string): Promise<void> {
    const { grid, state, edits } = this.#parts;
    const sheet = state.sheet(grid.table);
    if (sheet === undefined || sheet.table === 'job' || !this.#mayEdit()) return;
    const after = grid.activeRow;
    const rowKind = kind === '' ? await pickKind(sheet) : kind;
    if (rowKind === undefined) return;
    await edits.send([{ kind: 'insert', table: sheet.table, rowKind, after }]);
  }

  duplicateRows(): void {
    void this.#parts.edits.send(this.#rows().map((row) => ({ kind: 'duplicate', row })));
  }

  deleteRows(): void {
    const rows = this.#rows();
    void this.#parts.edits.send(rows.map((row) => ({ kind: 'delete', row })));
    const [first] = rows;
    if (first !== undefined)
      this.#parts.say(
        rows.length === 1 ? `Deleted ${first.id}.` : `Deleted ${String(rows.length)} rows.`,
      );
  }

  moveRows(by: -1 | 1): void {
    // The row in front goes first, so that the rows keep their order among themselves.
    const rows = by < 0 ? this.#rows() : [...this.#rows()].reverse();
    void this.#parts.edits.send(rows.map((row) => ({ kind: 'move', row, by })));
  }

  async renameRow(): Promise<void> {
    const row = this.#parts.grid.activeRow;
    if (row === undefined || row.table === 'job' || !this.#mayEdit()) return;
    const id = await askText({
      title: `Rename ${row.id}`,
      label: 'New id: small letters, digits and _; every formula follows',
      value: row.id,
      agree: 'Rename',
    });
    if (id !== undefined && id.trim() !== '' && id !== row.id)
      await this.#parts.edits.send([{ kind: 'rename', row, id: id.trim() }]);
  }

  async insertKit(kit: string): Promise<void> {
    const { grid, state, edits } = this.#parts;
    if (!this.#mayEdit()) return;
    const options = (state.job?.kits ?? []).map(({ id, name, help }) => ({
      value: id,
      label: name,
      detail: help,
    }));
    const chosen = kit === '' ? await pickOne('Insert kit', options) : kit;
    if (chosen === undefined) return;
    const answers = await askKit((question) => edits.ask(question), chosen, grid.activeRow);
    if (answers !== undefined) await edits.send([{ kind: 'kit', kit: chosen, answers }]);
  }

  /** Asks the questions that the job's template has left open. */
  async answerAsks(): Promise<void> {
    const { edits, say } = this.#parts;
    if (!this.#mayEdit()) return;
    const answers = await askTemplate((question) => edits.ask(question));
    if (answers === 'nothing') say('This job has no open questions of a template.');
    else if (answers !== undefined) await edits.send([{ kind: 'answer', answers }]);
  }

  /** Makes the outline of the row under the cursor from measured points. */
  async traceOutline(): Promise<void> {
    const { grid, edits, say } = this.#parts;
    const row = grid.activeRow;
    if (!this.#mayEdit()) return;
    if (row?.table !== 'part') {
      say('Put the cursor on the part whose outline was measured, then trace it.');
      return;
    }
    const cell = { ...row, column: 'shape' };
    const agreed = await askTrace((question) => edits.ask(question), cell);
    if (agreed === undefined) return;
    const reply = await edits.ask({ ask: 'write-trace', ...agreed, cell });
    if (reply === undefined) return;
    say(reply.ok ? `The outline of ${row.id} is written.` : reply.message);
  }

  async whereFromLine(line: string): Promise<void> {
    const view = await this.#parts.edits.ask({ ask: 'where-from', line });
    if (view !== undefined) showWhereFrom(view, this.#parts.goTo);
  }

  async whereFromCell(): Promise<void> {
    const cell = this.#parts.grid.activeCell;
    if (cell === undefined || cell.column === idColumn) return;
    const view = await this.#parts.edits.ask({ ask: 'where-from-cell', cell });
    if (view !== undefined) showWhereFrom(view, this.#parts.goTo);
  }

  takeFix(problem: ProblemView, fix: number): void {
    const { table, row, occurrence, column, code } = problem;
    const cell = { table, id: row, occurrence, column };
    void this.#parts.edits.send([{ kind: 'fix', cell, code, fix }]);
  }

  /** One cell's typing, from the grid, the bar or the card. An id is renamed instead. */
  commit(cell: CellAddress, text: string, before: string): void {
    if (text === before) return;
    const edit: GridEdit =
      cell.column === idColumn && cell.table !== 'job'
        ? { kind: 'rename', row: rowOf(cell), id: text.trim() }
        : { kind: 'type', cell, text };
    void this.#parts.edits.send([edit]);
  }

  #mayEdit(): boolean {
    if (this.#parts.state.editable) return true;
    this.#parts.say(this.#parts.grid.whyNot());
    return false;
  }

  #rows(): readonly RowAddress[] {
    const { grid } = this.#parts;
    return grid.table === 'job' ? [] : grid.selected().rows;
  }
}

function rowOf({ table, id, occurrence }: CellAddress): RowAddress {
  return { table, id, occurrence };
}

async function pickKind(sheet: SheetView): Promise<string | undefined> {
  if (sheet.kinds.length === 0) return '';
  return pickOne(
    `Insert ${sheet.noun}`,
    sheet.kinds.map(({ id, label, group }) => ({ value: id, label, detail: group })),
  );
}

import type { ActualRowView } from '../../extension/protocol/actuals-view.ts';
import type { CellAddress } from '../../extension/protocol/messages.ts';
import { element, setAttribute, setText } from '../dom.ts';
import type { Popup } from '../suggest/popup.ts';
import type { Ask, EntryTarget } from '../suggest/suggester.ts';
import { TextEntry, type EntryEnd } from '../text-entry.ts';
import { goButton } from './lines.ts';

/** What typing beside the grid goes through. */
export interface ActualHooks {
  readonly ask: Ask;
  readonly popup: Popup;
  readonly editable: () => boolean;
  /** Resolves to whether it was taken. */
  readonly type: (cell: CellAddress, text: string) => Promise<boolean>;
  readonly backToGrid: () => void;
}

function cell(name: string, ...children: readonly Node[]): HTMLElement {
  return element('td', { class: name, attributes: { role: 'cell' } }, ...children);
}

/** One row of estimate against actual: its name, both figures, and the entry for what it took. */
export class ActualLine {
  readonly root: HTMLElement;
  readonly #hooks: ActualHooks;
  readonly #walk: (by: 1 | -1) => void;
  readonly #entry: TextEntry;
  readonly #name: HTMLElement;
  readonly #of = element('span', { class: 'small' });
  readonly #estimated = cell('actual-estimated');
  readonly #actual = element('span', { class: 'small' });
  readonly #difference = cell('number actual-difference');
  readonly #problem = cell('actual-problem');
  #row: ActualRowView;
  /** Text that was sent and is not answered yet: it stands until it is. */
  #sent: string | undefined;

  constructor(row: ActualRowView, hooks: ActualHooks, walk: (by: 1 | -1) => void) {
    this.#row = row;
    this.#hooks = hooks;
    this.#walk = walk;
    const { table, id, occurrence } = row.cell;
    this.#name = goButton(table, id, occurrence);
    const area = element('textarea', {
      class: 'input actual-entry',
      attributes: { rows: '1', spellcheck: 'false', autocomplete: 'off', wrap: 'off' },
    });
    this.#entry = new TextEntry(
      area,
      {
        target: () => this.#target(),
        typed: () => this.#sent ?? this.#row.said.typed,
        shown: () => this.#sent ?? this.#row.said.shown,
        commit: (target, text, end) => {
          this.#commit(target, text, end);
        },
        cancelled: hooks.backToGrid,
      },
      hooks,
    );
    this.root = element(
      'tr',
      { class: 'actual-line', data: { actual: id }, attributes: { role: 'row' } },
      element('th', { attributes: { scope: 'row', role: 'rowheader' } }, this.#name, this.#of),
      this.#estimated,
      cell('actual-took', area, this.#actual),
      this.#difference,
      this.#problem,
    );
    this.paint(row);
  }

  paint(row: ActualRowView): void {
    this.#row = row;
    this.#sent = undefined;
    const { name, of, estimated, said, actual, difference, problem } = row;
    setText(this.#name, name);
    setText(this.#of, of);
    setText(this.#estimated, estimated);
    setText(this.#actual, actual === '' ? '' : `= ${actual}`);
    setText(this.#difference, difference);
    setText(this.#problem, problem);
    this.#problem.hidden = problem === '';
    const { entry } = this.#entry;
    setAttribute(entry, 'aria-label', `${name}, took`);
    setAttribute(entry, 'aria-invalid', said.severity === 'error' ? 'true' : undefined);
    entry.readOnly = !this.#hooks.editable();
    this.#entry.refresh();
  }

  #target(): EntryTarget | undefined {
    if (!this.#hooks.editable()) return undefined;
    return { cell: this.#row.cell, editor: 'text' };
  }

  #commit({ cell: at }: EntryTarget, text: string, end: EntryEnd): void {
    if (text !== this.#row.said.typed) void this.#send(at, text);
    if (end === 'enter') this.#walk(1);
    else if (end === 'shift-enter') this.#walk(-1);
  }

  async #send(at: EntryTarget['cell'], text: string): Promise<void> {
    this.#sent = text;
    if (await this.#hooks.type(at, text)) return;
    this.#sent = undefined;
    this.#entry.refresh();
  }
}

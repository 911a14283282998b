import type { CellAddress } from '../../extension/protocol/messages.ts';
import type { CellView } from '../../extension/protocol/views.ts';
import { rowKey } from '../addresses.ts';
import { element, setAttribute, setText } from '../dom.ts';
import type { Popup } from '../suggest/popup.ts';
import type { Ask, EntryTarget } from '../suggest/suggester.ts';
import { TextEntry, type EntryEnd } from '../text-entry.ts';

export interface FormulaBarHooks {
  readonly target: () => EntryTarget | undefined;
  readonly view: () => CellView | undefined;
  readonly begun: () => void;
  readonly commit: (cell: CellAddress, text: string, end: EntryEnd) => void;
  readonly cancelled: () => void;
}

/** The active cell's name, its text as it stands in the file, and why it has no answer. */
export class FormulaBar {
  readonly root: HTMLElement;
  readonly #name = element('span', { class: 'cell-name' });
  readonly #message = element('span', { class: 'cell-message' });
  readonly #entry: TextEntry;
  readonly #hooks: FormulaBarHooks;

  constructor(hooks: FormulaBarHooks, parts: { readonly popup: Popup; readonly ask: Ask }) {
    this.#hooks = hooks;
    const entry = element('textarea', {
      class: 'bar-entry',
      data: { entry: 'bar' },
      attributes: {
        rows: '1',
        spellcheck: 'false',
        autocomplete: 'off',
        wrap: 'off',
        'aria-label': 'Text of the cell',
      },
    });
    this.#entry = new TextEntry(
      entry,
      {
        target: hooks.target,
        typed: () => hooks.view()?.typed ?? '',
        shown: () => shownText(hooks.view()),
        begun: hooks.begun,
        commit: (target, text, end) => {
          hooks.commit(target.cell, text, end);
        },
        cancelled: hooks.cancelled,
      },
      parts,
    );
    this.root = element(
      'div',
      { class: 'formula-bar' },
      this.#name,
      element('span', { class: 'fx', text: 'ƒx', attributes: { 'aria-hidden': 'true' } }),
      entry,
      this.#message,
    );
  }

  paint(cell: CellAddress | undefined): void {
    const view = this.#hooks.view();
    setText(this.#name, cell === undefined ? '' : `${rowKey(cell)}.${cell.column}`);
    const message = view?.severity === '' ? '' : (view?.message ?? '');
    setText(this.#message, message);
    this.#message.title = message;
    setAttribute(this.#message, 'data-severity', view?.severity);
    const { entry } = this.#entry;
    entry.readOnly = this.#hooks.target() === undefined;
    entry.placeholder = view?.look === 'default' ? `${view.shown} (default)` : '';
    this.#entry.refresh();
  }

  /** Shows what is being typed in the cell. */
  mirror(text: string): void {
    if (!this.#entry.editing && this.#entry.entry.value !== text) this.#entry.entry.value = text;
  }

  /** Goes on with a text that was begun in the cell. */
  takeOver(text: string): void {
    this.#entry.takeOver(text);
  }
}

// A result has no text in the file: the bar says what it comes to.
function shownText(view: CellView | undefined): string {
  if (view === undefined) return '';
  return view.look === 'computed' ? view.shown : view.typed;
}

import { element, setAttribute } from '../dom.ts';
import type { Ask, EntryTarget } from '../suggest/suggester.ts';
import { Suggester } from '../suggest/suggester.ts';
import type { Popup } from '../suggest/popup.ts';

/** Where the cursor goes after an edit. */
export type Move = 'stay' | 'up' | 'down' | 'left' | 'right' | 'next' | 'previous';

/** `over`: typing began it, arrows finish it; `caret`: arrows move within the text. */
export type EditMode = 'off' | 'over' | 'caret';

/** What the textarea stands for while nothing is edited. */
export interface CellLabel {
  readonly label: string;
  readonly text: string;
}

export interface EditorHooks {
  /** The active cell; `undefined` when it takes no typing. */
  readonly target: () => EntryTarget | undefined;
  readonly startText: () => string;
  readonly changed: (text: string, mode: EditMode) => void;
  /** The edit has ended; its text stands in the entry until `shut` is called. */
  readonly commit: (text: string, move: Move, shut: () => void) => void;
  readonly fill: (text: string) => void;
  readonly cancelled: () => void;
  readonly refuseTyping: () => void;
  /** A key while nothing is edited. */
  readonly key: (event: KeyboardEvent) => void;
  /** The formula bar takes the unfinished text over. */
  readonly handOver: (text: string) => boolean;
}

const arrowMoves: Readonly<Record<string, Move>> = {
  ArrowUp: 'up',
  ArrowDown: 'down',
  ArrowLeft: 'left',
  ArrowRight: 'right',
};

/** A cell is one line in the file: newlines pasted into it become spaces. */
function oneLine(text: string): string {
  return text.replace(/[\r\n]+/g, ' ');
}

/**
 * The one textarea of the grid. It sits in the active cell and has the focus there: keys, input
 * methods and the clipboard reach it before any editing begins, and what is typed stays in it.
 */
export class CellEditor {
  readonly entry: HTMLTextAreaElement;
  readonly #hooks: EditorHooks;
  readonly #suggester: Suggester;
  #mode: EditMode = 'off';
  #moving = false;
  #label: CellLabel = { label: '', text: '' };

  constructor(hooks: EditorHooks, parts: { readonly popup: Popup; readonly ask: Ask }) {
    this.#hooks = hooks;
    this.entry = element('textarea', {
      class: 'cell-entry',
      attributes: { rows: '1', spellcheck: 'false', autocomplete: 'off', wrap: 'off' },
    });
    this.#suggester = new Suggester(this.entry, {
      popup: parts.popup,
      ask: parts.ask,
      taken: () => {
        this.finish('down');
      },
    });
    this.#listen();
  }

  get mode(): EditMode {
    return this.#mode;
  }

  get editing(): boolean {
    return this.#mode !== 'off';
  }

  /** The entry shows what was typed, maybe a little longer than it takes typing. */
  get open(): boolean {
    return this.entry.classList.contains('open');
  }

  /** Moves into a cell. Never called while editing. */
  attach(cell: HTMLElement, label: CellLabel): void {
    this.#label = label;
    this.shut();
    if (this.entry.parentElement !== cell) {
      this.#moving = true;
      cell.append(this.entry);
      this.#moving = false;
    }
    this.#rest();
  }

  /** A repaint changed what the cell shows. */
  relabel(label: CellLabel): void {
    if (label.label === this.#label.label && label.text === this.#label.text) return;
    this.#label = label;
    if (!this.open) this.#rest();
  }

  begin(mode: 'over' | 'caret', text?: string): void {
    const target = this.#hooks.target();
    if (target === undefined) {
      this.#hooks.refuseTyping();
      return;
    }
    const start = this.#hooks.startText();
    const value = text ?? start;
    this.#enter(mode);
    if (this.entry.value !== value) this.entry.value = value;
    const pick = target.editor === 'choice' || target.editor === 'link';
    if (pick && text === undefined) this.entry.select();
    else this.entry.setSelectionRange(value.length, value.length);
    this.#hooks.changed(value, mode);
    this.#suggester.open(target, text === undefined);
  }

  /** Ends the edit and hands the text over. */
  finish(move: Move): void {
    if (!this.editing) return;
    const text = oneLine(this.entry.value);
    this.#end();
    this.#hooks.commit(text, move, this.shut.bind(this));
  }

  cancel(): void {
    if (!this.editing) return;
    this.#leave();
    this.#hooks.cancelled();
  }

  #enter(mode: 'over' | 'caret'): void {
    this.#mode = mode;
    this.#open(true);
  }

  #leave(): void {
    this.#end();
    this.shut();
  }

  #end(): void {
    this.#mode = 'off';
    this.#suggester.close();
  }

  /** Shows what the cell holds again, unless something is being typed. */
  shut(): void {
    if (this.editing || !this.open) return;
    this.#open(false);
    this.#rest();
  }

  // The row is raised while the entry reaches over its neighbours.
  #open(open: boolean): void {
    this.entry.classList.toggle('open', open);
    this.entry.parentElement?.classList.toggle('editing', open);
    this.entry.closest('.row')?.classList.toggle('edited', open);
  }

  // At rest the entry holds the cell's text, selected: the next letter replaces it, Copy is
  // enabled, and screen readers say what the cell holds.
  #rest(): void {
    const { label, text } = this.#label;
    if (this.entry.value !== text) this.entry.value = text;
    setAttribute(this.entry, 'aria-label', label);
    if (document.activeElement === this.entry) this.entry.select();
  }

  #listen(): void {
    const { entry } = this;
    entry.addEventListener('keydown', (event) => {
      if (event.isComposing) return;
      if (this.editing) this.#editingKey(event);
      else this.#hooks.key(event);
    });
    entry.addEventListener('beforeinput', (event) => {
      if (this.editing) return;
      this.shut();
      const history = event.inputType.startsWith('history');
      if (history || event.inputType === 'insertLineBreak') event.preventDefault();
      else if (this.#hooks.target() === undefined) {
        event.preventDefault();
        this.#hooks.refuseTyping();
      }
    });
    entry.addEventListener('compositionstart', () => {
      if (!this.editing && this.#hooks.target() !== undefined) this.#enter('over');
    });
    entry.addEventListener('input', () => {
      this.#typed();
    });
    entry.addEventListener('focus', () => {
      if (!this.editing) this.#rest();
    });
    entry.addEventListener('blur', (event) => {
      if (!this.#moving) this.#blurred(event);
    });
    entry.addEventListener('mousedown', (event) => {
      if (this.editing) event.stopPropagation();
    });
  }

  #typed(): void {
    const target = this.#hooks.target();
    if (target === undefined) {
      this.#rest();
      return;
    }
    if (!this.editing) this.#enter('over');
    this.#hooks.changed(this.entry.value, this.#mode);
    if (this.#suggester.active) void this.#suggester.update();
    else this.#suggester.open(target, false);
  }

  #blurred(event: FocusEvent): void {
    if (!this.editing) return;
    const to = event.relatedTarget;
    if (to instanceof HTMLElement && to.dataset['entry'] === 'bar') {
      const text = this.entry.value;
      if (this.#hooks.handOver(text)) {
        this.#leave();
        return;
      }
    }
    // The window lost the focus, not the cell: the text waits for its writer.
    if (to === null && !document.hasFocus()) return;
    this.finish('stay');
  }

  #editingKey(event: KeyboardEvent): void {
    const outcome = this.#suggester.key(event);
    if (outcome !== 'unused') {
      event.preventDefault();
      event.stopPropagation();
      if (outcome === 'taken') this.finish(event.key === 'Tab' ? 'next' : 'down');
      return;
    }
    const ctrl = event.ctrlKey || event.metaKey;
    if (ctrl && this.#ctrlKey(event)) return;
    if (this.#endingKey(event)) {
      event.preventDefault();
      event.stopPropagation();
    } else if (!ctrl && !/^F\d/.test(event.key)) event.stopPropagation();
  }

  // Undo inside the text is the text's own; VS Code would undo the document instead.
  #ctrlKey(event: KeyboardEvent): boolean {
    const key = event.key.toLowerCase();
    if (['z', 'y', 'a', 'c', 'x', 'v'].includes(key) && !event.altKey) {
      if (key === 'z' || key === 'y' || key === 'a') event.stopPropagation();
      return true;
    }
    if (key === 's') {
      this.finish('stay');
      return true;
    }
    if (key !== 'enter') return false;
    event.preventDefault();
    event.stopPropagation();
    const text = oneLine(this.entry.value);
    this.#leave();
    this.#hooks.fill(text);
    return true;
  }

  #endingKey(event: KeyboardEvent): boolean {
    switch (event.key) {
      case 'Enter':
        this.finish(event.shiftKey ? 'up' : 'down');
        return true;
      case 'Tab':
        this.finish(event.shiftKey ? 'previous' : 'next');
        return true;
      case 'Escape':
        this.cancel();
        return true;
      case 'F2':
        this.#mode = this.#mode === 'over' ? 'caret' : 'over';
        return true;
      default:
        return this.#arrowEnds(event);
    }
  }

  #arrowEnds(event: KeyboardEvent): boolean {
    const move = arrowMoves[event.key];
    if (move === undefined || event.shiftKey || event.altKey || event.ctrlKey) return false;
    const formula = this.entry.value.startsWith('=');
    if (this.#mode !== 'over' || formula)
      return event.key === 'ArrowUp' || event.key === 'ArrowDown';
    this.finish(move);
    return true;
  }
}

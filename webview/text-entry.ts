import { Suggester, type Ask, type EntryTarget } from './suggest/suggester.ts';
import type { Popup } from './suggest/popup.ts';

export type EntryEnd = 'enter' | 'shift-enter' | 'blur' | 'tab' | 'shift-tab';

/** What a one-line entry outside the grid needs: the formula bar and the fields of the row card. */
export interface EntryHooks {
  readonly target: () => EntryTarget | undefined;
  /** Text that editing starts from, and what is shown while the entry is left alone. */
  readonly typed: () => string;
  readonly shown: () => string;
  readonly begun?: () => void;
  readonly changed?: (text: string) => void;
  readonly commit: (target: EntryTarget, text: string, end: EntryEnd) => void;
  readonly cancelled: (end: 'escape') => void;
}

/** A textarea that edits one cell the way the grid does: suggestions, Enter, Escape, own undo. */
export class TextEntry {
  readonly entry: HTMLTextAreaElement;
  readonly #hooks: EntryHooks;
  readonly #suggester: Suggester;
  // Fixed when the edit begins: the cursor may go elsewhere before the entry loses the focus.
  #target: EntryTarget | undefined;
  #start = '';

  constructor(
    entry: HTMLTextAreaElement,
    hooks: EntryHooks,
    parts: { readonly popup: Popup; readonly ask: Ask },
  ) {
    this.entry = entry;
    this.#hooks = hooks;
    this.#suggester = new Suggester(entry, {
      popup: parts.popup,
      ask: parts.ask,
      taken: () => {
        this.#commit('enter');
      },
    });
    entry.addEventListener('focus', () => {
      this.#focused();
    });
    entry.addEventListener('click', () => {
      if (this.#target !== undefined && isPicker(this.#target))
        this.#suggester.open(this.#target, true);
    });
    entry.addEventListener('input', () => {
      this.#typed();
    });
    entry.addEventListener('keydown', (event) => {
      if (!event.isComposing) this.#key(event);
    });
    entry.addEventListener('blur', () => {
      if (this.#target !== undefined && document.hasFocus()) this.#commit('blur');
    });
  }

  get editing(): boolean {
    return this.#target !== undefined;
  }

  /** Shows the cell as it is now, unless it is being edited. */
  refresh(): void {
    if (this.editing) return;
    const text = this.#hooks.shown();
    if (this.entry.value !== text) this.entry.value = text;
  }

  /** Begins with a text that was typed elsewhere. */
  takeOver(text: string): void {
    this.#target = this.#hooks.target();
    this.#start = this.#hooks.typed();
    this.entry.value = text;
  }

  #focused(): void {
    if (this.editing) return;
    const target = this.#hooks.target();
    if (target === undefined) return;
    this.#target = target;
    this.#start = this.#hooks.typed();
    if (this.entry.value !== this.#start) this.entry.value = this.#start;
    this.entry.select();
    this.#hooks.begun?.();
  }

  #typed(): void {
    const target = this.#target;
    if (target === undefined) return;
    this.#hooks.changed?.(this.entry.value);
    if (this.#suggester.active) void this.#suggester.update();
    else this.#suggester.open(target, false);
  }

  #key(event: KeyboardEvent): void {
    const outcome = this.#suggester.key(event);
    if (outcome !== 'unused') {
      take(event);
      if (outcome === 'taken') this.#commit('enter');
      return;
    }
    const ctrl = event.ctrlKey || event.metaKey;
    const key = event.key.toLowerCase();
    if (ctrl && ['z', 'y', 'a'].includes(key)) event.stopPropagation();
    else if (ctrl && key === 's') this.#commit('blur');
    else if (!ctrl) this.#plainKey(event);
  }

  #plainKey(event: KeyboardEvent): void {
    if (event.key === 'Enter') {
      take(event);
      this.#commit(event.shiftKey ? 'shift-enter' : 'enter');
    } else if (event.key === 'Escape') {
      take(event);
      this.#cancel();
    } else if (event.key === 'F4' || (event.altKey && event.key === 'ArrowDown')) {
      if (this.#target === undefined) return;
      take(event);
      this.#suggester.open(this.#target, true);
    } else if (!/^F\d/.test(event.key)) event.stopPropagation();
  }

  #commit(end: EntryEnd): void {
    const target = this.#target;
    const text = this.entry.value.replace(/[\r\n]+/g, ' ');
    this.#suggester.close();
    const changed = text !== this.#start;
    // Ctrl+S keeps the focus here: the edit goes on from the text that was sent.
    if (document.activeElement === this.entry && end === 'blur') this.#start = text;
    else this.#target = undefined;
    if (target === undefined) return;
    if (changed || end !== 'blur') this.#hooks.commit(target, changed ? text : this.#start, end);
    // What was typed stands there until the answer to it is painted.
    if (!changed) this.refresh();
  }

  #cancel(): void {
    this.#suggester.close();
    this.#target = undefined;
    this.refresh();
    this.#hooks.cancelled('escape');
  }
}

function isPicker(target: EntryTarget): boolean {
  return target.editor === 'choice' || target.editor === 'link';
}

function take(event: KeyboardEvent): void {
  event.preventDefault();
  event.stopPropagation();
}

import type { Answers, CellAddress, Question } from '../../extension/protocol/messages.ts';
import type { CellEditor, ChoiceOption } from '../../extension/protocol/views.ts';
import { cellKey } from '../addresses.ts';
import { completionSuggestions, matchingChoices, type Suggestion } from './options.ts';
import type { Popup, Suggestions } from './popup.ts';

/** Asks the host; `undefined` when it gave no answer. */
export type Ask = <Kind extends Exclude<Question['ask'], 'edit'>>(
  question: Extract<Question, { readonly ask: Kind }>,
) => Promise<Answers[Kind] | undefined>;

/** The cell that an entry edits, and how. */
export interface EntryTarget {
  readonly cell: CellAddress;
  readonly editor: CellEditor;
}

type TextEntry = HTMLTextAreaElement;

/** What a key did to the suggestions. `taken` finished a choice: the entry commits it. */
export type KeyOutcome = 'unused' | 'used' | 'taken';

/** Suggestions for one text entry: choices for choice and link cells, completion for formulas. */
export class Suggester {
  readonly #entry: TextEntry;
  readonly #popup: Popup;
  readonly #ask: Ask;
  readonly #taken: () => void;
  #target: EntryTarget | undefined;
  #options: { readonly cell: string; readonly list: readonly ChoiceOption[] } | undefined;
  #start = 0;
  #end = 0;
  #question = 0;
  #stepped = false;

  /** `taken` is called when a choice was made with the mouse. */
  constructor(entry: TextEntry, parts: { popup: Popup; ask: Ask; taken: () => void }) {
    this.#entry = entry;
    this.#popup = parts.popup;
    this.#ask = parts.ask;
    this.#taken = parts.taken;
    entry.setAttribute('aria-autocomplete', 'list');
  }

  get #isChoice(): boolean {
    const editor = this.#target?.editor;
    return editor === 'choice' || editor === 'link';
  }

  get active(): boolean {
    return this.#target !== undefined;
  }

  /** Begins for a cell; `all` lists every choice before anything is typed. */
  open(target: EntryTarget, all: boolean): void {
    this.close();
    this.#target = target;
    if (this.#isChoice) void this.#loadChoices(all);
    else void this.update();
  }

  /** After each change of the text or the caret. */
  async update(): Promise<void> {
    const target = this.#target;
    if (target === undefined) return;
    if (this.#isChoice && !this.#entry.value.startsWith('=')) {
      this.#showChoices();
      return;
    }
    if (!this.#entry.value.startsWith('=')) {
      this.#popup.hide();
      return;
    }
    await this.#complete(target);
  }

  close(): void {
    this.#question += 1;
    this.#target = undefined;
    this.#stepped = false;
    this.#popup.hide();
  }

  /** Keys that belong to the list while it is shown. */
  key(event: KeyboardEvent): KeyOutcome {
    if (!this.#popup.shown || this.#target === undefined) return 'unused';
    switch (event.key) {
      case 'ArrowDown':
        return this.#step(1, event);
      case 'ArrowUp':
        return this.#step(-1, event);
      case 'Escape':
        this.#popup.hide();
        return this.#isChoice ? 'unused' : 'used';
      case 'Tab':
        return event.shiftKey ? 'unused' : this.#takeChosen(true);
      case 'Enter':
        return event.ctrlKey || event.altKey ? 'unused' : this.#takeChosen(false);
      default:
        return 'unused';
    }
  }

  #step(by: 1 | -1, event: KeyboardEvent): KeyOutcome {
    if (!this.#popup.listed || event.shiftKey) return 'unused';
    this.#stepped = true;
    this.#popup.step(by);
    return 'used';
  }

  // Enter finishes what was typed; it takes a completion only after the arrows chose one. In a
  // picker the marked line is what the person sees chosen, so Enter takes it.
  #takeChosen(tab: boolean): KeyOutcome {
    const item = this.#popup.chosen;
    if (item === undefined) return 'unused';
    if (this.#isChoice) {
      this.#replace(item, true);
      return 'taken';
    }
    if (!tab && !this.#stepped) return 'unused';
    this.#replace(item, false);
    return 'used';
  }

  #replace(item: Suggestion, whole: boolean): void {
    const entry = this.#entry;
    const { value } = entry;
    const start = whole ? 0 : Math.min(this.#start, value.length);
    const end = whole ? value.length : Math.min(this.#end, value.length);
    entry.setRangeText(item.insert, start, end, 'end');
    this.#stepped = false;
    if (whole) this.#popup.hide();
    else entry.dispatchEvent(new Event('input', { bubbles: true }));
  }

  async #loadChoices(all: boolean): Promise<void> {
    const target = this.#target;
    if (target === undefined) return;
    const question = (this.#question += 1);
    const list = await this.#ask({ ask: 'choices', cell: target.cell });
    if (question !== this.#question || list === undefined) return;
    this.#options = { cell: cellKey(target.cell), list };
    if (all) this.#showAll();
    else this.#showChoices();
  }

  // Before anything is typed the list marks what the cell holds, so Enter changes nothing.
  #showAll(): void {
    const items = matchingChoices(this.#options?.list ?? [], '');
    const chosen = items.findIndex((item) => item.insert === this.#entry.value.trim());
    this.#show({ items, signature: undefined, preview: '' }, chosen);
  }

  #showChoices(): void {
    const target = this.#target;
    if (target === undefined || this.#options?.cell !== cellKey(target.cell)) return;
    const typed = this.#entry.value;
    const items = matchingChoices(this.#options.list, typed);
    const preview = items.length === 0 ? `Nothing here fits “${typed}”.` : '';
    this.#show({ items, signature: undefined, preview }, typed.trim() === '' ? -1 : 0);
  }

  async #complete(target: EntryTarget): Promise<void> {
    const question = (this.#question += 1);
    const text = this.#entry.value;
    const caret = this.#entry.selectionStart;
    const answer = await this.#ask({ ask: 'complete', cell: target.cell, text, caret });
    if (question !== this.#question || answer === undefined) return;
    this.#start = answer.start;
    this.#end = answer.end;
    this.#stepped = false;
    const { signature, preview } = answer;
    this.#show({ items: completionSuggestions(answer.items), signature, preview }, 0);
  }

  #show(suggestions: Suggestions, chosen: number): void {
    this.#popup.show(this.#entry, suggestions, {
      chosen,
      take: (item) => {
        this.#replace(item, this.#isChoice);
        if (this.#isChoice) this.#taken();
      },
    });
  }
}

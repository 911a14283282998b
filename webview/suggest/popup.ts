import type { SignatureView } from '../../extension/protocol/views.ts';
import { element, setAttribute, setHidden } from '../dom.ts';
import type { Suggestion } from './options.ts';

/** The list under the text being typed, with the signature of the function around the caret. */
export interface Suggestions {
  readonly items: readonly Suggestion[];
  readonly signature: SignatureView | undefined;
  readonly preview: string;
}

const listId = 'suggestions';

/** One popup for all text entries: only one has the focus. */
export class Popup {
  readonly root: HTMLElement;
  readonly #signature: HTMLElement;
  readonly #preview: HTMLElement;
  readonly #list: HTMLElement;
  #items: readonly Suggestion[] = [];
  #chosen = -1;
  #entry: HTMLElement | undefined;
  #take: (item: Suggestion) => void = () => undefined;

  constructor() {
    this.#signature = element('div', { class: 'signature' });
    this.#preview = element('div', { class: 'preview' });
    this.#list = element('div', {
      class: 'suggestion-list',
      attributes: { id: listId, role: 'listbox', 'aria-label': 'Suggestions' },
    });
    this.root = element(
      'div',
      { class: 'popup', attributes: { hidden: '' } },
      this.#signature,
      this.#preview,
      this.#list,
    );
    this.root.addEventListener('mousedown', (event) => {
      event.preventDefault();
      const line = event.target instanceof Element && event.target.closest('[data-suggestion]');
      if (!(line instanceof HTMLElement)) return;
      const item = this.#items[Number(line.dataset['suggestion'])];
      if (item !== undefined) this.#take(item);
    });
  }

  get shown(): boolean {
    return !this.root.hidden;
  }

  get listed(): boolean {
    return this.shown && this.#items.length > 0;
  }

  get chosen(): Suggestion | undefined {
    return this.listed ? this.#items[this.#chosen] : undefined;
  }

  /** Shows suggestions for the entry that has the focus; line `chosen` is marked (−1 for none). */
  show(
    entry: HTMLElement,
    suggestions: Suggestions,
    how: { readonly chosen: number; readonly take: (item: Suggestion) => void },
  ): void {
    const { items, signature, preview } = suggestions;
    if (items.length === 0 && signature === undefined && preview === '') {
      this.hide();
      return;
    }
    if (this.#entry !== entry) this.hide();
    this.#entry = entry;
    this.#items = items;
    this.#take = how.take;
    this.#signature.replaceChildren(...(signature === undefined ? [] : signatureParts(signature)));
    setHidden(this.#signature, signature === undefined);
    this.#preview.textContent = preview;
    setHidden(this.#preview, preview === '');
    this.#list.replaceChildren(...items.map(suggestionLine));
    setHidden(this.#list, items.length === 0);
    setHidden(this.root, false);
    this.#place(entry);
    setAttribute(entry, 'aria-controls', listId);
    this.#choose(Math.min(how.chosen, items.length - 1));
  }

  hide(): void {
    if (this.#entry !== undefined) {
      setAttribute(this.#entry, 'aria-controls', undefined);
      setAttribute(this.#entry, 'aria-activedescendant', undefined);
    }
    this.#entry = undefined;
    this.#items = [];
    setHidden(this.root, true);
  }

  /** Moves the choice, round at both ends. */
  step(by: number): void {
    const count = this.#items.length;
    if (count === 0) return;
    const from = this.#chosen < 0 && by < 0 ? 0 : this.#chosen;
    this.#choose((from + by + count) % count);
  }

  #choose(index: number): void {
    this.#chosen = index;
    [...this.#list.children].forEach((line, at) => {
      setAttribute(line, 'aria-selected', String(at === index));
    });
    const line = index < 0 ? undefined : this.#list.children[index];
    if (this.#entry !== undefined)
      setAttribute(this.#entry, 'aria-activedescendant', line === undefined ? undefined : line.id);
    line?.scrollIntoView({ block: 'nearest' });
  }

  #place(entry: HTMLElement): void {
    const box = entry.getBoundingClientRect();
    const { innerWidth, innerHeight } = window;
    const width = Math.min(420, innerWidth - 16);
    const left = Math.max(8, Math.min(box.left, innerWidth - width - 8));
    const below = innerHeight - box.bottom;
    const above = below < 180 && box.top > below;
    const { style } = this.root;
    style.setProperty('width', `${String(width)}px`);
    style.setProperty('left', `${String(left)}px`);
    style.setProperty('top', above ? 'auto' : `${String(box.bottom + 2)}px`);
    style.setProperty('bottom', above ? `${String(innerHeight - box.top + 2)}px` : 'auto');
    style.setProperty('max-height', `${String(Math.max(96, (above ? box.top : below) - 12))}px`);
  }
}

function suggestionLine(item: Suggestion, index: number): HTMLElement {
  return element(
    'div',
    {
      class: 'suggestion',
      data: { suggestion: String(index) },
      attributes: { id: `suggestion-${String(index)}`, role: 'option', 'aria-selected': 'false' },
    },
    item.mark === ''
      ? undefined
      : element('span', { class: 'mark', text: item.mark, attributes: { 'aria-hidden': 'true' } }),
    element('span', { class: 'label', text: item.label }),
    element('span', { class: 'detail', text: item.detail }),
  );
}

function signatureParts(signature: SignatureView): readonly HTMLElement[] {
  const call = element('div', { class: 'call' });
  call.append(`${signature.name}(`);
  signature.parameters.forEach((parameter, index) => {
    if (index > 0) call.append(', ');
    const active = index === signature.active;
    call.append(element(active ? 'strong' : 'span', { text: parameter.label }));
  });
  call.append(')');
  const parameter = signature.parameters[signature.active];
  return [
    call,
    ...(parameter === undefined || parameter.help === ''
      ? []
      : [element('div', { class: 'parameter', text: `${parameter.label}: ${parameter.help}` })]),
    element('div', { class: 'help', text: signature.help }),
    ...(signature.example === ''
      ? []
      : [element('div', { class: 'example', text: signature.example })]),
  ];
}

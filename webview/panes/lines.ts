import type { FactView } from '../../extension/protocol/mix-view.ts';
import { element, keyedChildren, setHidden, setText } from '../dom.ts';

/** A name that leads to its row; one without a row is plain. */
export function goButton(table: string, id: string, occurrence: number): HTMLElement {
  const plain = table === '';
  return element('button', {
    class: 'price-name',
    data: plain ? {} : { action: 'go-row', table, argument: id, occurrence: String(occurrence) },
    attributes: { type: 'button', ...(plain ? { disabled: '' } : {}) },
  });
}

/** A line with its name, words below it and a figure at its end. */
export function twoCells(name: HTMLElement): HTMLElement {
  return element(
    'li',
    { class: 'price-line' },
    element('div', { class: 'price-words' }, name, element('span', { class: 'small' })),
    element('span', { class: 'number' }),
  );
}

/** Writes name, words and figure of a line. */
export function paintCells(line: HTMLElement, texts: readonly [string, string, string]): void {
  const parts = line.querySelectorAll('.price-name, .small, .number');
  texts.forEach((text, index) => {
    const part = parts[index];
    if (part !== undefined) setText(part, text);
  });
}

/** Short remarks; the list is hidden where there are none. */
export function paintNotes(list: HTMLElement, notes: readonly string[]): void {
  setHidden(list, notes.length === 0);
  keyedChildren(list, notes, {
    key: (note) => note,
    make: (note) => element('li', { text: note }),
  });
}

/** Labels with what they say; the list is hidden where there are none. */
export function paintFacts(list: HTMLElement, facts: readonly FactView[]): void {
  setHidden(list, facts.length === 0);
  keyedChildren(list, facts, {
    key: ({ key }) => key,
    make: () => element('div', {}, element('dt'), element('dd')),
    paint: (child, { label, value }) => {
      const [term, text] = child.children;
      if (term !== undefined) setText(term, label);
      if (text !== undefined) setText(text, value);
    },
  });
}

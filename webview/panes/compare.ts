import type { CompareChange, CompareView } from '../../extension/protocol/compare-view.ts';
import { element } from '../dom.ts';
import { button } from '../form.ts';

const words: Readonly<Record<CompareChange['kind'], string>> = {
  added: 'added',
  changed: 'changed',
  removed: 'removed',
  moved: 'moved',
};

const signs: Readonly<Record<CompareChange['kind'], string>> = {
  added: '+',
  changed: '~',
  removed: '−',
  moved: '↕',
};

function figureTable({ figures }: CompareView): HTMLElement | undefined {
  const moved = figures.filter(({ change, before, after }) => change !== '' || before !== after);
  if (moved.length === 0) return undefined;
  const head = element(
    'tr',
    {},
    ...['', 'Before', 'After', 'Change'].map((text) =>
      element('th', { text, attributes: { scope: 'col' } }),
    ),
  );
  const rows = moved.map(({ label, before, after, change }) =>
    element(
      'tr',
      {},
      element('th', { text: label, attributes: { scope: 'row' } }),
      ...[before, after, change].map((text) => element('td', { text })),
    ),
  );
  return element('table', { class: 'compare-figures' }, head, ...rows);
}

function changeLine(change: CompareChange, index: number): HTMLElement {
  const { kind, place, before, after, effect, there, column } = change;
  const texts = column === '' ? after : `${before || '(blank)'} → ${after || '(blank)'}`;
  const inside = [
    element('span', {
      class: 'compare-sign',
      text: signs[kind],
      attributes: { 'aria-hidden': 'true' },
    }),
    element(
      'span',
      { class: 'problem-words' },
      element('span', { class: 'compare-place', text: place }),
      element('span', { class: 'visually-hidden', text: `, ${words[kind]}: ` }),
      element('span', { class: 'compare-texts', text: texts }),
      effect === '' ? undefined : element('span', { class: 'small', text: effect }),
    ),
  ];
  const line = there
    ? element(
        'button',
        {
          class: 'problem-go',
          data: { action: 'go-change', argument: String(index) },
          attributes: { type: 'button' },
        },
        ...inside,
      )
    : element('div', { class: 'problem-go compare-gone' }, ...inside);
  return element('li', { class: 'compare-change', data: { kind } }, line);
}

function toolbar(): HTMLElement {
  return element(
    'div',
    { class: 'compare-buttons' },
    button({
      action: 'previous-change',
      text: 'Previous',
      title: 'Previous change (Shift+Alt+F5)',
    }),
    button({ action: 'next-change', text: 'Next', title: 'Next change (Alt+F5)' }),
    button({ action: 'stop-comparing', text: 'Stop comparing' }),
  );
}

/** What differs from another version, with what it did; a click goes to the cell. */
export class ComparePane {
  readonly root = element('div', { class: 'compare-pane' });
  view: CompareView | undefined;
  /** Change that was gone to last. */
  #at: number | undefined;

  paint(view: CompareView | undefined): void {
    this.view = view;
    if (view === undefined) {
      this.#at = undefined;
      this.root.replaceChildren(
        element('p', {
          class: 'pane-empty',
          text: 'Not compared. The commands “Compare with HEAD”, “with Revision”, “with Branch” and “with File” hold the job against another version.',
        }),
      );
      return;
    }
    const { against, note, changes, followers } = view;
    const count = changes.length === 1 ? '1 change' : `${String(changes.length)} changes`;
    const parts = [
      element('p', {
        class: 'compare-title',
        text: `Compared with ${against}: ${changes.length === 0 ? 'no cell differs' : count}`,
        attributes: { role: 'status' },
      }),
      note === '' ? undefined : element('p', { class: 'compare-note', text: note }),
      toolbar(),
      figureTable(view),
      element(
        'ul',
        { class: 'compare-changes', attributes: { 'aria-label': 'Changes' } },
        ...changes.map((change, index) => changeLine(change, index)),
      ),
      followers.length === 0 ? undefined : element('h3', { text: 'What follows' }),
      followers.length === 0
        ? undefined
        : element(
            'ul',
            { class: 'compare-followers' },
            ...followers.map((text) => element('li', { text })),
          ),
    ];
    this.root.replaceChildren(...parts.filter((part) => part !== undefined));
  }

  /** The next change (or the one before) that the grid can go to, round and round. */
  step(by: 1 | -1): CompareChange | undefined {
    const changes = this.view?.changes ?? [];
    const from = this.#at ?? (by === 1 ? -1 : changes.length);
    for (let count = 1; count <= changes.length; count += 1) {
      const at = (from + by * count + changes.length * 2) % changes.length;
      if (changes[at]?.there === true) return this.choose(at);
    }
    return undefined;
  }

  choose(index: number): CompareChange | undefined {
    this.#at = index;
    return this.view?.changes[index];
  }
}

import type { BillView, CautionView } from '../../extension/protocol/views.ts';
import type { ViewMemory } from '../view-state.ts';
import { element, keyedChildren, setText } from '../dom.ts';

/** Where it is kept whether the list is open. */
export interface CautionsMemory {
  readonly isOpen: () => boolean;
  readonly keepOpen: (open: boolean) => void;
}

/** What can hurt on this job, under the bill: one line until somebody opens it. */
export class CautionsPane {
  readonly root: HTMLDetailsElement;
  readonly #summary = element('summary');
  readonly #first = element('p', { class: 'pane-note' });
  readonly #list = element('ul', { class: 'caution-list' });

  constructor(memory: CautionsMemory) {
    this.root = element(
      'details',
      { class: 'cautions', data: { list: 'cautions' } },
      this.#summary,
      this.#first,
      this.#list,
    );
    this.root.open = memory.isOpen();
    this.root.addEventListener('toggle', () => {
      memory.keepOpen(this.root.open);
    });
  }

  paint({ first, list }: BillView['cautions']): void {
    this.root.hidden = list.length === 0;
    setText(this.#summary, `Cautions (${String(list.length)})`);
    setText(this.#first, first);
    keyedChildren(this.#list, list, {
      key: ({ id }) => id,
      make: () =>
        element(
          'li',
          {},
          element('strong'),
          element('p'),
          element('ul', { class: 'caution-limits' }),
          element('p', { class: 'small' }),
        ),
      paint: paintCaution,
    });
  }
}

function paintCaution(child: HTMLElement, { title, text, limits, rows }: CautionView): void {
  const [name, words, list, who] = child.children;
  if (name !== undefined) setText(name, title);
  if (words !== undefined) setText(words, text);
  if (who !== undefined) setText(who, `For ${rows}`);
  if (!(list instanceof HTMLElement)) return;
  list.hidden = limits.length === 0;
  keyedChildren(list, limits, {
    key: (limit) => limit.text,
    make: () => element('li'),
    paint: (line, limit) => {
      setText(line, `${limit.text} (${limit.source})`);
    },
  });
}

/** Cautions whose being open is kept for the user. */
export function cautionsKept(memory: ViewMemory): CautionsPane {
  return new CautionsPane({
    isOpen: () => memory.now.cautionsOpen,
    keepOpen: (cautionsOpen) => {
      memory.change({ cautionsOpen });
    },
  });
}

import { element, setAttribute, setText } from '../dom.ts';
import { placeLine } from './row-element.ts';

/** The heading of a group of rows: its label and totals, seen however far the grid is scrolled. */
export class GroupElement {
  readonly root: HTMLElement;
  readonly #label = element('span', { class: 'group-label' });
  readonly #totals = element('span', { class: 'group-totals' });
  readonly #toggle: HTMLButtonElement;
  #line = -1;

  constructor(columns: number) {
    // The arrows of the grid come here; Tab does not.
    this.#toggle = element(
      'button',
      { class: 'group-toggle', attributes: { type: 'button', tabindex: '-1' } },
      this.#label,
    );
    const cell = element(
      'div',
      { class: 'group-cell', attributes: { role: 'rowheader', 'aria-colindex': '1' } },
      element('span', { class: 'group-words' }, this.#toggle, this.#totals),
    );
    cell.setAttribute('aria-colspan', String(columns));
    this.root = element('div', { class: 'row group', attributes: { role: 'row' } }, cell);
  }

  get focused(): boolean {
    return document.activeElement === this.#toggle;
  }

  focus(): void {
    this.#toggle.focus({ preventScroll: true });
  }

  place(line: number): void {
    if (line === this.#line) return;
    this.#line = line;
    placeLine(this.root, line);
  }

  paint(
    group: { readonly group: string; readonly label: string; readonly totals: string },
    collapsed: boolean,
  ): void {
    this.root.dataset['group'] = group.group;
    setAttribute(this.#toggle, 'aria-expanded', String(!collapsed));
    setText(this.#label, group.label);
    setText(this.#totals, group.totals);
  }
}

import { rowAddress, rowKey } from '../addresses.ts';
import { element, setText } from '../dom.ts';
import { findIn, nextFound, type Found } from '../grid/find.ts';
import { icon, type IconName } from '../icons.ts';
import type { Whole } from '../whole.ts';

function bareButton(action: string, picture: IconName, title: string): HTMLElement {
  return element(
    'button',
    {
      class: 'bare',
      title,
      data: { find: action },
      attributes: { type: 'button', 'aria-label': title },
    },
    icon(picture),
  );
}

/** Looks for a text in the cells of the sheet, from the cell under the cursor on. */
export class FindBar {
  readonly root: HTMLElement;
  readonly #app: Whole;
  readonly #entry = element('input', {
    class: 'find-entry',
    attributes: {
      type: 'text',
      'aria-label': 'Find in this sheet',
      placeholder: 'Find',
      spellcheck: 'false',
      autocomplete: 'off',
    },
  });
  readonly #count = element('output', { class: 'find-count' });
  // Where the search goes on from: more letters look from the same cell as the first.
  #from: Found | undefined;

  constructor(app: Whole) {
    this.#app = app;
    this.root = element(
      'div',
      { class: 'find-bar', attributes: { role: 'search', hidden: '' } },
      this.#entry,
      this.#count,
      bareButton('previous', 'up', 'Previous match (Shift+Enter)'),
      bareButton('next', 'down', 'Next match (Enter)'),
      bareButton('close', 'close', 'Close (Escape)'),
    );
    this.#entry.addEventListener('focus', () => {
      this.#from = this.#active;
    });
    this.#entry.addEventListener('input', () => {
      this.#step(0);
    });
    this.root.addEventListener('keydown', (event) => {
      if (!this.#key(event)) return;
      event.preventDefault();
      event.stopPropagation();
    });
    this.root.addEventListener('click', (event) => {
      const button = event.target instanceof Element && event.target.closest('[data-find]');
      if (button instanceof HTMLElement) this.#run(button.dataset['find'] ?? '');
    });
  }

  /** Shows the bar with the keyboard in it; a text from before stands ready to be typed over. */
  open(): void {
    this.#app.grid.finish();
    this.root.hidden = false;
    this.#entry.focus();
    this.#entry.select();
    this.#tell(this.#found());
  }

  /** Counts afresh: another sheet is shown. */
  refresh(): void {
    if (!this.root.hidden) this.#tell(this.#found());
  }

  #close(): void {
    this.root.hidden = true;
    this.#app.focusGrid();
  }

  #run(action: string): void {
    if (action === 'close') this.#close();
    else this.#step(action === 'previous' ? -1 : 1);
  }

  #key(event: KeyboardEvent): boolean {
    const { key } = event;
    if (key === 'Escape') this.#close();
    else if (key === 'F3' || (key === 'Enter' && event.target === this.#entry))
      this.#step(event.shiftKey ? -1 : 1);
    else if (key.toLowerCase() === 'f' && (event.ctrlKey || event.metaKey)) this.#entry.select();
    else return false;
    return true;
  }

  #found(): readonly Found[] {
    const { state, grid } = this.#app;
    const sheet = state.sheet(grid.table);
    return sheet === undefined ? [] : findIn(sheet, state, this.#entry.value);
  }

  get #active(): Found | undefined {
    const cell = this.#app.grid.activeCell;
    return cell && { key: rowKey(cell), column: cell.column };
  }

  // A cell of a collapsed group is found too: going to it expands the group.
  #step(by: -1 | 0 | 1): void {
    const { grid, state } = this.#app;
    const sheet = state.sheet(grid.table);
    if (sheet === undefined) return;
    const found = this.#found();
    const to = found[nextFound(sheet, found, by === 0 ? this.#from : this.#active, by)];
    if (to !== undefined) {
      // Names stay in sight unless the cell stands too far beside them.
      grid.view.scrollTo(grid.view.viewport.top, 0);
      grid.goTo({ ...rowAddress(sheet.table, to.key), column: to.column }, false);
    }
    if (by !== 0) this.#from = this.#active;
    this.#tell(found);
  }

  #tell(found: readonly Found[]): void {
    const at = this.#active;
    const place = found.findIndex((one) => one.key === at?.key && one.column === at.column);
    const count = String(found.length);
    const text =
      found.length === 0 ? 'None' : place < 0 ? count : `${String(place + 1)} of ${count}`;
    setText(this.#count, this.#entry.value === '' ? '' : text);
  }
}

import type { CutView, CutWish } from '../../extension/protocol/cut-view.ts';
import type { RowAddress } from '../../extension/protocol/messages.ts';
import { rowKey, rowNamed } from '../addresses.ts';
import { choiceList, fillChoices } from '../choice-list.ts';
import { element, setText } from '../dom.ts';
import { button, ownButton } from '../form.ts';
import { figureSize } from '../pictures/fit.ts';
import { Picture } from '../pictures/picture.ts';
import { Asking } from './asking.ts';
import type { PanelHooks } from './panel.ts';

function listed(list: HTMLElement, texts: readonly string[]): void {
  list.replaceChildren(...texts.map((text) => element('li', { text })));
}

/** A button that is shown while it would do something. */
function locking(text: string, icon: 'lock' | 'unlock'): HTMLElement {
  const made = button({ action: 'lock-in-place', text, icon, look: 'icon' });
  return element('span', { attributes: { hidden: '' } }, made);
}

/** Cut layouts: each sheet, cloth and bundle of lengths to scale; a part and its row find each other. */
export class CutPane {
  readonly root: HTMLElement;
  readonly #hooks: PanelHooks;
  readonly #line = choiceList('Material', 'cut-line');
  readonly #sheet = choiceList('Sheet', 'cut-sheet');
  readonly #cuts = element('input', { attributes: { type: 'checkbox', id: 'cut-order' } });
  readonly #picture: Picture;
  readonly #figure = element('div', { class: 'panel-figure' });
  readonly #looking = element('progress', {
    class: 'cut-looking',
    attributes: { 'aria-label': 'A better layout is being looked for' },
  });
  readonly #message = element('p', { class: 'pane-empty' });
  readonly #facts = element('ul', { class: 'cut-facts' });
  readonly #others = element('ul', { class: 'cut-facts cut-others' });
  readonly #words = element('ol', { class: 'panel-words' });
  readonly #lock = locking('Lock in place', 'lock');
  readonly #unlock = locking('Unlock', 'unlock');
  #wish: CutWish = { line: '', sheet: 0, cuts: false };
  readonly #asking: Asking<CutView>;
  #view: CutView | undefined;
  #row = '';

  constructor(hooks: PanelHooks) {
    this.#hooks = hooks;
    this.#picture = new Picture({
      choose: (row) => {
        hooks.choose(rowNamed(row));
      },
      move: () => Promise.resolve(false),
      say: hooks.say,
    });
    const told = element(
      'details',
      { class: 'panel-told' },
      element('summary', { text: 'In words' }),
      this.#words,
    );
    const compare = ownButton('Compare stocks', () => void this.#compare());
    const below = element('div', { class: 'cut-below' }, compare, this.#others);
    this.root = element(
      'div',
      { class: 'panel-pane cut-pane' },
      this.#head(),
      this.#looking,
      this.#facts,
      this.#figure,
      this.#message,
      below,
      told,
    );
    this.#asking = new Asking({
      root: this.root,
      ask: () => hooks.ask({ ask: 'cut', wish: this.#wish }),
      paint: (view) => {
        this.#paint(view);
      },
    });
    this.#looking.hidden = true;
    this.#picture.root.addEventListener('keydown', (event) => {
      if (!(event instanceof KeyboardEvent) || event.key.toLowerCase() !== 'l') return;
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      event.preventDefault();
      void this.lock();
    });
    this.#figure.append(this.#picture.root);
    if (typeof ResizeObserver === 'undefined') return;
    new ResizeObserver(() => {
      this.#paintFigure();
    }).observe(this.#figure);
  }

  /** The pane came into view, or went out of it. */
  seen(seen: boolean): void {
    this.#asking.seen(seen);
  }

  /** Something in the job changed: what is shown may be wrong until the next answer. */
  stale(): void {
    this.#asking.stale();
  }

  /** A share of some work is done: the bar shows it where the work is about this layout. */
  progress(about: string, share: number): void {
    if (about !== this.#view?.about) return;
    // Nothing told yet: the bar runs to and fro.
    if (share > 0) this.#looking.value = share;
    else this.#looking.removeAttribute('value');
  }

  /** The cursor of the grid is on this row: its parts stand out. */
  select(row: RowAddress | undefined): void {
    this.#row = row === undefined ? '' : `${row.table}/${rowKey(row)}`;
    this.#picture.select(this.#row);
    this.#paintLock();
  }

  /** Locks the chosen row's pieces where they lie on this sheet, or unlocks them. */
  async lock(): Promise<void> {
    const view = this.#view;
    if (view === undefined || !view.lockable || !(this.#row in view.rows)) {
      this.#hooks.say('Choose a part on a sheet of the Cut pane first.');
      return;
    }
    const locked = view.locked.includes(this.#row);
    const { line, sheet } = view.wish;
    const done = await this.#hooks.lock(line, sheet, rowNamed(this.#row));
    if (done) this.#hooks.say(locked ? 'Unlocked: it may move' : 'Locked where it lies');
  }

  #paintLock(): void {
    const view = this.#view;
    const here = view?.lockable === true && this.#row in view.rows;
    const locked = here && view.locked.includes(this.#row);
    this.#lock.hidden = !here || locked;
    this.#unlock.hidden = !locked;
  }

  #head(): HTMLElement {
    const order = element(
      'label',
      { class: 'cut-order' },
      this.#cuts,
      element('span', { text: 'Saw cuts' }),
    );
    const save = button({
      action: 'export-cut-layouts',
      text: 'Export cut layouts…',
      icon: 'export',
      look: 'icon',
    });
    const buttons = element('div', { class: 'panel-buttons' }, this.#lock, this.#unlock, save);
    const head = element(
      'div',
      { class: 'panel-choices' },
      this.#line,
      this.#sheet,
      order,
      buttons,
    );
    head.addEventListener('change', (event) => {
      const other = event.target === this.#line;
      const sheet = other ? 0 : Number(this.#sheet.value || '0');
      const cuts = this.#cuts.checked;
      this.#wish = { line: this.#line.value || this.#wish.line, sheet, cuts };
      if (other) listed(this.#others, []);
      this.#asking.again();
    });
    return head;
  }

  async #compare(): Promise<void> {
    const others = await this.#hooks.ask({ ask: 'cut-others', wish: this.#wish });
    listed(
      this.#others,
      (others ?? []).map(({ stock, words }) => `${stock}: ${words}`),
    );
    this.#hooks.say(`${String(others?.length ?? 0)} stocks compared`);
  }

  #paint(view: CutView): void {
    if (!view.settling || view.about !== this.#view?.about) this.#looking.removeAttribute('value');
    this.#view = view;
    this.#wish = view.wish;
    fillChoices(this.#line, view.lines, view.wish.line);
    fillChoices(this.#sheet, view.sheets, String(view.wish.sheet));
    this.#looking.hidden = !view.settling;
    setText(this.#message, view.message);
    this.#message.hidden = view.message === '';
    this.#figure.hidden = view.message !== '';
    listed(this.#facts, view.facts);
    listed(this.#words, view.words);
    this.#paintFigure();
    this.#picture.select(this.#row);
    this.#paintLock();
  }

  #paintFigure(): void {
    const view = this.#view;
    if (view?.drawing === undefined) return;
    this.#picture.paint(view, view.drawing, figureSize(this.#figure));
  }
}

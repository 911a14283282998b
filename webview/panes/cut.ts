import type { CutView, CutWish } from '../../extension/protocol/cut-view.ts';
import type { RowAddress } from '../../extension/protocol/messages.ts';
import type { PanelChoice, PanelView } from '../../extension/protocol/panel-view.ts';
import { rowAddress, rowKey } from '../addresses.ts';
import { element, keyedChildren, setText } from '../dom.ts';
import { button } from '../form.ts';
import { Picture } from '../pictures/picture.ts';
import type { PanelHooks } from './panel.ts';

/** A burst of typing asks for one layout, once it rests. */
const restMs = 120;

function chooser(label: string, name: string): HTMLSelectElement {
  return element('select', {
    class: 'input panel-choice',
    data: { choice: name },
    attributes: { 'aria-label': label },
  });
}

function fill(list: HTMLSelectElement, choices: readonly PanelChoice[], chosen: string): void {
  keyedChildren(list, choices, {
    key: ({ value }) => value,
    make: ({ value }) => element('option', { attributes: { value } }),
    paint: (option, { label }) => {
      setText(option, label);
    },
  });
  if (list.value !== chosen) list.value = chosen;
  list.hidden = choices.length < 2;
}

function listed(list: HTMLElement, texts: readonly string[]): void {
  list.replaceChildren(...texts.map((text) => element('li', { text })));
}

/** Pictures are painted from a panel's view; a sheet has nothing that can be moved. */
function asPanel(view: CutView): PanelView {
  return {
    wish: { base: '', hand: 'drawn', picture: 'plan', ring: '' },
    ...{ bases: [], hands: [], rings: [], movables: [], skin: undefined, file: '' },
    title: view.title,
    words: view.words,
    message: view.message,
    drawing: view.drawing,
    rows: view.rows,
    step: 1,
    mirrored: false,
  };
}

/** Cut layouts: each sheet, cloth and bundle of lengths to scale; a part and its row find each other. */
export class CutPane {
  readonly root: HTMLElement;
  readonly #hooks: PanelHooks;
  readonly #line = chooser('Material', 'cut-line');
  readonly #sheet = chooser('Sheet', 'cut-sheet');
  readonly #cuts = element('input', { attributes: { type: 'checkbox', id: 'cut-order' } });
  readonly #picture: Picture;
  readonly #figure = element('div', { class: 'panel-figure' });
  readonly #message = element('p', { class: 'pane-empty' });
  readonly #facts = element('ul', { class: 'cut-facts' });
  readonly #others = element('ul', { class: 'cut-facts cut-others' });
  readonly #words = element('ol', { class: 'panel-words' });
  #wish: CutWish = { line: '', sheet: 0, cuts: false };
  #view: CutView | undefined;
  #seen = false;
  #fresh = false;
  #asked = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #row = '';

  constructor(hooks: PanelHooks) {
    this.#hooks = hooks;
    this.#picture = new Picture({
      choose: (row) => {
        const slash = row.indexOf('/');
        hooks.choose(rowAddress(row.slice(0, slash), row.slice(slash + 1)));
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
    const compare = element('button', {
      class: 'button secondary',
      text: 'Compare stocks',
      attributes: { type: 'button' },
    });
    compare.addEventListener('click', () => void this.#compare());
    const below = element('div', { class: 'cut-below' }, compare, this.#others);
    this.root = element(
      'div',
      { class: 'panel-pane cut-pane' },
      this.#head(),
      this.#facts,
      this.#figure,
      this.#message,
      below,
      told,
    );
    this.#figure.append(this.#picture.root);
    if (typeof ResizeObserver === 'undefined') return;
    new ResizeObserver(() => {
      this.#paintFigure();
    }).observe(this.#figure);
  }

  /** The pane came into view, or went out of it. */
  seen(seen: boolean): void {
    if (this.#seen === seen) return;
    this.#seen = seen;
    if (seen && !this.#fresh) this.#later(0);
  }

  /** Something in the job changed: what is shown may be wrong until the next answer. */
  stale(): void {
    this.#fresh = false;
    if (!this.#seen) return;
    this.root.classList.add('stale');
    this.#later(restMs);
  }

  /** The cursor of the grid is on this row: its parts stand out. */
  select(row: RowAddress | undefined): void {
    this.#row = row === undefined ? '' : `${row.table}/${rowKey(row)}`;
    this.#picture.select(this.#row);
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
    const buttons = element('div', { class: 'panel-buttons' }, save);
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
      this.#later(0);
    });
    return head;
  }

  #later(ms: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#ask(), ms);
  }

  async #ask(): Promise<void> {
    if (!this.#seen) return;
    const asked = (this.#asked += 1);
    this.#fresh = true;
    const view = await this.#hooks.ask({ ask: 'cut', wish: this.#wish });
    if (asked !== this.#asked || view === undefined) return;
    this.#view = view;
    this.#wish = view.wish;
    this.#paint(view);
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
    this.root.classList.toggle('stale', !this.#fresh);
    fill(this.#line, view.lines, view.wish.line);
    fill(this.#sheet, view.sheets, String(view.wish.sheet));
    setText(this.#message, view.message);
    this.#message.hidden = view.message === '';
    this.#figure.hidden = view.message !== '';
    listed(this.#facts, view.facts);
    listed(this.#words, view.words);
    this.#paintFigure();
    this.#picture.select(this.#row);
  }

  #paintFigure(): void {
    const view = this.#view;
    if (view?.drawing === undefined) return;
    this.#picture.paint(asPanel(view), view.drawing, {
      width: Math.floor(this.#figure.clientWidth) || 320,
      height: Math.floor(this.#figure.clientHeight) || 240,
    });
  }
}

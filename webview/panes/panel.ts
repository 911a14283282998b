import type { PanelView, PanelWish } from '../../extension/protocol/panel-view.ts';
import type { FromWebview, RowAddress } from '../../extension/protocol/messages.ts';
import { rowKey, rowNamed } from '../addresses.ts';
import { pickOne } from '../dialogs.ts';
import { element, keyedChildren, setText } from '../dom.ts';
import { figureSize } from '../pictures/fit.ts';
import { legend } from '../pictures/legend.ts';
import { Picture } from '../pictures/picture.ts';
import { pngOfSvg, savedSide } from '../pictures/png.ts';
import { SkinPicture } from '../pictures/skin-picture.ts';
import type { Ask } from '../suggest/suggester.ts';
import type { ViewMemory } from '../view-state.ts';
import { Asking } from './asking.ts';
import { PanelChoices } from './panel-choices.ts';

export interface PanelHooks {
  readonly ask: Ask;
  readonly post: (message: FromWebview) => void;
  readonly memory: ViewMemory;
  readonly choose: (row: RowAddress) => void;
  /** Puts a part elsewhere, in mm; resolves to whether it was taken. */
  readonly place: (row: RowAddress, x: number, y: number) => Promise<boolean>;
  /** Locks a row's pieces on a sheet of a line, or unlocks them; resolves to whether it was taken. */
  readonly lock: (line: string, sheet: number, row: RowAddress) => Promise<boolean>;
  readonly say: (text: string) => void;
}

const formats = [
  { value: 'svg', label: 'SVG', detail: 'lines, at full size' },
  { value: 'png', label: 'PNG', detail: 'an image' },
];

/** Pictures of a panel: plan, section, skin and strip, drawn anew after each edit while they are seen. */
export class PanelPane {
  readonly root: HTMLElement;
  readonly #hooks: PanelHooks;
  readonly #choices: PanelChoices;
  readonly #picture: Picture;
  readonly #skin = new SkinPicture();
  readonly #figure = element('div', { class: 'panel-figure' });
  readonly #legend = element('div', { class: 'panel-legend' });
  readonly #message = element('p', { class: 'pane-empty' });
  readonly #words = element('ul', { class: 'panel-words' });
  readonly #told: HTMLElement;
  readonly #asking: Asking<PanelView>;
  #view: PanelView | undefined;
  #row: RowAddress | undefined;

  constructor(hooks: PanelHooks) {
    this.#hooks = hooks;
    this.#choices = new PanelChoices({
      wish: (change) => {
        this.#wish(change);
      },
      recolour: () => {
        this.#paintFigure();
      },
    });
    this.#picture = new Picture({
      choose: (row) => {
        hooks.choose(rowNamed(row));
      },
      move: (row, { x, y }) => hooks.place(rowNamed(row), x, y),
      say: hooks.say,
    });
    this.#told = element(
      'details',
      { class: 'panel-told' },
      element('summary', { text: 'In words' }),
      this.#words,
    );
    this.root = element(
      'div',
      { class: 'panel-pane' },
      this.#choices.root,
      this.#figure,
      this.#legend,
      this.#message,
      this.#told,
    );
    this.#asking = new Asking({
      root: this.root,
      ask: () => hooks.ask({ ask: 'panel', wish: hooks.memory.now.panel }),
      paint: (view) => {
        this.#paint(view);
      },
    });
    if (typeof ResizeObserver === 'undefined') return;
    new ResizeObserver(() => {
      this.#paintFigure();
    }).observe(this.#figure);
  }

  /** The pane came into view, or went out of it. */
  seen(seen: boolean): void {
    this.#asking.seen(seen);
    if (!seen) this.#picture.settle();
  }

  /** Something in the job changed: what is shown may be wrong until the next answer. */
  stale(): void {
    this.#asking.stale();
  }

  /** The cursor of the grid is on this row: its marks stand out, and its own picture is shown. */
  select(row: RowAddress | undefined): void {
    this.#row = row;
    const key = row === undefined ? '' : rowKey(row);
    this.#picture.select(row === undefined ? '' : `${row.table}/${key}`);
    if (row?.table === 'part' && this.#view !== undefined) this.#follow(key, this.#view);
  }

  /** Shows the base or the ring that the cursor went to, if it is not shown already. */
  #follow(key: string, { rings, bases, wish }: PanelView): void {
    if (key !== wish.base && bases.some(({ value }) => value === key)) this.#wish({ base: key });
    else if (key !== wish.ring && rings.some(({ value }) => value === key))
      this.#wish({ ring: key }, wish.picture === 'plan' || wish.picture === 'skin');
  }

  /** Saves what is shown as SVG or PNG: the host asks where. */
  async save(): Promise<void> {
    const view = this.#view;
    if (view?.message !== '') return;
    const chosen = await pickOne('Save picture', formats);
    if (chosen === undefined) return;
    const format = chosen === 'png' ? 'png' : 'svg';
    const content = await this.#content(view, format);
    if (content === '') this.#hooks.say('This picture could not be written.');
    else this.#hooks.post({ type: 'save-picture', name: view.file, format, content });
  }

  async #content(view: PanelView, format: 'svg' | 'png'): Promise<string> {
    if (format === 'png' && view.skin !== undefined) return this.#skin.png(savedSide);
    const text = (await this.#hooks.ask({ ask: 'panel-svg', wish: view.wish })) ?? '';
    if (format === 'svg' || text === '') return text;
    return pngOfSvg(text).catch(() => '');
  }

  #wish(change: Partial<PanelWish>, quietly = false): void {
    const { memory } = this.#hooks;
    memory.change({ panel: { ...memory.now.panel, ...change } });
    if (quietly && this.#view !== undefined)
      this.#view = { ...this.#view, wish: { ...this.#view.wish, ...change } };
    else this.#asking.again();
  }

  #paint(view: PanelView): void {
    this.#view = view;
    this.#choices.paint(view);
    setText(this.#message, view.message);
    this.#message.hidden = view.message === '';
    this.#figure.hidden = view.message !== '';
    this.#told.hidden = view.words.length === 0;
    keyedChildren(this.#words, view.words, {
      key: (text) => text,
      make: (text) => element('li', { text }),
    });
    const shown = view.skin === undefined ? this.#picture.root : this.#skin.root;
    if (this.#figure.firstElementChild !== shown) this.#figure.replaceChildren(shown);
    this.#paintFigure();
    this.#picture.select(this.#row === undefined ? '' : `${this.#row.table}/${rowKey(this.#row)}`);
  }

  #paintFigure(): void {
    const view = this.#view;
    if (view === undefined || view.message !== '') return;
    const size = figureSize(this.#figure);
    const scale = view.skin?.scales.find(({ key }) => key === this.#choices.colour);
    this.#legend.replaceChildren(...(scale === undefined ? [] : [legend(scale)]));
    if (view.skin !== undefined) this.#skin.paint(view.skin, scale, view.title, size);
    else if (view.drawing !== undefined) this.#picture.paint(view, view.drawing, size);
  }
}

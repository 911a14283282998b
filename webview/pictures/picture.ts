import type { PictureView } from '../../extension/protocol/panel-view.ts';
import { setAttribute } from '../dom.ts';
import { fitted, type Fit, type Size } from './fit.ts';
import { drawn, drawnGroups, overhang } from './marks.ts';
import { Moving, type Movables, type MovingHooks } from './moving.ts';

export interface PictureHooks extends MovingHooks {
  /** A mark was pressed: its row is wanted, `part/mid_ring`. */
  readonly choose: (row: string) => void;
}

/** A picture in words. */
export interface Pictured extends Movables {
  readonly title: string;
}

/** Room around a picture in pixels. */
const margin = 8;

/** Fits a drawing and the words that stand out of it. */
function fitWithWords(drawing: PictureView, size: Size): Fit {
  const even = { left: margin, right: margin, top: margin, bottom: margin };
  const out = overhang(drawing, fitted(drawing.box, size, even), size);
  const half = Math.min(size.width, size.height) / 3;
  const more = (px: number): number => margin + Math.min(half, px);
  return fitted(drawing.box, size, {
    left: more(out.left),
    right: more(out.right),
    top: more(out.top),
    bottom: more(out.bottom),
  });
}

/** A drawing on the screen, of which each row is a button. */
export class Picture {
  readonly root: SVGElement;
  readonly #moving: Moving;
  readonly #hooks: PictureHooks;
  #view: Pictured | undefined;
  #fit: Fit | undefined;
  #selected = '';

  constructor(hooks: PictureHooks) {
    this.#hooks = hooks;
    this.root = drawn('svg', { class: 'picture', role: 'group' });
    this.#moving = new Moving(this.root, hooks);
    this.root.addEventListener('click', (event) => {
      const row = rowOf(event.target);
      if (row !== '' && !this.#moving.justMoved) hooks.choose(row);
    });
    this.root.addEventListener('keydown', (event) => {
      this.#key(event);
    });
  }

  /** Paints a picture into a place of this size. */
  paint(view: Pictured, drawing: PictureView, size: Size): void {
    this.#view = view;
    this.#fit = fitWithWords(drawing, size);
    const focused = rowOf(document.activeElement);
    const hadFocus = this.root.contains(document.activeElement);
    setAttribute(this.root, 'aria-label', view.title);
    setAttribute(this.root, 'width', String(size.width));
    setAttribute(this.root, 'height', String(size.height));
    this.#moving.shown(view, this.#fit);
    const groups = drawnGroups(drawing, this.#fit).map(({ row, owner, parts }) => {
      const group = row === '' ? drawn('g', { 'aria-hidden': 'true' }) : this.#button(row, owner);
      group.append(...parts);
      return group;
    });
    this.root.replaceChildren(...groups);
    this.select(this.#selected);
    if (hadFocus && focused !== '') this.#element(focused)?.focus();
  }

  /** Marks the row that the cursor of the grid is on. */
  select(row: string): void {
    this.#selected = row;
    for (const group of this.root.querySelectorAll('[data-row]')) {
      const is = group.getAttribute('data-row') === row;
      group.classList.toggle('selected', is);
      setAttribute(group, 'aria-pressed', String(is));
    }
  }

  /** Sends what was moved with keys and not sent yet. */
  settle(): void {
    this.#moving.settle();
  }

  #button(row: string, owner: string): SVGElement {
    const view = this.#view;
    const moves = view?.movables?.some((one) => one.row === row && one.held === '') === true;
    const label = view?.rows[row] ?? row;
    return drawn('g', {
      class: `part-of${moves ? ' movable' : ''}`,
      'data-row': row,
      'data-owner': owner,
      role: 'button',
      tabindex: '0',
      'aria-label': moves ? `${label}. Arrow keys move it.` : label,
    });
  }

  #element(row: string): SVGElement | undefined {
    const groups = [...this.root.querySelectorAll<SVGElement>('[data-row]')];
    return groups.find((one) => one.dataset['row'] === row);
  }

  #key(event: Event): void {
    if (!(event instanceof KeyboardEvent)) return;
    const row = rowOf(event.target);
    if (row === '') return;
    if (event.key === 'Enter' || event.key === ' ') this.#hooks.choose(row);
    else if (!this.#moving.key(event)) return;
    event.preventDefault();
    event.stopPropagation();
  }
}

function rowOf(target: EventTarget | null): string {
  if (!(target instanceof Element)) return '';
  return target.closest('[data-row]')?.getAttribute('data-row') ?? '';
}

import type { CellView } from '../../extension/protocol/views.ts';
import { element, setText } from '../dom.ts';
import { headerHeight, rowHeight } from './geometry.ts';
import type { GridView } from './grid-view.ts';
import type { Spot } from './selection.ts';

const hoverDelayMs = 350;
const hintWidth = 320;
// Roughly the width of a letter: a text that may not fit its cell is told in full.
const letterPx = 7;

/** The note beside a cell: why it has no answer, what is wrong, or its text in full. */
export class Hint {
  readonly root: HTMLElement;
  readonly #view: GridView;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(view: GridView) {
    this.#view = view;
    this.root = element('div', { class: 'hint', attributes: { role: 'tooltip', hidden: '' } });
  }

  /** Shows what is to say about a cell at once; hides where there is nothing. */
  show(spot: Spot, text: string, tone: string): void {
    this.hide();
    const line = this.#view.lines.lineOfRow[spot.row];
    if (text === '' || line === undefined) return;
    const { viewport, edges } = this.#view;
    const left = spot.column === 0 ? 0 : (edges[spot.column] ?? 0) - viewport.left;
    const top = headerHeight + line * rowHeight - viewport.top;
    if (top < headerHeight - rowHeight || top > viewport.height) return;
    const below = top + rowHeight * 4 < viewport.height || top < viewport.height / 2;
    setText(this.root, text);
    this.root.dataset['tone'] = tone;
    const { style } = this.root;
    const most = Math.max(0, viewport.width - hintWidth - 12);
    style.setProperty('left', `${String(Math.max(4, Math.min(left, most)))}px`);
    style.setProperty('top', below ? `${String(top + rowHeight + 4)}px` : 'auto');
    style.setProperty('bottom', below ? 'auto' : `${String(viewport.height - top + 4)}px`);
    this.root.hidden = false;
  }

  hide(): void {
    clearTimeout(this.#timer);
    if (!this.root.hidden) this.root.hidden = true;
  }

  /** Shows the hint of the cell under the pointer after a while. */
  hover(spot: Spot | undefined): void {
    clearTimeout(this.#timer);
    if (spot === undefined) return;
    this.#timer = setTimeout(() => {
      const view = this.#view.cellAt(spot);
      if (view !== undefined)
        this.show(spot, hoverText(view, this.#view.widths[spot.column]), view.severity);
    }, hoverDelayMs);
  }
}

/** What hovering says: the cell's message, else its text where the cell is too narrow for it. */
export function hoverText(view: CellView, width = 0): string {
  const was = view.mark?.told ?? '';
  if (view.message !== '') return was === '' ? view.message : `${view.message} (${was})`;
  if (was !== '') return was;
  return view.shown.length * letterPx > width - 12 ? view.shown : '';
}

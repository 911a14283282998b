import type { PictureView } from '../../extension/protocol/panel-view.ts';
import { element } from '../dom.ts';
import { Picture } from './picture.ts';

/** A picture with its words of which nothing can be moved. */
export interface StillView {
  readonly title: string;
  readonly drawing: PictureView | undefined;
  /** Rows that marks stand for, in words. */
  readonly rows: Readonly<Record<string, string>>;
}

const usualWidth = 320;

/** A drawing as high as its width asks for, of which each row is a button. */
export class StillPicture {
  readonly root = element('div', { class: 'still-figure' });
  readonly #picture: Picture;
  #view: StillView | undefined;

  constructor(choose: (row: string) => void) {
    this.#picture = new Picture({
      choose,
      move: () => Promise.resolve(false),
      say: () => undefined,
    });
    this.root.append(this.#picture.root);
    if (typeof ResizeObserver === 'undefined') return;
    new ResizeObserver(() => {
      this.#repaint();
    }).observe(this.root);
  }

  paint(view: StillView): void {
    this.#view = view;
    this.root.hidden = view.drawing === undefined;
    this.#repaint();
  }

  select(row: string): void {
    this.#picture.select(row);
  }

  #repaint(): void {
    const view = this.#view;
    if (view?.drawing === undefined) return;
    const { left, right, bottom, top } = view.drawing.box;
    const width = Math.floor(this.root.clientWidth) || usualWidth;
    const height = Math.ceil((width * (top - bottom)) / Math.max(1, right - left)) + 12;
    this.root.style.height = `${String(height)}px`;
    this.#picture.paint(view, view.drawing, { width, height });
  }
}

import { element, setText } from '../dom.ts';
import { button } from '../form.ts';

const sayDelayMs = 250;

/** The line under the grid: sums of the selection, and what is said to screen readers. */
export class StatusLine {
  readonly root: HTMLElement;
  readonly #sum = element('span', { class: 'sum', data: { sum: '' } });
  readonly #said = element('span', {
    class: 'visually-hidden',
    attributes: { 'aria-live': 'polite', role: 'status' },
  });
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    this.root = element(
      'footer',
      { class: 'status-line' },
      this.#sum,
      this.#said,
      button({ action: 'show-keys', text: 'Keys', icon: 'keys', look: 'icon' }),
    );
  }

  sum(text: string): void {
    setText(this.#sum, text);
  }

  /** Says a sentence once the person has stopped moving. */
  say(text: string): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => {
      setText(this.#said, text);
    }, sayDelayMs);
  }
}

/** Whether the focus comes, stays if it is held, or is left where it is. */
export type FocusWish = 'take' | 'keep' | 'leave';

/**
 * The grid's hold on the focus. A repaint takes the entry out of the page for a moment and gives it
 * the focus back; while keys go to another part of VS Code, a palette say, that would draw them
 * out of there, so the focus is owed until the page has it again.
 */
export class HeldFocus {
  readonly #entry: HTMLElement;
  #owed = false;

  constructor(entry: HTMLElement) {
    this.#entry = entry;
    window.addEventListener('focus', () => {
      if (this.#owed && document.activeElement === document.body) this.wish('take');
      this.#owed = false;
    });
  }

  /** The entry has the focus, or will have it when the page does. */
  get held(): boolean {
    return this.#owed || document.activeElement === this.#entry;
  }

  /** The focus comes here; before the entry stands anywhere, the page holds it. */
  take(): void {
    if (this.#entry.isConnected) {
      this.wish('take');
      return;
    }
    document.body.tabIndex = -1;
    document.body.focus();
  }

  wish(wish: FocusWish): void {
    if (wish === 'leave') return;
    const elsewhere = document.activeElement !== this.#entry;
    this.#owed = elsewhere && wish === 'keep' && !document.hasFocus();
    if (elsewhere && !this.#owed) this.#entry.focus({ preventScroll: true });
  }
}

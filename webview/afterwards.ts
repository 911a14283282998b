import { afterFrame } from './after-frame.ts';
import { markPainted, type Patch } from './painted.ts';

/** An answer that does not come is not waited for, in ms. */
const patience = 150;

/**
 * What a key does besides its edit, such as moving the focus on: several milliseconds of the page's
 * time that stand between the key and the new totals. It is done once these are painted, and always
 * before the next key or press is taken.
 */
export class Afterwards {
  #put: (() => void) | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(page: Window) {
    page.addEventListener('keydown', this.#key.bind(this), true);
    page.addEventListener('pointerdown', this.now.bind(this), true);
  }

  /** Puts something off until the answer to the edit under way is painted. */
  put(run: () => void): void {
    this.now();
    this.#put = run;
    this.#timer = setTimeout(this.now.bind(this), patience);
  }

  /** A patch is written: its frame is marked, and what an edit put off follows the frame of its answer. */
  written(patch: Patch): void {
    markPainted(patch);
    if (patch.cause !== undefined) this.answered();
  }

  /** The answer is there: what was put off follows its frame. */
  answered(): void {
    const put = this.#put;
    if (put === undefined) return;
    afterFrame(() => {
      if (this.#put === put) this.now();
    });
  }

  /** Does what was put off, if anything is. */
  now(): void {
    clearTimeout(this.#timer);
    const put = this.#put;
    this.#put = undefined;
    put?.();
  }

  /** A key that came meanwhile belongs to whatever has the focus then. */
  #key(event: KeyboardEvent): void {
    if (this.#put === undefined) return;
    this.now();
    const { activeElement } = document;
    if (activeElement === null || activeElement === event.target || event.isComposing) return;
    event.stopImmediatePropagation();
    if (!activeElement.dispatchEvent(new KeyboardEvent('keydown', event))) event.preventDefault();
  }
}

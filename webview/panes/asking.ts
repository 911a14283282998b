/** A burst of typing asks once, when it rests so long. */
const usualRestMs = 120;

export interface AskingParts<View> {
  readonly root: HTMLElement;
  readonly ask: () => Promise<View | undefined>;
  readonly paint: (view: View) => void;
  /** How long the job rests before what costs more is asked for, in ms. */
  readonly restMs?: number;
}

/** A pane whose content is asked for: only while it is looked at, and anew after what it shows has changed. */
export class Asking<View> {
  readonly #parts: AskingParts<View>;
  #seen = false;
  #fresh = false;
  #asked = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(parts: AskingParts<View>) {
    this.#parts = parts;
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
    this.#parts.root.classList.add('stale');
    this.#later(this.#parts.restMs ?? usualRestMs);
  }

  /** Something else is wanted: asks at once, while it is looked at. */
  again(): void {
    this.#fresh = false;
    if (!this.#seen) return;
    this.#parts.root.classList.add('stale');
    this.#later(0);
  }

  #later(ms: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#ask(), ms);
  }

  async #ask(): Promise<void> {
    if (!this.#seen) return;
    const asked = (this.#asked += 1);
    this.#fresh = true;
    const { root, ask, paint } = this.#parts;
    const view = await ask();
    if (asked !== this.#asked || view === undefined) return;
    root.classList.toggle('stale', !this.#fresh);
    paint(view);
  }
}

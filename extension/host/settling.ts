import type { HeavyQuestion, HeavyReplies, Snapshot } from '../engine/index.ts';
import type { DeskServices } from './desk-panel.ts';
import type { HeavyHand } from './heavy-hand.ts';

/** Pause after a change before heavy work begins: somebody who is typing types on. In ms. */
const pause = 60;

interface SettlingParts {
  readonly snapshot: () => Snapshot;
  readonly settle: (replies: HeavyReplies) => void;
}

/**
 * Has the heavy questions of a job worked out beside the typing. What is no longer asked is dropped;
 * a question whose working out broke is answered with nothing, so that it is not asked for ever.
 */
export class Settling {
  readonly #parts: SettlingParts;
  readonly #hand: HeavyHand;
  readonly #log: DeskServices['log'];
  #timer = 0;
  #running: HeavyQuestion | undefined;
  #closed = false;

  constructor({ hand, log }: Pick<DeskServices, 'hand' | 'log'>, parts: SettlingParts) {
    this.#parts = parts;
    this.#hand = hand();
    this.#log = log;
  }

  /** Looks at what the job asks now; to be called after each change. */
  look(): void {
    const { heavy } = this.#parts.snapshot();
    const key = this.#running?.key;
    if (key !== undefined && !heavy.some((question) => question.key === key)) {
      this.#running = undefined;
      this.#hand.drop();
    }
    clearTimeout(this.#timer);
    if (heavy.length > 0 && this.#running === undefined && !this.#closed)
      this.#timer = setTimeout(() => void this.#next(), pause);
  }

  async #next(): Promise<void> {
    const [question] = this.#parts.snapshot().heavy;
    if (question === undefined || this.#closed) return;
    this.#running = question;
    const answer = await this.#worked(question);
    if (this.#running !== question) return;
    this.#running = undefined;
    if (answer === undefined || this.#isClosed()) return;
    this.#parts.settle(new Map([[question.key, { question, answer }]]));
    // The next one need not wait: nobody has typed since.
    clearTimeout(this.#timer);
    if (this.#parts.snapshot().heavy.length > 0) void this.#next();
  }

  async #worked(question: HeavyQuestion): Promise<unknown> {
    try {
      return await this.#hand.work(question);
    } catch (fault) {
      this.#log.error(`heavy work: ${fault instanceof Error ? fault.message : String(fault)}`);
      return {};
    }
  }

  #isClosed(): boolean {
    return this.#closed;
  }

  dispose(): void {
    this.#closed = true;
    clearTimeout(this.#timer);
    this.#hand.dispose();
  }
}

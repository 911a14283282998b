import type { HeavyQuestion, HeavyReplies, Snapshot } from '../engine/index.ts';
import type { DeskServices } from './desk-panel.ts';
import type { HeavyHand } from './heavy-hand.ts';
import { isLongText } from './long-text.ts';

/** Pause after a change before heavy work begins: somebody who is typing types on. In ms. */
const pause = 30;

/** Pause after a job was opened, in ms: the page takes a long one in, for which it needs the processor. */
export function openingPause(text: string): number {
  return isLongText(text) ? 1000 : pause;
}

interface SettlingParts {
  readonly snapshot: () => Snapshot;
  readonly settle: (replies: HeavyReplies) => void;
  /** Hears how much of a question is worked out, 0 to 1. */
  readonly told?: (question: HeavyQuestion, share: number) => void;
}

/** A question that a picture waits for, whether a cell asks it too or not. */
interface Awaited {
  readonly question: HeavyQuestion;
  readonly reply: Promise<unknown>;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (fault: unknown) => void;
}

function awaited(question: HeavyQuestion): Awaited {
  let resolve: Awaited['resolve'] = () => undefined;
  let reject: Awaited['reject'] = () => undefined;
  const reply = new Promise<unknown>((resolved, rejected) => {
    resolve = resolved;
    reject = rejected;
  });
  return { question, reply, resolve, reject };
}

/**
 * Has the heavy questions of a job and of its pictures worked out beside the typing, each once. What is
 * no longer asked is dropped; a cell's question whose working out broke is answered with nothing, so
 * that it is not asked for ever.
 */
export class Settling {
  readonly #parts: SettlingParts;
  readonly #hand: HeavyHand;
  readonly #log: DeskServices['log'];
  readonly #awaited = new Map<string, Awaited>();
  #timer = 0;
  #running: HeavyQuestion | undefined;
  #closed = false;

  constructor({ hand, log }: Pick<DeskServices, 'hand' | 'log'>, parts: SettlingParts) {
    this.#parts = parts;
    this.#hand = hand();
    this.#log = log;
  }

  /**
   * The answer to a question of a picture; undefined where something newer about the same was asked
   * before it was there. A fault rejects.
   */
  of(question: HeavyQuestion): Promise<unknown> {
    const known = this.#awaited.get(question.key);
    if (known !== undefined) return known.reply;
    for (const older of this.#awaited.values()) {
      if (older.question.about !== question.about) continue;
      this.#awaited.delete(older.question.key);
      older.resolve(undefined);
    }
    const asked = awaited(question);
    this.#awaited.set(question.key, asked);
    this.look();
    return asked.reply;
  }

  /**
   * Looks at what is asked now; to be called after each change.
   *
   * @param rest how long nothing heavy is begun, in ms
   */
  look(rest = pause): void {
    const wanted = this.#wanted();
    const key = this.#running?.key;
    if (key !== undefined && !wanted.some((question) => question.key === key)) {
      this.#running = undefined;
      this.#hand.drop();
    }
    clearTimeout(this.#timer);
    if (wanted.length > 0 && this.#running === undefined && !this.#closed)
      this.#timer = setTimeout(() => void this.#next(), rest);
  }

  /** What pictures wait for comes first: somebody looks at an empty place. Then what is soon done. */
  #wanted(): readonly HeavyQuestion[] {
    const pictures = [...this.#awaited.values()].map(({ question }) => question);
    const { heavy } = this.#parts.snapshot();
    const isSoon = ({ soon }: HeavyQuestion): boolean => soon === true;
    return [...pictures, ...heavy.filter(isSoon), ...heavy.filter((one) => !isSoon(one))];
  }

  async #next(): Promise<void> {
    const [question] = this.#wanted();
    if (question === undefined || this.#closed) return;
    this.#running = question;
    const answer = await this.#worked(question);
    if (this.#running !== question) return;
    this.#running = undefined;
    if (this.#isClosed()) return;
    if (answer !== undefined) this.#answered(question, answer);
    // The next one need not wait: nobody has typed since.
    clearTimeout(this.#timer);
    if (this.#wanted().length > 0) void this.#next();
  }

  #answered(question: HeavyQuestion, answer: unknown): void {
    const waiting = this.#awaited.get(question.key);
    this.#awaited.delete(question.key);
    this.#parts.settle(new Map([[question.key, { question, answer }]]));
    waiting?.resolve(answer);
  }

  async #worked(question: HeavyQuestion): Promise<unknown> {
    try {
      const told = (share: number): void => this.#parts.told?.(question, share);
      told(0);
      return await this.#hand.work(question, told);
    } catch (fault) {
      this.#log.error(`heavy work: ${fault instanceof Error ? fault.message : String(fault)}`);
      return this.#broken(question, fault);
    }
  }

  /** Tells a picture of a fault; the answer that a cell gets of it, undefined where none asks. */
  #broken({ key }: HeavyQuestion, fault: unknown): object | undefined {
    const waiting = this.#awaited.get(key);
    this.#awaited.delete(key);
    waiting?.reject(fault);
    return this.#parts.snapshot().heavy.some((one) => one.key === key) ? {} : undefined;
  }

  #isClosed(): boolean {
    return this.#closed;
  }

  dispose(): void {
    this.#closed = true;
    clearTimeout(this.#timer);
    this.#hand.dispose();
    for (const { resolve } of this.#awaited.values()) resolve(undefined);
    this.#awaited.clear();
  }
}

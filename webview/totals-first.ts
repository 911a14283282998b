import type { ToWebview } from '../extension/protocol/messages.ts';
import { afterFrame } from './after-frame.ts';

/** A page that is not looked at has no frames: then they are not waited for, in ms. */
const patience = 100;

/** Passes messages on in their order; those behind new totals wait until these are painted. */
export class TotalsFirst {
  readonly #take: (message: ToWebview) => void;
  #held: ToWebview[] | undefined;

  constructor(take: (message: ToWebview) => void) {
    this.#take = take;
  }

  receive(message: ToWebview): void {
    if (this.#held !== undefined) {
      this.#held.push(message);
      return;
    }
    this.#take(message);
    if (message.type !== 'patch' || message.part !== 'totals') return;
    const held: ToWebview[] = [];
    this.#held = held;
    const release = (): void => {
      if (this.#held !== held) return;
      this.#held = undefined;
      for (const one of held) this.#take(one);
    };
    afterFrame(release);
    setTimeout(release, patience);
  }
}

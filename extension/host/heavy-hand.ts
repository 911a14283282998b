import type { HeavyQuestion } from '../engine/index.ts';
import type { FromWorker } from '../worker/messages.ts';
import { startWorker, type Hand } from './heavy-work.ts';

/**
 * One worker that is kept: it answers heavy questions one after the other, and the second comes sooner
 * than the first because its program is warm.
 */
export interface HeavyHand {
  /** The answer; `undefined` where it was dropped. One question at a time; `told` hears its share done. */
  readonly work: (question: HeavyQuestion, told?: (share: number) => void) => Promise<unknown>;
  /** Ends what is being worked out, however deep in a loop it is. */
  readonly drop: () => void;
  readonly dispose: () => void;
}

interface Waiting {
  readonly told: ((share: number) => void) | undefined;
  readonly resolve: (answer: unknown) => void;
  readonly reject: (fault: Error) => void;
}

/** @param source the worker's program, read when it is needed first */
export function heavyHand(source: () => Promise<string>): HeavyHand {
  let hand: Hand | undefined;
  let waiting: Waiting | undefined;

  function settle(act: (one: Waiting) => void): void {
    const one = waiting;
    waiting = undefined;
    if (one !== undefined) act(one);
  }

  function end(): void {
    hand?.end();
    hand = undefined;
  }

  const ears = {
    heard: (message: FromWorker): void => {
      if (message.kind === 'progress') {
        waiting?.told?.(message.share);
        return;
      }
      settle(({ resolve, reject }) => {
        if (message.kind === 'done') resolve(message.answer);
        else reject(new Error(message.message));
      });
    },
    broke: (reason: string): void => {
      end();
      settle(({ reject }) => {
        reject(new Error(reason));
      });
    },
  };

  function drop(): void {
    if (waiting === undefined) return;
    end();
    settle(({ resolve }) => {
      resolve(undefined);
    });
  }

  /** Its program is read when there is no worker, not for each question. */
  async function started(): Promise<void> {
    if (hand !== undefined) return;
    const text = await source();
    hand ??= startWorker(text, ears);
  }

  return {
    work: (question, told) =>
      new Promise((resolve, reject) => {
        drop();
        const mine = (waiting = { told, resolve, reject } satisfies Waiting);
        void started().then(() => {
          if (waiting !== mine) return;
          if (hand === undefined) ears.broke('No worker can be started here.');
          else hand.send({ job: { kind: 'question', question } });
        }, reject);
      }),
    drop,
    dispose: () => {
      drop();
      end();
    },
  };
}

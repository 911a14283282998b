import type { Steps } from '../engine/index.ts';

/** Lets messages and typing have their turn. */
function turn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

/** How long a job is opened at a stretch, in ms. */
const openingSliceMs = 100;

/**
 * Does long work in slices between which whatever else waits has its turn.
 *
 * @param slice how long a stretch lasts at least, in ms
 */
export async function withTurns<Done>(steps: Steps<Done>, slice = openingSliceMs): Promise<Done> {
  let until = Date.now() + slice;
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
    if (Date.now() < until) continue;
    await turn();
    until = Date.now() + slice;
  }
}

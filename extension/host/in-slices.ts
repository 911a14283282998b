import { costDriverSteps, type CostDriver } from '../engine/index.ts';
import type { JobDesk } from './job-desk.ts';

/** How long cells are tried at a stretch before whatever else waits has its turn, in ms. */
const sliceMs = 12;
/** How often it begins anew where the job changes under it. */
const mostTries = 5;

/** Lets messages and typing have their turn. */
function turn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}

/**
 * The cells that move the price most, worked out in slices between which typing is taken. A job that
 * changes meanwhile is begun with anew; undefined for one that does not come to rest.
 *
 * @param slice how long a stretch lasts, in ms; 0 for a cell at a time
 */
export async function driversInSlices(
  desk: Pick<JobDesk, 'snapshot' | 'whatIf'>,
  slice = sliceMs,
): Promise<readonly CostDriver[] | undefined> {
  for (let tries = 0; tries < mostTries; tries += 1) {
    const found = await once(desk, slice);
    if (found !== undefined) return found;
  }
  return undefined;
}

async function once(
  desk: Pick<JobDesk, 'snapshot' | 'whatIf'>,
  slice: number,
): Promise<readonly CostDriver[] | undefined> {
  const start = desk.snapshot();
  const steps = costDriverSteps(desk);
  let until = Date.now() + slice;
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
    if (Date.now() < until) continue;
    await turn();
    if (desk.snapshot() !== start) return undefined;
    until = Date.now() + slice;
  }
}

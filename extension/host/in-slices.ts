import {
  compareOptionSteps,
  costDriverSteps,
  type ComparedOptions,
  type CostDriver,
  type Steps,
} from '../engine/index.ts';
import type { JobDesk } from './job-desk.ts';
import { withTurns } from './turns.ts';

/** How long a job is tried at a stretch before whatever else waits has its turn, in ms. */
const sliceMs = 12;
/** How often it begins anew where the job changes under it. */
const mostTries = 5;

/** The part of a desk by which a job is tried. */
type Tried = Pick<JobDesk, 'snapshot' | 'whatIf' | 'trial'>;

/**
 * Works out something of a job that takes long, in slices between which typing is taken. A job that
 * changes meanwhile is begun with anew; undefined for one that does not come to rest.
 *
 * @param slice how long a stretch lasts, in ms; 0 for a step at a time
 */
async function inSlices<Found>(
  desk: Pick<JobDesk, 'snapshot'>,
  begin: () => Steps<Found>,
  slice: number,
): Promise<Found | undefined> {
  for (let tries = 0; tries < mostTries; tries += 1) {
    const start = desk.snapshot();
    const stands = (): boolean => desk.snapshot() === start;
    const found = await withTurns(asLongAs(stands, begin()), slice);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The same steps, given up before the first of which something does not hold any more. */
function* asLongAs<Found>(holds: () => boolean, steps: Steps<Found>): Steps<Found | undefined> {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
    yield;
    if (!holds()) return undefined;
  }
}

/** The cells that move the price most; undefined for a job that does not come to rest. */
export function driversInSlices(
  desk: Pick<Tried, 'snapshot' | 'whatIf'>,
  slice = sliceMs,
): Promise<readonly CostDriver[] | undefined> {
  return inSlices(desk, () => costDriverSteps(desk), slice);
}

/** The options of a job side by side; undefined for a job that does not come to rest. */
export function optionsInSlices(
  desk: Pick<Tried, 'snapshot' | 'trial'>,
  slice = sliceMs,
): Promise<ComparedOptions | undefined> {
  return inSlices(desk, () => compareOptionSteps(desk), slice);
}

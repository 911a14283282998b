import type { HeavyAnswers, HeavyJob } from './messages.ts';

const reports = 10;

/** Counts to `job.steps`, telling ten times how far it is, and gives the text back. */
export function echo(
  job: Extract<HeavyJob, { kind: 'echo' }>,
  report: (share: number) => void,
): HeavyAnswers['echo'] {
  const every = Math.max(1, Math.floor(job.steps / reports));
  let counted = 0;
  while (counted < job.steps) {
    counted += 1;
    if (counted % every === 0) report(counted / job.steps);
  }
  return { text: job.text, steps: counted };
}

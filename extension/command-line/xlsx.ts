import { jobWorkbook } from '../engine/index.ts';
import { outFile, refused, unreadable } from './endings.ts';
import { problemLines } from './estimate-report.ts';
import type { FiguresRequest } from './figures-arguments.ts';
import { ending, readJob } from './job.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';

/** Writes a job as a workbook. */
export function xlsx(
  { file, out }: Extract<FiguresRequest, { command: 'xlsx' }>,
  world: World,
): ExitCode {
  const job = readJob(file, world);
  if (job === undefined) return refused(unreadable(file), world);
  const written = outFile(out, jobWorkbook(job.snapshot), world);
  world.err(problemLines(job.file, job.problems));
  return written === exitCodes.fine ? ending(job.problems) : written;
}

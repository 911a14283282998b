import { jobWorkbook } from '../engine/index.ts';
import { problemLines } from './estimate-report.ts';
import type { FiguresRequest } from './figures-arguments.ts';
import { hasProblems, readJob } from './job.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';
import { unreadableFile } from './write-edits.ts';

/** Writes a job as a workbook. */
export function xlsx(
  { file, out }: Extract<FiguresRequest, { command: 'xlsx' }>,
  world: World,
): ExitCode {
  const job = readJob(file, world);
  if (job === undefined) return unreadableFile(file, world);
  if (!world.write(out, jobWorkbook(job.snapshot))) {
    world.err(`panelwright: ${out} cannot be written.\n`);
    return exitCodes.misuse;
  }
  world.out(`${out}\n`);
  world.err(problemLines(job.file, job.problems));
  return hasProblems(job.problems) ? exitCodes.problems : exitCodes.fine;
}

import {
  actualLines,
  actualsOf,
  evidenceWords,
  proposeRates,
  rateEdits,
  readFile,
} from '../engine/index.ts';
import { inColumns, type TableLine } from './columns.ts';
import { refused, unreadable } from './endings.ts';
import type { FiguresRequest } from './figures-arguments.ts';
import { readJob, type ReadJob } from './job.ts';
import { steady } from './steady.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';
import { writeEdits } from './write-edits.ts';

function jobsOf(files: readonly string[], world: World): readonly ReadJob[] | ExitCode {
  const jobs: ReadJob[] = [];
  for (const file of files) {
    const job = readJob(file, world);
    if (job === undefined) return refused(unreadable(file), world);
    jobs.push(job);
  }
  return jobs;
}

function actualsReport({ file, snapshot }: ReadJob): string {
  const lines = actualLines(snapshot);
  if (lines.length === 0) return `${file}: nothing is said of what it took.\n`;
  const rows: TableLine[] = [
    file,
    ['', 'estimated', 'taken', ''],
    ...lines.map(({ name, estimated, actual, off }) => [name, estimated, actual, off]),
  ];
  return inColumns(rows, [1, 2, 3]);
}

function actualsJson({ file, snapshot }: ReadJob): object {
  const { tasks, materials, minutes } = actualsOf(snapshot);
  return {
    file,
    minutes: { estimated: steady(minutes.estimated), actual: steady(minutes.actual) },
    tasks: tasks.map(({ task, estimated, actual }) => ({
      id: task.id,
      kind: task.kind,
      estimated: steady(estimated),
      actual: steady(actual),
    })),
    materials: materials.map(({ need, estimated, used, bare }) => ({
      row: need.row,
      material: need.material,
      estimated: steady(estimated),
      used: steady(used),
      bare: steady(bare),
    })),
  };
}

/** Prints estimate against actual of each job. */
export function actuals(
  request: Extract<FiguresRequest, { command: 'actuals' }>,
  world: World,
): ExitCode {
  const jobs = jobsOf(request.files, world);
  if (typeof jobs === 'number') return jobs;
  if (request.json) {
    const answer = { format: 1, files: jobs.map(actualsJson) };
    world.out(`${JSON.stringify(answer, undefined, 2)}\n`);
  } else world.out(jobs.map(actualsReport).join('\n'));
  return exitCodes.fine;
}

/** Proposes rates for a shop book from what jobs took. */
export function rates(
  request: Extract<FiguresRequest, { command: 'rates' }>,
  world: World,
): ExitCode {
  const { book: file, files, write } = request;
  const text = world.read(file);
  if (text === undefined) return refused(unreadable(file), world);
  const jobs = jobsOf(files, world);
  if (typeof jobs === 'number') return jobs;
  const reading = readFile(text);
  const snapshots = jobs.map(({ snapshot }) => snapshot);
  const { proposals, left } = proposeRates(snapshots, reading);
  for (const one of proposals) {
    const was = one.now === '' ? 'nothing said' : one.now;
    world.out(`${one.name} (${one.column}): ${was} → ${one.then}; ${evidenceWords(one)}\n`);
  }
  for (const sentence of left) world.out(`${sentence}\n`);
  return writeEdits({ file, reading, write }, rateEdits(proposals, reading), world);
}

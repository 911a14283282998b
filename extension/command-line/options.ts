import {
  acceptOption,
  compareOptions,
  optionLines,
  optionsOf,
  unweighedWords,
  type ComparedOptions,
} from '../engine/index.ts';
import { inColumns, type TableLine } from './columns.ts';
import { refused, unreadable } from './endings.ts';
import type { FiguresRequest } from './figures-arguments.ts';
import { ending, readJob, type ReadJob } from './job.ts';
import { steady } from './steady.ts';
import type { ExitCode, World } from './world.ts';
import { writeEdits } from './write-edits.ts';

function optionsReport(compared: ComparedOptions): string {
  const { options } = compared;
  const lines: TableLine[] = [
    ['', 'as it is', ...options.map(({ name }) => name)],
    ...optionLines(compared).flatMap(({ label, now, then }): TableLine[] => [
      [label, now, ...then.map(({ text }) => text)],
      ['', '', ...then.map(({ change }) => change)],
    ]),
  ];
  const ends = [1, ...options.map((_, index) => index + 2)];
  const cells = options.flatMap(({ id, name, cells: changed, problem }) => [
    `${name} (${id})${problem === undefined ? '' : `: ${problem.message}`}`,
    ...changed.map(({ cell, now, then }) => `  ${cell}: ${now || 'blank'} → ${then || 'blank'}`),
  ]);
  const notes = [...cells, unweighedWords(compared)].filter((line) => line !== '');
  return `${inColumns(lines, ends)}\n${notes.map((line) => `${line}\n`).join('')}`;
}

function optionsJson(compared: ComparedOptions, job: ReadJob): object {
  const { currency } = job.snapshot.bill;
  const figures = (one: ComparedOptions['base']): object => ({
    price: { minor: one.price, currency },
    total: { minor: one.total, currency },
    working: steady(one.minutes),
    grams: steady(one.grams),
    unweighed: one.unweighed,
    failing: one.failing,
    complete: one.whole,
  });
  return {
    format: 1,
    file: job.file,
    base: figures(compared.base),
    options: compared.options.map(({ id, name, note, cells, figures: own, problem }) => ({
      ...{ id, name, note, cells },
      figures: own === undefined ? null : figures(own),
      problem: problem?.message ?? null,
    })),
  };
}

function accept(job: ReadJob, id: string, at: { world: World; write: boolean }): ExitCode {
  const { world, write } = at;
  const { shown: reading } = job.snapshot;
  const options = optionsOf(reading);
  const option = options.find((one) => one.id === id);
  if (option !== undefined) {
    return writeEdits({ file: job.file, reading, write }, acceptOption(option), world);
  }
  const known = options.map((one) => one.id).join(', ') || 'none';
  return refused(`${job.file} has no option ${id}; its options are: ${known}.`, world);
}

/** Compares the options of a job, or makes one of them the job. */
export function compareJobOptions(
  request: Extract<FiguresRequest, { command: 'options' }>,
  world: World,
): ExitCode {
  const job = readJob(request.file, world);
  if (job === undefined) return refused(unreadable(request.file), world);
  if (request.accept !== undefined) {
    return accept(job, request.accept, { world, write: request.write });
  }
  const compared = compareOptions(job.again());
  if (request.json) world.out(`${JSON.stringify(optionsJson(compared, job), undefined, 2)}\n`);
  else if (compared.options.length > 0) world.out(optionsReport(compared));
  else world.out(`${job.file} has no options; an [[option]] row names one (docs/job-file.md).\n`);
  return ending(job.problems);
}

import { billCsv, costDrivers } from '../engine/index.ts';
import { readArguments, type Request } from './arguments.ts';
import { calcAnswer } from './calc.ts';
import { compareDoing } from './compare.ts';
import { figuresDoing } from './figures.ts';
import { costDriversJson, costDriversReport } from './cost-drivers-report.ts';
import { checkFileJson, checkReport } from './check-report.ts';
import { cutPlanReport, layoutAnswer, layoutJson, layoutReport, writeCutPlan } from './cutplan.ts';
import { estimateJson } from './estimate-json.ts';
import { billReport, estimateReport, problemLines } from './estimate-report.ts';
import { functionsJson, functionsReport } from './functions-list.ts';
import { helpPage } from './help.ts';
import { refused, unreadable, unwritable } from './endings.ts';
import { ending, hasProblems, readJob, type ReadJob } from './job.ts';
import { merge, setUpMerging } from './merge.ts';
import { paper } from './paper.ts';
import { writePatterns } from './patterns.ts';
import { tracedFile } from './outline.ts';
import { reuseDoing } from './reuse.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';

function outJson(world: World, value: object): void {
  world.out(`${JSON.stringify(value, undefined, 2)}\n`);
}

function withJob(file: string, world: World, show: (job: ReadJob) => void): ExitCode {
  const job = readJob(file, world);
  if (job === undefined) return refused(unreadable(file), world);
  show(job);
  return ending(job.problems);
}

function estimate(request: Extract<Request, { command: 'estimate' }>, world: World): ExitCode {
  return withJob(request.file, world, (job) => {
    if (request.json) outJson(world, estimateJson(job));
    else world.out(estimateReport(job));
  });
}

// A bill for a spreadsheet holds nothing but the bill: its problems go to the other stream.
function bom(request: Extract<Request, { command: 'bom' }>, world: World): ExitCode {
  return withJob(request.file, world, (job) => {
    const { bill, settings } = job.snapshot;
    world.out(request.csv ? billCsv(bill, settings) : billReport(job));
    world.err(problemLines(job.file, job.problems));
  });
}

function check(request: Extract<Request, { command: 'check' }>, world: World): ExitCode {
  const jobs: ReadJob[] = [];
  for (const file of request.files) {
    const job = readJob(file, world);
    if (job === undefined) return refused(unreadable(file), world);
    jobs.push(job);
  }
  if (request.json) {
    outJson(world, { format: 1, files: jobs.map(checkFileJson) });
  } else {
    for (const job of jobs) world.out(checkReport(job));
  }
  return ending(jobs.flatMap(({ problems }) => problems));
}

function calc(request: Extract<Request, { command: 'calc' }>, world: World): ExitCode {
  const { units, currency } = request;
  const answer = calcAnswer(request.formula, { units, currency });
  if (request.json) world.out(`${JSON.stringify(answer)}\n`);
  else if (answer.ok) world.out(`${answer.text}\n`);
  else world.err(`panelwright: ${answer.problem}\n`);
  return answer.ok ? exitCodes.fine : exitCodes.problems;
}

function costdrivers(
  request: Extract<Request, { command: 'costdrivers' }>,
  world: World,
): ExitCode {
  return withJob(request.file, world, (job) => {
    const found = costDrivers(job.again());
    if (request.json) outJson(world, costDriversJson(job, found));
    else world.out(costDriversReport(job, found));
  });
}

function patterns(request: Extract<Request, { command: 'patterns' }>, world: World): ExitCode {
  const job = readJob(request.file, world);
  if (job === undefined) return refused(unreadable(request.file), world);
  const answer = writePatterns(job, request, world);
  if (!answer.ok) {
    world.err(`panelwright: ${answer.fault}\n${problemLines(job.file, job.problems)}`);
    return hasProblems(job.problems) ? exitCodes.problems : exitCodes.misuse;
  }
  for (const file of answer.files) world.out(`${file}\n`);
  world.err(problemLines(job.file, job.problems));
  return ending(job.problems);
}

function outline(request: Extract<Request, { command: 'outline' }>, world: World): ExitCode {
  const list = request.file === undefined ? world.input() : world.read(request.file);
  if (list === undefined) return refused(unreadable(request.file ?? ''), world);
  const answer = tracedFile(list, request);
  if (!answer.ok) {
    world.err(`panelwright: ${answer.fault}\n`);
    return exitCodes.problems;
  }
  if (!world.write(request.out, answer.svg)) return refused(unwritable(request.out), world);
  world.out(`${answer.words}\n`);
  return exitCodes.fine;
}

function cutplan(request: Extract<Request, { command: 'cutplan' }>, world: World): ExitCode {
  const job = readJob(request.file, world);
  if (job === undefined) return refused(unreadable(request.file), world);
  if (request.out === undefined) world.out(cutPlanReport(job));
  else {
    const written = writeCutPlan(job, request.out, world);
    if (!written.ok) return refused(written.fault, world);
    for (const file of written.files) world.out(`${file}\n`);
  }
  world.err(problemLines(job.file, job.problems));
  return ending(job.problems);
}

function layout(request: Extract<Request, { command: 'layout' }>, world: World): ExitCode {
  const text = world.read(request.file);
  if (text === undefined) return refused(unreadable(request.file), world);
  const laid = layoutAnswer(text);
  if (!laid.ok) return refused(laid.fault, world);
  if (request.json) outJson(world, layoutJson(laid.answer));
  else world.out(layoutReport(laid.answer));
  return laid.answer.unplaced.length === 0 ? exitCodes.fine : exitCodes.problems;
}

type OfFile = Exclude<Request, { command: 'help' | 'version' | 'functions' | 'calc' }>;

type Doing = {
  readonly [Command in OfFile['command']]: (request: never, world: World) => ExitCode;
};

const ofFiles: Doing = {
  ...compareDoing,
  ...figuresDoing,
  ...reuseDoing,
  estimate,
  bom,
  check,
  costdrivers,
  paper,
  patterns,
  cutplan,
  layout,
  outline,
  merge,
  'set-up-merging': setUpMerging,
};

/** Carries out what was asked for and tells how the program ends. */
export function run(args: readonly string[], world: World): ExitCode {
  const asked = readArguments(args);
  if (!asked.ok) return refused(`${asked.fault} Try panelwright --help.`, world);
  const { request } = asked;
  switch (request.command) {
    case 'help':
      world.out(helpPage(request.of));
      return exitCodes.fine;
    case 'version':
      world.out(`panelwright ${world.version}\n`);
      return exitCodes.fine;
    case 'functions':
      if (request.json) outJson(world, functionsJson());
      else world.out(functionsReport());
      return exitCodes.fine;
    case 'calc':
      return calc(request, world);
    default:
      // Each command is given its own request: the table's keys say which.
      return ofFiles[request.command](request as never, world);
  }
}

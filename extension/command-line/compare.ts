import { changeOrderPaper, compareJobs, compareSnapshots } from '../engine/index.ts';
import { history } from './cell-history.ts';
import type { CompareRequest } from './compare-arguments.ts';
import { diffJson } from './diff-json.ts';
import { diffReport } from './diff-report.ts';
import { refused } from './endings.ts';
import { outPaper, sourceOf } from './paper.ts';
import { readRevision, readVersion, type Version } from './revisions.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';

type Asked<Command> = Extract<CompareRequest, { readonly command: Command }>;

function diff(request: Asked<'diff'>, world: World): ExitCode {
  const before = readVersion(request.before, world);
  if (!before.ok) return refused(before.fault, world);
  const after = readVersion(request.after, world);
  if (!after.ok) return refused(after.fault, world);
  const found = compareSnapshots(before.job.snapshot, after.job.snapshot, before.job.again());
  if (!found.ok) return refused(found.problem.message, world);
  const booksDiffer = before.book !== after.book;
  const notes = booksDiffer ? ['The shop books of the two differ too; figures tell of both.'] : [];
  if (request.json) {
    const names = { before: before.name, after: after.name, booksDiffer };
    world.out(`${JSON.stringify(diffJson(found.value, names), undefined, 2)}\n`);
  } else world.out(diffReport(found.value, notes));
  return found.value.same ? exitCodes.fine : exitCodes.problems;
}

/** A file or `REV:FILE`; else a bare revision of the file the order is for. */
function agreed({ since, file }: Asked<'changeorder'>, world: World): Version {
  const named = world.read(since) !== undefined || since.includes(':');
  return named ? readVersion(since, world) : readRevision({ revision: since, file }, world);
}

/** The paper of what changed; problems of the job as it is now are told beside it. */
function changeorder(request: Asked<'changeorder'>, world: World): ExitCode {
  const after = readVersion(request.file, world);
  if (!after.ok) return refused(after.fault, world);
  const before = agreed(request, world);
  if (!before.ok) return refused(before.fault, world);
  const [was, now] = [before.job.snapshot, after.job.snapshot];
  const compared = compareJobs(was.reading, now.reading);
  if (!compared.ok) return refused(compared.problem.message, world);
  const { since, copy } = request;
  const order = { before: was, after: now, compared: compared.value, since, copy };
  // A revision as it was is no version of the file that stands there now.
  const source = world.read(request.file) === undefined ? {} : sourceOf(after.job, world);
  const paper = changeOrderPaper(order, source);
  return outPaper(paper, { form: request, job: after.job }, world);
}

type Doing = {
  readonly [Command in CompareRequest['command']]: (
    request: Asked<Command>,
    world: World,
  ) => ExitCode;
};

/** Carries out comparing, history and change orders. */
export const compareDoing: Doing = { diff, history, changeorder };

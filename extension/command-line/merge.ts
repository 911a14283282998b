import { mergeJobs, type Conflict, type MergedJob } from '../engine/sharing/merge-jobs.ts';
import { driverCommand, driverName, withAttributes } from '../engine/sharing/merge-setup.ts';
import { refused, unreadable, unwritable } from './endings.ts';
import type { MergeRequest } from './merge-arguments.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';

type Merge = Extract<MergeRequest, { command: 'merge' }>;
type SetUp = Extract<MergeRequest, { command: 'set-up-merging' }>;

interface Done {
  readonly text: string;
  readonly conflicts: MergedJob['conflicts'];
  /** True where a version is no job that can be read, so that git merged it line by line. */
  readonly byLines: boolean;
  readonly conflicted: boolean;
}

function places(conflict: Conflict): string {
  const { table, row, column } = conflict.place;
  if (conflict.kind === 'text') return table === '' ? 'the lines at the top' : `[${table}]`;
  const name = row === undefined ? `[${table}]` : `${table} ${row}`;
  return column === undefined ? name : `${name}, ${column}`;
}

/** A text on one line, not longer than a line on the screen. */
function short(text: string): string {
  const line = text.replaceAll(/\s+/g, ' ').trim();
  return line.length > 60 ? `${line.slice(0, 59)}…` : line;
}

function whatHappened(conflict: Conflict): string {
  const { kind, base, ours, theirs, baseKnown } = conflict;
  const text = (value: string | undefined): string =>
    value === undefined ? 'empty' : `“${short(value)}”`;
  switch (kind) {
    case 'cell': {
      const before = baseKnown ? `was ${text(base)}; ` : '';
      return `${before}ours ${text(ours)}, theirs ${text(theirs)}`;
    }
    case 'row':
      if (ours === undefined) return 'taken out by ours; theirs changed or uses it';
      if (theirs === undefined) return 'taken out by theirs; ours changed or uses it';
      return 'both changed it in ways that cannot stand together';
    case 'twice':
      return 'put in by both under one id; this is theirs, under another';
    case 'name':
      return `was ${text(base)}; ours calls it ${text(ours)}, theirs ${text(theirs)}`;
    case 'text':
      return 'both changed these lines';
  }
}

function report(name: string, { conflicts, byLines, conflicted }: Done): string {
  if (byLines) {
    const how = conflicted ? 'with conflicts' : 'without conflicts';
    return `${name}: one version cannot be read as a job; merged line by line, ${how}.\n`;
  }
  if (conflicts.length === 0) return '';
  const count = conflicts.length === 1 ? '1 conflict' : `${String(conflicts.length)} conflicts`;
  const lines = conflicts.map(
    (one) => `  line ${String(one.line)}: ${places(one)}: ${whatHappened(one)}\n`,
  );
  return `${name}: ${count}; open the file in the grid to settle them.\n${lines.join('')}`;
}

function mergedByLines(request: Merge, world: World): Done | undefined {
  const labels = ['ours', 'base', 'theirs'].flatMap((label) => ['-L', label]);
  const size = `--marker-size=${String(request.markerSize)}`;
  const files = [request.ours, request.base, request.theirs];
  const { status, out } = world.git(['merge-file', '-p', '--diff3', size, ...labels, ...files]);
  // It ends with the number of conflicts; what cannot be merged at all ends with 128 or more.
  if (status < 0 || status >= 128) return undefined;
  return { text: out, conflicts: [], byLines: true, conflicted: status > 0 };
}

function mergedTexts(request: Merge, world: World): Done | string {
  const { markerSize: size } = request;
  const texts = [request.base, request.ours, request.theirs].map((file) => world.read(file));
  const missing = texts.indexOf(undefined);
  const [base, ours, theirs] = texts;
  if (base === undefined || ours === undefined || theirs === undefined) {
    const file = [request.base, request.ours, request.theirs][missing] ?? '';
    return unreadable(file);
  }
  const markers = { size, ours: 'ours', base: 'base', theirs: 'theirs' };
  const merged = mergeJobs(base, ours, theirs, { markers });
  if (merged !== undefined) {
    return { ...merged, byLines: false, conflicted: merged.conflicts.length > 0 };
  }
  return (
    mergedByLines(request, world) ??
    'One version cannot be read as a job, and git could not merge it line by line.'
  );
}

function json(name: string, done: Done, milliseconds: number): string {
  const conflicts = done.conflicts.map(({ key, kind, place, base, ours, theirs, line }) => ({
    key,
    kind,
    ...place,
    base,
    ours,
    theirs,
    line,
  }));
  const { byLines, conflicted } = done;
  const answer = { format: 1, file: name, conflicted, byLines, milliseconds, conflicts };
  return `${JSON.stringify(answer, undefined, 2)}\n`;
}

/** Merges three versions of a file, as git's merge driver or for a person. */
export function merge(request: Merge, world: World): ExitCode {
  const began = world.clock();
  const done = mergedTexts(request, world);
  if (typeof done === 'string') return refused(done, world);
  const name = request.path ?? request.ours;
  if (request.out !== undefined && !world.write(request.out, done.text))
    return refused(unwritable(request.out), world);
  const milliseconds = Math.round((world.clock() - began) * 10) / 10;
  if (request.json) world.out(json(name, done, milliseconds));
  else if (request.out === undefined) world.out(done.text);
  world.err(request.json ? '' : report(name, done));
  return done.conflicted ? exitCodes.problems : exitCodes.fine;
}

/** Writes the driver into a repository's settings and .gitattributes, once it was said to. */
export function setUpMerging({ folder, yes }: SetUp, world: World): ExitCode {
  const top = world.git(['rev-parse', '--show-toplevel'], folder);
  if (top.status !== 0) {
    const why = top.status < 0 ? 'git was not found' : `${folder} is in no git repository`;
    return refused(`${why}; nothing was set up.`, world);
  }
  const root = top.out.trim();
  const file = world.within(root, '.gitattributes');
  const before = world.read(file) ?? '';
  const after = withAttributes(before);
  const settings = [
    ['merge.panelwright.name', driverName],
    ['merge.panelwright.driver', driverCommand(world.driver)],
  ] as const;
  const plan = [
    ...settings.map(([key, value]) => `  git config ${key} '${value}'\n`),
    ...(after === before
      ? []
      : [`  ${file}: ${after.slice(before.length).trim().split('\n').join(', ')}\n`]),
  ].join('');
  if (!yes) {
    world.out(
      `This would be written for the repository ${root}:\n${plan}Say it again with --yes to write it.\n`,
    );
    return exitCodes.fine;
  }
  const isSet = settings.every(
    ([key, value]) => world.git(['config', key, value], root).status === 0,
  );
  if (!isSet || (after !== before && !world.write(file, after)))
    return refused(`${root} takes no settings; is it read-only?`, world);
  world.out(
    `Written for the repository ${root}:\n${plan}Commit .gitattributes, so that others who set up merging need nothing more.\n`,
  );
  return exitCodes.fine;
}

import {
  openSession,
  settleNow,
  readFile,
  wantedOutlines,
  type LocatedProblem,
  type Session,
  type Snapshot,
} from '../engine/index.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';

/** A job as the commands see it: calculated, with every problem and its line. */
export interface ReadJob {
  readonly file: string;
  readonly snapshot: Snapshot;
  readonly problems: readonly JobProblem[];
  /** The job once more, with quick answers throughout: for asking what would be. */
  readonly again: () => Session;
}

/** A problem in the words and places of the reports. */
export interface JobProblem {
  readonly code: string;
  readonly message: string;
  readonly severity: 'error' | 'warning' | 'note';
  readonly table: string;
  readonly row: string;
  readonly column: string;
  /** From 1; 0 where the problem has no line in the job file. */
  readonly line: number;
}

/** Reads a job with the shop book and the outline files it names, and calculates it; undefined where it cannot be read. */
export function readJob(file: string, world: World): ReadJob | undefined {
  const text = world.read(file);
  if (text === undefined) return undefined;
  const reading = readFile(text);
  const named = reading.head.get('book')?.text ?? '';
  const book = named === '' ? undefined : world.read(world.beside(file, named));
  const outlines = wantedOutlines(reading).map(
    (path) => [path, world.read(world.beside(file, path))] as const,
  );
  const again = (): Session => openSession(reading, book, new Map(outlines));
  const session = again();
  settleNow(session);
  const snapshot = session.snapshot();
  const missing = named !== '' && book === undefined ? [bookProblem(text, named)] : [];
  const problems = [...missing, ...snapshot.problems.map(shownProblem)];
  return { file, snapshot, problems, again };
}

function bookProblem(text: string, named: string): JobProblem {
  const before = /^[ \t]*book[ \t]*=/m.exec(text);
  const line = before === null ? 0 : text.slice(0, before.index).split('\n').length;
  return {
    code: 'book-not-found',
    message: `The shop book ${named} cannot be read, so the built-in demo book is used. Mend the path, or take the line out.`,
    severity: 'error',
    table: 'job',
    row: '',
    column: 'book',
    line,
  };
}

function shownProblem({ problem, place, line }: LocatedProblem): JobProblem {
  const { code, message, severity } = problem;
  return {
    code,
    message,
    severity,
    table: place?.table ?? '',
    row: place?.row ?? '',
    column: place?.column ?? '',
    line,
  };
}

/** How a command on a job ends: with problems where a person must look. */
export function ending(problems: readonly JobProblem[]): ExitCode {
  return hasProblems(problems) ? exitCodes.problems : exitCodes.fine;
}

/** True where a person must look: notes alone leave a job in order. */
export function hasProblems(problems: readonly JobProblem[]): boolean {
  return problems.some(({ severity }) => severity !== 'note');
}

import { basename, dirname } from 'node:path';
import {
  moneyOrDash,
  namedCell,
  openCellHistory,
  readFile,
  type CellPast,
} from '../engine/index.ts';
import { inColumns, type TableLine } from './columns.ts';
import type { CompareRequest } from './compare-arguments.ts';
import { refused, unreadable } from './endings.ts';
import { readJob } from './job.ts';
import { worldAt } from './revisions.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';

/** A commit that touched the file, and what the file was called in it. */
interface Commit {
  readonly hash: string;
  readonly author: string;
  readonly date: string;
  readonly subject: string;
  readonly file: string;
}

interface Past {
  readonly past: CellPast<Commit | undefined>;
  readonly price: number | undefined;
  readonly currency: string;
}

const [record, field] = ['\u001e', '\u001f'];

/** Commits of a file, newest first, through renames of it; undefined where git keeps it not. */
function commitsOf(file: string, most: number, world: World): readonly Commit[] | undefined {
  const format = `--format=${record}%H${field}%an${field}%aI${field}%s`;
  const asked = ['log', '--follow', '--name-only', '-n', String(most), format, '--'];
  const { status, out } = world.git([...asked, basename(file)], dirname(file));
  if (status !== 0) return undefined;
  return out
    .split(record)
    .slice(1)
    .map((text) => {
      const [head = '', ...names] = text.split('\n').filter((line) => line !== '');
      const [hash = '', author = '', date = '', subject = ''] = head.split(field);
      return { hash, author, date, subject, file: names[0] ?? '' };
    });
}

function textAt({ hash, file }: Commit, folder: string, world: World): string | undefined {
  const { status, out } = world.git(['show', `${hash}:${file}`], folder);
  return status === 0 ? out : undefined;
}

/** Price before tax of a version, with its shop book as it was then. */
function priced(
  { version }: CellPast<Commit | undefined>,
  file: string,
  world: World,
): Omit<Past, 'past'> {
  const { reading, about } = version;
  const then = about === undefined ? world : worldAt(about.hash, world);
  const read = (path: string): string | undefined =>
    path === file ? reading.text : then.read(path);
  const job = readJob(file, { ...then, read });
  const price = job?.snapshot.price;
  return { price: price?.totals.price, currency: price?.currency ?? '' };
}

function historyReport(cell: string, found: readonly Past[]): string {
  if (found.length === 0) return `${cell} says nothing, in none of these commits.\n`;
  const rows = found.map(({ past, price, currency }): TableLine => {
    const { about } = past.version;
    const when = about?.date.slice(0, 16).replace('T', ' ') ?? 'not committed yet';
    return [
      past.text ?? '(blank)',
      moneyOrDash(price, currency),
      when,
      about?.author ?? '',
      about?.hash.slice(0, 10) ?? '',
      about?.subject ?? '',
      cell.startsWith(`${past.id}.`) || past.id === '' ? '' : `row was ${past.id}`,
    ];
  });
  return inColumns([['Says', 'Price', 'Since', 'By', 'Commit', '', ''], ...rows], [1]);
}

function historyJson(file: string, cell: string, found: readonly Past[]): object {
  return {
    format: 1,
    file,
    cell,
    changes: found.map(({ past, price, currency }) => {
      const { about } = past.version;
      return {
        text: past.text ?? null,
        id: past.id,
        price: price === undefined ? null : { minor: price, currency },
        commit: about?.hash ?? null,
        author: about?.author ?? null,
        date: about?.date ?? null,
        subject: about?.subject ?? null,
      };
    }),
  };
}

type HistoryRequest = Extract<CompareRequest, { readonly command: 'history' }>;

function pastOf(
  request: HistoryRequest,
  world: World,
):
  | { readonly ok: true; readonly found: readonly Past[] }
  | { readonly ok: false; readonly fault: string } {
  const { file, cell, most } = request;
  const text = world.read(file);
  if (text === undefined) return { ok: false, fault: unreadable(file) };
  const reading = readFile(text);
  const named = namedCell(reading, cell);
  if (named === undefined)
    return { ok: false, fault: `${file} has no cell ${cell}; write ROW.COLUMN or job.SETTING.` };
  const commits = commitsOf(file, most, world);
  if (commits === undefined)
    return {
      ok: false,
      fault: `${file} has no history: git cannot be run here, or the file is in no repository.`,
    };
  const history = openCellHistory<Commit | undefined>(named);
  let goesOn = history.take({ reading, about: undefined });
  for (const commit of commits) {
    if (!goesOn) break;
    const then = textAt(commit, dirname(file), world);
    if (then !== undefined) goesOn = history.take({ reading: readFile(then), about: commit });
  }
  const found = history.changes().map((past) => ({ past, ...priced(past, file, world) }));
  return { ok: true, found };
}

/** Tells who changed a cell, when, in which commit, and the price each time. */
export function history(request: HistoryRequest, world: World): ExitCode {
  const answer = pastOf(request, world);
  if (!answer.ok) return refused(answer.fault, world);
  const { file, cell, json } = request;
  const told = json
    ? `${JSON.stringify(historyJson(file, cell, answer.found), undefined, 2)}\n`
    : historyReport(cell, answer.found);
  world.out(told);
  return exitCodes.fine;
}

import type { Book, Kind } from '../../book/book.ts';
import type { FixRow, Problem } from '../../problems.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
import { nameOf, placeOf, wordIn } from '../cells.ts';
import { workProblem } from './work-problems.ts';

// Names listed in a problem; the rest are counted.
const namedRows = 3;

interface Ground {
  readonly answers: Answers;
  readonly book: Book;
  /** Ids of the rows that tasks of a kind stand on; empty text for a task that stands alone. */
  readonly done: ReadonlyMap<string, ReadonlySet<string>>;
  /** Ids under those rows: work on filler is work on the skin it lies on. */
  readonly below: ReadonlyMap<string, ReadonlySet<string>>;
}

function groundFor(answers: Answers, book: Book): Ground {
  const done = new Map<string, Set<string>>();
  const below = new Map<string, Set<string>>();
  for (const task of answers.rows('task')) {
    if (task.broken) continue;
    const on = done.get(task.kind) ?? new Set<string>();
    done.set(task.kind, on.add(wordIn(task, 'on')));
    const under = below.get(task.kind) ?? new Set<string>();
    const [, ...rest] = answers.under(task);
    for (const { id } of rest) under.add(id);
    below.set(task.kind, under);
  }
  return { answers, book, done, below };
}

// Either of several kinds of work will do: laying mat wets it as well.
function kindsCalledFor(call: string): readonly string[] {
  return call.split('/').map((word) => word.trim());
}

function isDone(part: AnsweredRow, call: string, ground: Ground): boolean {
  const under = ground.answers.under(part);
  return kindsCalledFor(call).some((kind) => {
    const on = ground.done.get(kind);
    if (on === undefined) return false;
    return (
      on.has('') ||
      on.has(part.id) ||
      under.some(({ id }) => on.has(id)) ||
      ground.below.get(kind)?.has(part.id) === true
    );
  });
}

/** The row that a new task would stand on: the part, or what it stands on, as the kind of work takes it. */
function standFor(part: AnsweredRow, kind: Kind | undefined, answers: Answers): AnsweredRow {
  const fits = (row: AnsweredRow): boolean => kind?.on.includes(row.kind) === true;
  return [part, ...answers.under(part)].find(fits) ?? part;
}

function newTask(kind: Kind | undefined, id: string, stand: AnsweredRow): FixRow {
  const name = `${kind?.name ?? id}: ${nameOf(stand)}`;
  return {
    table: 'task',
    word: id,
    cells: { name, kind: id, on: stand.id },
  };
}

function problemFor(call: string, parts: readonly AnsweredRow[], ground: Ground): Problem {
  const [id = call] = kindsCalledFor(call);
  const kind = ground.book.kinds.get(id);
  const names = parts.slice(0, namedRows).map(nameOf);
  const more = parts.length - names.length;
  const rows = `${names.join(', ')}${more > 0 ? ` and ${String(more)} more` : ''}`;
  const stands = new Map(
    parts.map((part) => {
      const stand = standFor(part, kind, ground.answers);
      return [stand.id, stand] as const;
    }),
  );
  const fresh = [...stands.values()].map((stand) => newTask(kind, id, stand));
  const work = kind?.name ?? id;
  const [first] = parts;
  const place = first === undefined ? { table: 'task' } : placeOf(first, 'kind');
  const calls = parts.length === 1 ? 'calls' : 'call';
  const title =
    fresh.length === 1 ? `Add “${work}”` : `Add “${work}” ${String(fresh.length)} times`;
  return workProblem(
    'work-missing',
    { work, rows, calls },
    { severity: 'warning', place, fixes: [{ title, place, text: '', rows: fresh }] },
  );
}

/**
 * Work that the kinds of the parts call for and no task does, one problem for each kind of work. A task
 * does the work of the part it is on, of all that stands on it, and of what that part lies on. A job
 * without any task has no plan yet, and is told nothing.
 */
export function missingWork(answers: Answers, book: Book): readonly Problem[] {
  if (answers.rows('task').every(({ broken }) => broken)) return [];
  const ground = groundFor(answers, book);
  const open = new Map<string, AnsweredRow[]>();
  for (const part of answers.rows('part')) {
    if (part.broken) continue;
    for (const call of book.kinds.get(part.kind)?.tasks ?? []) {
      if (isDone(part, call, ground)) continue;
      const parts = open.get(call);
      if (parts === undefined) open.set(call, [part]);
      else parts.push(part);
    }
  }
  return [...open].map(([call, parts]) => problemFor(call, parts, ground));
}

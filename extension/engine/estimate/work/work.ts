import type { Book } from '../../book/book.ts';
import { kindGroups } from '../../book/book.ts';
import { keptProblems, type Problem } from '../../problems.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { sameSettings } from '../../units/same-settings.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
import { wordIn } from '../cells.ts';
import { allPanels, panelOf, type PanelWay } from '../panels.ts';
import { changedRows, differingRows } from '../table-changes.ts';
import { missingWork } from './missing-work.ts';
import { taskRow, type TaskGround, type WorkedTask } from './task-row.ts';
import type { Task, TimeTotal, Work } from './task.ts';

/** The work of a job, kept up with the answers: a task that did not change is not worked out again. */
export interface WorkKeeper {
  /** The same object comes back where nothing it depends on changed. */
  readonly update: (answers: Answers, book: Book, settings: UnitSettings) => Work;
}

const tables = ['task', 'part', 'panel'] as const;
type Tables = ReadonlyMap<string, readonly AnsweredRow[]>;

interface Kept extends PanelWay {
  readonly row: AnsweredRow;
  readonly part: AnsweredRow | undefined;
  readonly loose: number | undefined;
  readonly worked: WorkedTask;
}

interface Around {
  readonly answers: Answers;
  readonly book: Book;
  readonly settings: UnitSettings;
  readonly loose: number | undefined;
}

interface Moving extends Around {
  /** Rows that changed, as `table/id`. */
  readonly keys: ReadonlySet<string>;
}

/** No work yet; `update` brings it. */
export function openWork(): WorkKeeper {
  let grounds: { readonly book: Book; readonly settings: UnitSettings } | undefined;
  let before: Tables = new Map();
  let kept: readonly Kept[] = [];
  let missing: readonly Problem[] = [];
  let work: Work | undefined;

  function forget(book: Book, settings: UnitSettings): void {
    const fresh = grounds?.book !== book || !sameSettings(grounds.settings, settings);
    if (fresh) [before, kept, work] = [new Map(), [], undefined];
    grounds = { book, settings };
  }

  return {
    update: (answers, book, settings) => {
      forget(book, settings);
      const now: Tables = new Map(tables.map((table) => [table, answers.rows(table)]));
      const { keys, moved } = changedRows(before, now);
      if (work !== undefined && !moved) return work;
      const around = { answers, book, settings, loose: loosePanels(now.get('panel') ?? []), keys };
      const next = keepTasks(kept, now.get('task') ?? [], around);
      const stands = standsMoved(before, now);
      const told = stands ? keptProblems(missing, missingWork(answers, book), sayTheSame) : missing;
      const same = told === missing && sameTasks(next, kept);
      [before, kept, missing] = [now, next, told];
      if (work === undefined || !same) work = workOf(next, told);
      return work;
    },
  };
}

function sameTasks(one: readonly Kept[], two: readonly Kept[]): boolean {
  return (
    one.length === two.length && one.every(({ worked }, index) => worked === two[index]?.worked)
  );
}

function sayTheSame(one: Problem, two: Problem): boolean {
  return one.message === two.message && one.place?.row === two.place?.row;
}

/** How often a task without a panel is done: as often as every panel is made, where that is one number. */
function loosePanels(panels: readonly AnsweredRow[]): number | undefined {
  const counts = new Set(panels.filter(({ broken }) => !broken).map(allPanels));
  const [only = 1] = counts;
  return counts.size > 1 ? undefined : only;
}

/** True where a part or task came, went, or is of another kind or on another row: the rest moves no plan. */
function standsMoved(before: Tables, now: Tables): boolean {
  return ['part', 'task'].some((table) => {
    const [old, fresh] = [before.get(table) ?? [], now.get(table) ?? []];
    if (old === fresh) return false;
    if (old.length !== fresh.length) return true;
    const stands = new Map<string, string>();
    for (const row of differingRows(old, fresh)) {
      const key = `${row.id}#${String(row.occurrence)}`;
      const stand = `${row.kind} ${wordIn(row, 'on')} ${wordIn(row, 'name')} ${String(row.broken)}`;
      const other = stands.get(key);
      if (other === undefined) stands.set(key, stand);
      else if (other === stand) stands.delete(key);
      else return true;
    }
    return stands.size > 0;
  });
}

function keepTasks(
  kept: readonly Kept[],
  rows: readonly AnsweredRow[],
  around: Moving,
): readonly Kept[] {
  const whole = rows.filter(({ broken }) => !broken);
  let known: ReadonlyMap<AnsweredRow, Kept> | undefined;
  return whole.map((row, index) => {
    // Most edits leave every task at its place.
    const before = kept[index];
    if (before?.row === row) return keepTask(row, before, around);
    known ??= new Map(kept.map((one) => [one.row, one]));
    return keepTask(row, known.get(row), around);
  });
}

function keepTask(row: AnsweredRow, old: Kept | undefined, around: Moving): Kept {
  const { loose, keys, answers } = around;
  const stays = old !== undefined && old.loose === loose;
  if (stays && !old.walked.some((key) => keys.has(key))) return old;
  const way = panelOf(row, answers);
  const [ground] = answers.under(row);
  const part = ground?.table === 'part' ? ground : undefined;
  const same = stays && old.panel === way.panel && sameHand(old.part, part);
  const worked = same ? old.worked : taskRow(row, { ...groundOf(around), panel: way.panel, part });
  return { row, part, loose, worked, ...way };
}

function sameHand(one: AnsweredRow | undefined, two: AnsweredRow | undefined): boolean {
  if (one === two) return true;
  return one !== undefined && two !== undefined && wordIn(one, 'hand') === wordIn(two, 'hand');
}

function groundOf({ book, settings, loose }: Around): Omit<TaskGround, 'panel' | 'part'> {
  return { book, settings, loose };
}

function totalOf(key: string, tasks: readonly Task[]): TimeTotal {
  const total = { key, working: 0, elapsed: 0, waiting: 0 };
  for (const { waits, working, elapsed } of tasks) {
    total.working += working;
    if (waits) total.waiting += elapsed;
    else total.elapsed += elapsed;
  }
  return total;
}

function totalsBy(
  keys: readonly string[],
  tasks: readonly Task[],
  keyOf: (task: Task) => string,
): readonly TimeTotal[] {
  const groups = new Map<string, Task[]>(keys.map((key) => [key, []]));
  for (const task of tasks) groups.get(keyOf(task))?.push(task);
  return [...groups].flatMap(([key, own]) => (own.length === 0 ? [] : [totalOf(key, own)]));
}

function workOf(kept: readonly Kept[], missing: readonly Problem[]): Work {
  const tasks = kept.map(({ worked }) => worked.task);
  const people = [...new Set(tasks.map(({ who }) => who))].sort();
  const { working, elapsed, waiting } = totalOf('', tasks);
  return {
    tasks,
    phases: totalsBy(kindGroups, tasks, ({ phase }) => phase),
    people: totalsBy(people, tasks, ({ who }) => who),
    totals: {
      working,
      elapsed,
      waiting,
      spread: Math.hypot(...tasks.map(({ spread }) => spread)),
      incomplete: tasks.filter(({ complete }) => !complete).length,
      uncalibrated: tasks.filter(({ source }) => source.startsWith('shop must calibrate')).length,
    },
    problems: [...kept.flatMap(({ worked }) => worked.problems), ...missing],
  };
}

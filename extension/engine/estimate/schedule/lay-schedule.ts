import type { Book } from '../../book/book.ts';
import { time } from '../../units/dimension.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { showQuantity } from '../../units/show.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
import { baseIn, wordIn } from '../cells.ts';
import type { Task, Work } from '../work/task.ts';
import {
  dayAt,
  dayOf,
  layWork,
  minutesAt,
  momentOf,
  weekWords,
  type Day,
  type Moment,
  type ShopHours,
} from './calendar.ts';
import type { Laid, Scheduled, Unscheduled } from './schedule.ts';
import { taskOrder } from './task-order.ts';

/** What a schedule is made from: a snapshot has it all. */
export interface ScheduleGround {
  readonly workbook: Answers;
  readonly book: Book;
  readonly work: Work;
  readonly settings: UnitSettings;
}

const minutesOfDay = 24 * 60;

// Usual hours where a book takes the constants away (common practice, no source).
const usual = { from: 8 * 60, length: 8 * 60, days: 'mon, tue, wed, thu, fri' };

function minutesFact(id: string, otherwise: number, answers: Answers): number {
  const row = answers.row('constant', id);
  const base = row === undefined ? undefined : baseIn(row, 'value', time);
  return base === undefined || base < 0 ? otherwise : base;
}

function wordsFact(id: string, answers: Answers): readonly string[] {
  const row = answers.row('constant', id);
  const text = row === undefined ? '' : wordIn(row, 'value') || (row.cell('value').text ?? '');
  return text
    .split(/[\s,]+/)
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== '');
}

/** The shop's hours from the constants of its book. */
export function shopHours(answers: Answers): ShopHours {
  const from = Math.min(minutesFact('day_begins', usual.from, answers), minutesOfDay - 1);
  const length = minutesFact('day_length', usual.length, answers);
  const words = wordsFact('work_days', answers);
  const chosen = words.length === 0 ? usual.days.split(', ') : words;
  const shut = wordsFact('shut_days', answers).flatMap((date) => dayOf(date) ?? []);
  return {
    days: new Set(weekWords.filter((word) => chosen.some((one) => one.startsWith(word)))),
    from,
    to: Math.min(minutesOfDay, from + Math.max(1, length)),
    shut: new Set(shut),
  };
}

function firstDay(answers: Answers): Day | undefined {
  for (const key of ['start', 'date']) {
    const result = answers.setting(key);
    const text = result.state === 'value' && result.value.kind === 'text' ? result.value.text : '';
    const day = dayOf(text);
    if (day !== undefined) return day;
  }
  return undefined;
}

/** Resin cannot be left half brushed: what it is done on draws catalyst. */
function isCoat(task: Task, answers: Answers): boolean {
  const row = task.on === '' ? undefined : answers.row('part', task.on);
  return row?.draws.includes('catalyst') === true;
}

/** The row that coats lie on: they must keep to each other's windows. */
function groundOf(task: Task, answers: Answers): string {
  const row = answers.row('part', task.on);
  const under = row === undefined ? [] : answers.under(row);
  const skin = under.find(({ kind }) => kind === 'skin') ?? under[0];
  return (skin ?? row)?.id ?? '';
}

interface Windows {
  readonly soonest: number;
  readonly latest: number;
}

interface Laying extends ScheduleGround {
  readonly hours: ShopHours;
  readonly windows: Windows;
  /** When each person is free again. */
  readonly free: Map<string, Moment>;
  /** When each task is over. */
  readonly over: Map<string, Moment>;
  /** When the last coat on a row was brushed. */
  readonly coated: Map<string, Moment>;
  /** When all before the next task in order is over, waits among them. */
  line: Moment;
}

function laidTask(task: Task, laying: Laying): Laid | undefined {
  const { workbook, hours, windows, free, over, coated, settings } = laying;
  const notes: string[] = [];
  const before = task.after === '' ? undefined : over.get(task.after);
  let from = before ?? laying.line;
  const coat = isCoat(task, workbook) && !task.waits;
  const lies = coat ? groundOf(task, workbook) : '';
  const last = coat ? coated.get(lies) : undefined;
  if (last !== undefined) from = Math.max(from, last + windows.soonest);
  if (task.waits) {
    const to = from + task.elapsed;
    return { task, stretches: [{ from, to }], from, to, notes };
  }
  from = Math.max(from, free.get(task.who) ?? from);
  const stretches = layWork(task.elapsed, from, { hours, whole: coat });
  const [first, end] = [stretches[0], stretches.at(-1)];
  if (first === undefined || end === undefined) return undefined;
  if (last !== undefined && first.from - last > windows.latest) {
    const gap = showQuantity({ base: first.from - last, dimension: time }, settings).text;
    const limit = showQuantity({ base: windows.latest, dimension: time }, settings).text;
    notes.push(
      `comes ${gap} after the coat before it; after ${limit} it no longer bonds by itself: sand first.`,
    );
  }
  if (coat && stretches.length > 1) {
    notes.push('takes longer than a working day: plan it so that no coat is left half brushed.');
  }
  if (coat) coated.set(lies, end.to);
  free.set(task.who, end.to);
  return { task, stretches, from: first.from, to: end.to, notes };
}

function windowsOf(answers: Answers): Windows {
  return {
    soonest: minutesFact('recoat_soonest', 60, answers),
    latest: minutesFact('recoat_latest', 24 * 60, answers),
  };
}

function refused(why: string): Unscheduled {
  return { ok: false, why };
}

/**
 * Lays the tasks of a job over the shop's working hours from its first day: `start` of the job, else its
 * date. Waits go by the clock, also over night. One task follows another unless its row names the task
 * it comes after; each person does one thing at a time. Other jobs in the shop are not known of.
 */
export function laySchedule(ground: ScheduleGround): Scheduled {
  const { workbook, work, book } = ground;
  const start = firstDay(workbook);
  if (work.tasks.length === 0) return refused('The job has no tasks yet.');
  if (start === undefined) return refused('The job has no start and no date: fill in one of them.');
  const hours = shopHours(workbook);
  if (hours.days.size === 0)
    return refused('The shop has no working days: see its constant work_days.');
  const { order, looped } = taskOrder(
    work.tasks.filter(({ complete }) => complete),
    { answers: workbook, book },
  );
  const line = momentOf(start, hours.from);
  const laying: Laying = {
    ...ground,
    hours,
    windows: windowsOf(workbook),
    free: new Map(),
    over: new Map(),
    coated: new Map(),
    line,
  };
  const laid: Laid[] = [];
  for (const task of order) {
    const one = laidTask(task, laying);
    if (one === undefined) return refused('The shop never opens: see its constant shut_days.');
    laid.push(one);
    laying.over.set(task.id, one.to);
    laying.line = Math.max(laying.line, one.to);
  }
  return {
    ok: true,
    schedule: { ...ends(laid, line), hours, start, notes: notesOf(ground, looped) },
  };
}

function ends(laid: readonly Laid[], line: Moment) {
  const finishAt = laid.reduce((latest, { to }) => Math.max(latest, to), line);
  const worked = laid
    .filter(({ task }) => !task.waits)
    .flatMap(({ stretches }) => stretches.map(({ from }) => dayAt(from)));
  // What ends at midnight belongs to the day before.
  const finish = minutesAt(finishAt) === 0 ? dayAt(finishAt) - 1 : dayAt(finishAt);
  return { laid, finish, finishAt, workDays: new Set(worked).size };
}

function notesOf({ work, workbook }: ScheduleGround, looped: readonly Task[]): readonly string[] {
  const notes = ['Other jobs in the shop are not known of: the days are this job’s alone.'];
  if (work.totals.incomplete > 0) {
    notes.push(`${String(work.totals.incomplete)} without a time are left out.`);
  }
  if (looped.length > 0) {
    const names = looped.map(({ name }) => name).join(', ');
    notes.push(`These wait for each other and stand as on the sheet: ${names}.`);
  }
  const resting = workbook.rows('task').filter((row) => isUnknown(row, work));
  for (const row of resting)
    notes.push(`${row.id} comes after ${wordIn(row, 'after')}, which is no task.`);
  return notes;
}

function isUnknown(row: AnsweredRow, work: Work): boolean {
  const after = wordIn(row, 'after');
  return after !== '' && !work.tasks.some(({ id }) => id === after);
}

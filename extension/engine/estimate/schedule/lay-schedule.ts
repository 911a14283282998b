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
  type Stretch,
  type WeekWord,
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
const usual = { from: 8 * 60, length: 8 * 60, days: 'mon_to_fri' };

function minutesFact(id: string, otherwise: number, answers: Answers): number {
  const row = answers.row('constant', id);
  const base = row === undefined ? undefined : baseIn(row, 'value', time);
  return base === undefined || base < 0 ? otherwise : base;
}

/** Days of the week in words such as `mon_to_fri` or `tue_wed_sat`. */
function weekDays(text: string): ReadonlySet<WeekWord> {
  const places = text
    .toLowerCase()
    .split(/[\s,_]+/)
    .map((word) => (word === 'to' ? 'to' : weekWords.findIndex((one) => word.startsWith(one))));
  const days = new Set<WeekWord>();
  places.forEach((place, index) => {
    const before = places[index - 2];
    const ranges = places[index - 1] === 'to' && typeof before === 'number';
    if (typeof place !== 'number' || place < 0) return;
    for (let day = ranges ? before : place; day <= place; day++) {
      const word = weekWords[day];
      if (word !== undefined) days.add(word);
    }
  });
  return days;
}

/**
 * The shop's hours from the constants of its book: day_begins, day_length, work_days; dates in the note
 * of work_days are days on which it is shut.
 */
export function shopHours(answers: Answers): ShopHours {
  const from = Math.min(minutesFact('day_begins', usual.from, answers), minutesOfDay - 1);
  const length = minutesFact('day_length', usual.length, answers);
  const row = answers.row('constant', 'work_days');
  const said = row === undefined ? '' : wordIn(row, 'value') || (row.cell('value').text ?? '');
  const note = row?.cell('note').text ?? '';
  const dates = note.match(/\d{4}-\d{2}-\d{2}/g) ?? [];
  return {
    days: weekDays(said === '' ? usual.days : said),
    from,
    to: Math.min(minutesOfDay, from + Math.max(1, length)),
    shut: new Set(dates.flatMap((date) => dayOf(date) ?? [])),
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

/** When a task may begin: after what comes before it, and when the coat under it has set. */
function earliest(task: Task, coat: Coated | undefined, laying: Laying): Moment {
  const before = task.after === '' ? undefined : laying.over.get(task.after);
  const from = before ?? laying.line;
  return coat?.last === undefined ? from : Math.max(from, coat.last + laying.windows.soonest);
}

/** The row that coats lie on, and when the last of them was brushed. */
interface Coated {
  readonly on: string;
  readonly last: Moment | undefined;
}

function coatNotes(
  stretches: readonly Stretch[],
  { last }: Coated,
  { windows, settings }: Laying,
): readonly string[] {
  const notes: string[] = [];
  const from = stretches[0]?.from ?? 0;
  if (last !== undefined && from - last > windows.latest) {
    const gap = showQuantity({ base: from - last, dimension: time }, settings).text;
    const limit = showQuantity({ base: windows.latest, dimension: time }, settings).text;
    notes.push(
      `comes ${gap} after the coat before it; after ${limit} it no longer bonds by itself: sand first.`,
    );
  }
  if (stretches.length > 1) {
    notes.push('takes longer than a working day: plan it so that no coat is left half brushed.');
  }
  return notes;
}

function laidTask(task: Task, laying: Laying): Laid | undefined {
  const { workbook, hours, free, coated } = laying;
  const on = groundOf(task, workbook);
  const coat = isCoat(task, workbook) && !task.waits ? { on, last: coated.get(on) } : undefined;
  const ready = earliest(task, coat, laying);
  if (task.waits) {
    const to = ready + task.elapsed;
    return { task, stretches: [{ from: ready, to }], from: ready, to, notes: [] };
  }
  const from = Math.max(ready, free.get(task.who) ?? ready);
  const stretches = layWork(task.elapsed, from, { hours, whole: coat !== undefined });
  const [first, end] = [stretches[0], stretches.at(-1)];
  if (first === undefined || end === undefined) return undefined;
  if (coat !== undefined) coated.set(coat.on, end.to);
  free.set(task.who, end.to);
  const notes = coat === undefined ? [] : coatNotes(stretches, coat, laying);
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
    if (one === undefined)
      return refused('The shop never opens: see the dates in the note of its constant work_days.');
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

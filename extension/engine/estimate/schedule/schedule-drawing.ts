import type { Drawing, Mark } from '../../drawing/drawing.ts';
import type { Point } from '../../geometry/outline.ts';
import {
  clockText,
  dateOf,
  dayAt,
  dayText,
  minutesAt,
  weekWordOf,
  type ShopHours,
  type Stretch,
} from './calendar.ts';
import type { Laid, Schedule } from './schedule.ts';

const barHeight = 3;

/** How a task is written beside its bar. */
interface RowForm {
  readonly height: number;
  /** Heights above the row's foot. */
  readonly barAt: number;
  readonly nameAt: number;
  /** Room for names at the left of the bars; 0 where they stand over them. */
  readonly names: number;
  /** Letters of a name that are shown. */
  readonly letters: number;
}

/** A task takes a line for its name and, under it, one for its bar: names are long, panes are narrow. */
const paneForm: RowForm = { height: 9, barAt: 2, nameAt: 4.6, names: 0, letters: 48 };
/** On paper names stand at the left, so that many tasks find room. */
const paperForm: RowForm = { height: 4.6, barAt: 2.3, nameAt: 1.3, names: 58, letters: 31 };
/** Tasks in one picture on paper, that a page holds with its heading. */
const mostOnPaper = 34;

/** Room that one date takes. */
const dateWidth = 17;
const chartWidth = 120;

/** Width of a day on which the shop is shut, against one on which it works. */
const shutWidth = 0.35;
/** Share of a working day's width that its working hours take; the night is drawn short. */
const openShare = 0.8;

function box(from: number, to: number, y: number): readonly Point[] {
  const [bottom, top] = [y - barHeight / 2, y + barHeight / 2];
  return [
    { x: from, y: bottom },
    { x: to, y: bottom },
    { x: to, y: top },
    { x: from, y: top },
  ];
}

interface Scale {
  readonly form: RowForm;
  readonly x: (moment: number) => number;
  readonly days: readonly { readonly day: number; readonly at: number }[];
  readonly height: number;
}

/** Where a moment lies within its day, from 0 to 1: working hours take most of it. */
function shareOfDay(minutes: number, { from, to }: ShopHours): number {
  const night = (1 - openShare) / 2;
  if (minutes < from) return (minutes / from) * night;
  if (minutes <= to) return night + ((minutes - from) / (to - from)) * openShare;
  return 1 - night + ((minutes - to) / (24 * 60 - to)) * night;
}

function scaleOf(schedule: Schedule, form: RowForm, rows: number): Scale {
  const { start, finish, laid, hours } = schedule;
  const last = laid.reduce((latest, { to }) => Math.max(latest, dayAt(to)), finish);
  const widths = Array.from({ length: last - start + 1 }, (_, index) => {
    const day = start + index;
    const open = hours.days.has(weekWordOf(day)) && !hours.shut.has(day);
    return open ? 1 : shutWidth;
  });
  const whole = widths.reduce((sum, width) => sum + width, 0);
  const unit = chartWidth / whole;
  let at = form.names;
  const days = widths.map((width, index) => {
    const from = at;
    at += width * unit;
    return { day: start + index, at: from, width: width * unit };
  });
  return {
    form,
    x: (moment) => {
      const day = days[dayAt(moment) - start];
      if (day === undefined) return form.names + chartWidth;
      const share =
        day.width < unit ? minutesAt(moment) / (24 * 60) : shareOfDay(minutesAt(moment), hours);
      return day.at + share * day.width;
    },
    days,
    height: rows * form.height,
  };
}

function bar(stretch: Stretch, y: number, laid: Laid, scale: Scale): Mark {
  const [from, to] = [scale.x(stretch.from), scale.x(stretch.to)];
  return {
    kind: 'line',
    role: laid.notes.length > 0 ? 'limit' : laid.task.waits ? 'skin' : 'part',
    // A short task is still to be seen.
    points: box(from, Math.max(to, from + 0.6), y),
    closed: true,
    filled: true,
    row: { table: 'task', id: laid.task.id },
  };
}

function dayMarks({ days, height, form }: Scale): readonly Mark[] {
  const lines = [...days.map(({ at }) => at), form.names + chartWidth].map((at): Mark => {
    const points = [
      { x: at, y: 0 },
      { x: at, y: height },
    ];
    return { kind: 'line', role: 'axis', points, closed: false };
  });
  let free = 0;
  const dates = days.flatMap(({ day, at }): readonly Mark[] => {
    // Dates are written as closely as they can be read.
    if (at < free) return [];
    free = at + dateWidth;
    const text = dateOf(day).slice(5);
    const place = { x: at + 0.5, y: height + 2 };
    return [{ kind: 'text', role: 'note', at: place, text, height: 2.4, anchor: 'start' }];
  });
  return [...lines, ...dates];
}

function laidWords({ task, from, to, notes }: Laid): string {
  const begins = `${dayText(dayAt(from))} ${clockText(minutesAt(from))}`;
  const ends = `${dayText(dayAt(to))} ${clockText(minutesAt(to))}`;
  const told = notes.length === 0 ? '' : `; it ${notes.join(' It ')}`;
  return `${task.name}: ${begins} to ${ends}${told}`;
}

function taskMarks(laid: Laid, index: number, scale: Scale): readonly Mark[] {
  const { height, nameAt, barAt, letters } = scale.form;
  const foot = scale.height - (index + 1) * height;
  const { id, name } = laid.task;
  const label: Mark = {
    kind: 'text',
    role: 'note',
    at: { x: 0.5, y: foot + nameAt },
    text: name.length > letters ? `${name.slice(0, letters - 1)}…` : name,
    height: 2.4,
    anchor: 'start',
    row: { table: 'task', id },
  };
  return [label, ...laid.stretches.map((stretch) => bar(stretch, foot + barAt, laid, scale))];
}

function drawingOf(schedule: Schedule, form: RowForm, tasks: readonly Laid[]): Drawing {
  const scale = scaleOf(schedule, form, tasks.length);
  return {
    id: 'schedule',
    title: `Schedule: ${dayText(schedule.start)} to ${dayText(schedule.finish)}`,
    words: [...tasks.map(laidWords), ...schedule.notes],
    box: { left: 0, bottom: 0, right: form.names + chartWidth, top: scale.height + 6 },
    marks: [...dayMarks(scale), ...tasks.flatMap((laid, index) => taskMarks(laid, index, scale))],
  };
}

/** The schedule as bars over days, one task a line. */
export function scheduleDrawing(schedule: Schedule): Drawing {
  return drawingOf(schedule, paneForm, schedule.laid);
}

/** The same for paper: as many pictures as there are pages of tasks, all over the same days. */
export function schedulePaperDrawings(schedule: Schedule): readonly Drawing[] {
  const { laid } = schedule;
  const pages = Math.ceil(laid.length / mostOnPaper);
  const each = Math.ceil(laid.length / Math.max(1, pages));
  return Array.from({ length: pages }, (_, page) =>
    drawingOf(schedule, paperForm, laid.slice(page * each, (page + 1) * each)),
  );
}

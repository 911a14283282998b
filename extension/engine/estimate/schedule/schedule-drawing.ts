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

/** A task takes a line for its name and, under it, one for its bar: names are long, panes are narrow. */
const rowHeight = 9;
const barHeight = 3;
/** Heights above the row's foot. */
const [barAt, nameAt] = [2, 4.6];
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

function scaleOf({ start, finish, laid, hours }: Schedule): Scale {
  const last = laid.reduce((latest, { to }) => Math.max(latest, dayAt(to)), finish);
  const widths = Array.from({ length: last - start + 1 }, (_, index) => {
    const day = start + index;
    const open = hours.days.has(weekWordOf(day)) && !hours.shut.has(day);
    return open ? 1 : shutWidth;
  });
  const whole = widths.reduce((sum, width) => sum + width, 0);
  const unit = chartWidth / whole;
  let at = 0;
  const days = widths.map((width, index) => {
    const from = at;
    at += width * unit;
    return { day: start + index, at: from, width: width * unit };
  });
  return {
    x: (moment) => {
      const day = days[dayAt(moment) - start];
      if (day === undefined) return chartWidth;
      const share =
        day.width < unit ? minutesAt(moment) / (24 * 60) : shareOfDay(minutesAt(moment), hours);
      return day.at + share * day.width;
    },
    days,
    height: laid.length * rowHeight,
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

function dayMarks({ days, height }: Scale): readonly Mark[] {
  const lines = [...days.map(({ at }) => at), chartWidth].map((at): Mark => {
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

/** The schedule as bars over days, one task a line. */
export function scheduleDrawing(schedule: Schedule): Drawing {
  const scale = scaleOf(schedule);
  const marks = schedule.laid.flatMap((laid, index): readonly Mark[] => {
    const foot = scale.height - (index + 1) * rowHeight;
    const name: Mark = {
      kind: 'text',
      role: 'note',
      at: { x: 0.5, y: foot + nameAt },
      text: laid.task.name.length > 48 ? `${laid.task.name.slice(0, 47)}…` : laid.task.name,
      height: 2.4,
      anchor: 'start',
      row: { table: 'task', id: laid.task.id },
    };
    return [name, ...laid.stretches.map((stretch) => bar(stretch, foot + barAt, laid, scale))];
  });
  return {
    id: 'schedule',
    title: `Schedule: ${dayText(schedule.start)} to ${dayText(schedule.finish)}`,
    words: [...schedule.laid.map(laidWords), ...schedule.notes],
    box: { left: 0, bottom: 0, right: chartWidth, top: scale.height + 6 },
    marks: [...dayMarks(scale), ...marks],
  };
}

import type { Drawing, Mark } from '../../drawing/drawing.ts';
import type { Point } from '../../geometry/outline.ts';
import {
  clockText,
  dateOf,
  dayAt,
  dayText,
  minutesAt,
  momentOf,
  type Stretch,
} from './calendar.ts';
import type { Laid, Schedule } from './schedule.ts';

const rowHeight = 7;
const barHeight = 4.5;
const nameWidth = 78;
const chartWidth = 190;

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
  readonly days: number;
  readonly height: number;
}

function scaleOf({ start, finish, laid }: Schedule): Scale {
  const days = finish - start + 1;
  const first = momentOf(start, 0);
  const width = days * 24 * 60;
  return {
    x: (moment) => nameWidth + ((moment - first) / width) * chartWidth,
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

function dayMarks({ start, hours }: Schedule, { x, days, height }: Scale): readonly Mark[] {
  // Dates are written as closely as they can be read.
  const every = Math.ceil((days * 18) / chartWidth);
  return Array.from({ length: days + 1 }, (_, index): readonly Mark[] => {
    const day = start + index;
    const at = x(momentOf(day, 0));
    const line: Mark = {
      kind: 'line',
      role: 'axis',
      points: [
        { x: at, y: 0 },
        { x: at, y: height },
      ],
      closed: false,
    };
    if (index === days || index % every !== 0) return [line];
    const middle = { x: x(momentOf(day, hours.from)), y: height + 2 };
    const text = dateOf(day).slice(5);
    return [line, { kind: 'text', role: 'note', at: middle, text, height: 2.4, anchor: 'start' }];
  }).flat();
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
    const y = scale.height - (index + 0.5) * rowHeight;
    const name: Mark = {
      kind: 'text',
      role: 'note',
      at: { x: 0, y: y - 1.2 },
      text: laid.task.name.length > 44 ? `${laid.task.name.slice(0, 43)}…` : laid.task.name,
      height: 2.4,
      anchor: 'start',
      row: { table: 'task', id: laid.task.id },
    };
    return [name, ...laid.stretches.map((stretch) => bar(stretch, y, laid, scale))];
  });
  return {
    id: 'schedule',
    title: `Schedule: ${dayText(schedule.start)} to ${dayText(schedule.finish)}`,
    words: [...schedule.laid.map(laidWords), ...schedule.notes],
    box: { left: 0, bottom: 0, right: nameWidth + chartWidth, top: scale.height + 6 },
    marks: [...dayMarks(schedule, scale), ...marks],
  };
}

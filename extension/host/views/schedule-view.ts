import {
  clockText,
  dayAt,
  dayText,
  hoursWords,
  laySchedule,
  minutesAt,
  minutesText,
  scheduleDrawing,
  type Laid,
  type Snapshot,
} from '../../engine/index.ts';
import type { LaidTaskView, ScheduleView } from '../../protocol/schedule-view.ts';
import { pictureView } from './picture-view.ts';

function momentText(moment: number): string {
  return `${dayText(dayAt(moment))} ${clockText(minutesAt(moment))}`;
}

function whenText({ from, to }: Laid): string {
  const end = dayAt(from) === dayAt(to) ? clockText(minutesAt(to)) : momentText(to);
  return `${momentText(from)} to ${end}`;
}

function taskView(laid: Laid, { settings }: Snapshot): LaidTaskView {
  const { id, occurrence, name, elapsed, waits } = laid.task;
  const [first = '', ...others] = laid.notes;
  const note = [first.charAt(0).toUpperCase() + first.slice(1), ...others].join(' ');
  return {
    id,
    occurrence,
    name,
    when: whenText(laid),
    takes: `${minutesText(Math.round(elapsed), settings)}${waits ? ' waiting' : ''}`,
    note,
  };
}

/** The job laid over the shop's hours, or why it cannot be. */
export function scheduleView(snapshot: Snapshot): ScheduleView {
  const found = laySchedule(snapshot);
  const title = 'Schedule';
  if (!found.ok) {
    const none = { facts: [], notes: [], tasks: [], words: [], rows: {} };
    return { title, message: found.why, ...none, drawing: undefined };
  }
  const { schedule } = found;
  const drawing = scheduleDrawing(schedule);
  return {
    title: drawing.title,
    message: '',
    facts: [
      { key: 'start', label: 'Begins', value: dayText(schedule.start) },
      { key: 'finish', label: 'Finished', value: dayText(schedule.finish) },
      { key: 'days', label: 'Days with work', value: String(schedule.workDays) },
      { key: 'hours', label: 'Working hours', value: hoursWords(schedule.hours) },
    ],
    notes: schedule.notes,
    tasks: schedule.laid.map((laid) => taskView(laid, snapshot)),
    words: drawing.words,
    drawing: pictureView(drawing),
    rows: Object.fromEntries(
      schedule.laid.map(({ task }) => [`task/${task.id}`, task.name] as const),
    ),
  };
}

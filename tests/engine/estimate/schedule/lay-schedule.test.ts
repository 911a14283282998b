import { describe, expect, test } from 'vitest';
import {
  dateOf,
  dayAt,
  minutesAt,
} from '../../../../extension/engine/estimate/schedule/calendar.ts';
import { laySchedule } from '../../../../extension/engine/estimate/schedule/lay-schedule.ts';
import {
  scheduleDrawing,
  schedulePaperDrawings,
} from '../../../../extension/engine/estimate/schedule/schedule-drawing.ts';
import type { Schedule } from '../../../../extension/engine/estimate/schedule/schedule.ts';
import { jobWith, row, task } from '../../../helpers/priced-job.ts';
import { doorSnapshot } from '../../../helpers/sample-session.ts';

function scheduleOf(of: Parameters<typeof laySchedule>[0]): Schedule {
  const made = laySchedule(of);
  if (!made.ok) throw new Error(made.why);
  return made.schedule;
}

// 2026-11-25 is a Wednesday.
function laid(...rows: readonly string[]): Schedule {
  return scheduleOf(jobWith({ start: '2026-11-25' }, ...rows));
}

function times(schedule: Schedule): Readonly<Record<string, string>> {
  const text = (moment: number): string =>
    `${dateOf(dayAt(moment)).slice(5)} ${String(minutesAt(moment) / 60)}`;
  return Object.fromEntries(
    schedule.laid.map(({ task: { id }, from, to }) => [id, `${text(from)} – ${text(to)}`]),
  );
}

describe('laySchedule', () => {
  test('one task follows another within the shop’s hours; waits go by the clock', () => {
    const schedule = laid(
      task('one', '300 min'),
      task('two', '240 min', { after: 'one' }),
      task('rest', '360 min', { kind: 'wait', after: 'two' }),
      task('three', '60 min', { after: 'rest' }),
    );
    expect(times(schedule)).toEqual({
      one: '11-25 8 – 11-25 13',
      two: '11-25 13 – 11-26 9',
      rest: '11-26 9 – 11-26 15',
      three: '11-26 15 – 11-26 16',
    });
    expect([dateOf(schedule.finish), schedule.workDays]).toEqual(['2026-11-26', 2]);
  });

  test('work that comes after something else goes on while a skin cures', () => {
    const schedule = laid(
      task('coat', '60 min', { kind: 'clean' }),
      task('rest', '360 min', { kind: 'wait', after: 'coat' }),
      task('grille', '60 min', { kind: 'clean', after: 'coat' }),
    );
    expect(times(schedule)['grille']).toBe('11-25 9 – 11-25 10');
  });

  test('two people work side by side where their tasks let them', () => {
    const schedule = laid(
      task('one', '120 min', { who: 'ann' }),
      task('two', '120 min', { who: 'ben', after: 'zero' }),
      task('zero', '0 min'),
    );
    expect(times(schedule)['two']).toBe('11-25 10 – 11-25 12');
    expect(schedule.notes.join(' ')).toMatch(/Other jobs in the shop are not known of/);
  });

  test('tasks go by their kinds, not by the order in which kits wrote them', () => {
    const { laid: order } = scheduleOf(doorSnapshot());
    const ids = order.map(({ task: { id } }) => id);
    expect(ids[0]).toBe('measuring');
    expect(ids.indexOf('door_fitting')).toBeGreaterThan(ids.indexOf('door_covering'));
    expect(ids.indexOf('door_curing')).toBeGreaterThan(ids.indexOf('door_matting'));
    expect(ids.indexOf('door_curing')).toBeLessThan(ids.indexOf('door_trimming'));
    expect(ids.at(-1)).toBe('paperwork');
  });

  test('the days of the shop are its own', () => {
    const cells = { value: 'wed_to_thu_sat', source: 'this shop', note: 'Shut on 2026-11-26.' };
    const week = row('constant', 'work_days', cells);
    const job = jobWith({ start: '2026-11-25' }, week, task('long', '960 min'));
    expect(times(scheduleOf(job))['long']).toBe('11-25 8 – 11-28 16');
    expect(job.problems).toEqual([]);
  });

  test('a coat waits until the one before has gelled, and is told when it comes too late', () => {
    const coats = [
      row('part', 'cloth', { kind: 'skin', area: '2 sqft' }),
      row('part', 'first', { kind: 'resin', on: 'cloth', use: '200 g', percent: '2 %' }),
      row('part', 'second', { kind: 'resin', on: 'cloth', use: '200 g', percent: '2 %' }),
    ];
    const coat = (id: string, on: string, more = {}): string =>
      row('task', id, { kind: 'coat', on, minutes: '30 min', setup: '0 min', per: 'job', ...more });
    const soon = laid(...coats, coat('do_first', 'first'), coat('do_second', 'second'));
    expect(times(soon)['do_second']).toBe('11-25 9.5 – 11-25 10');
    const late = laid(
      ...coats,
      coat('do_first', 'first'),
      task('rest', '1600 min', { kind: 'wait', after: 'do_first' }),
      coat('do_second', 'second', { after: 'rest' }),
    );
    expect(late.laid.find(({ task: { id } }) => id === 'do_second')?.notes[0]).toMatch(
      /no longer bonds by itself: sand first/,
    );
  });

  test('without tasks, or without a day to begin, it says so', () => {
    expect(laySchedule(jobWith({}))).toMatchObject({ ok: false });
    expect(laySchedule(jobWith({}, task('one', '5 min')))).toEqual({
      ok: false,
      why: 'The job has no start and no date: fill in one of them.',
    });
  });

  test('tasks that wait for each other are told', () => {
    const { notes, laid: order } = laid(
      task('one', '5 min', { after: 'two' }),
      task('two', '5 min', { after: 'one' }),
    );
    expect(order).toHaveLength(2);
    expect(notes.join(' ')).toMatch(/wait for each other/);
  });
});

describe('scheduleDrawing', () => {
  test('has a bar for each stretch, in words too, and stays inside its box', () => {
    const schedule = scheduleOf(doorSnapshot());
    const drawing = scheduleDrawing(schedule);
    const bars = drawing.marks.filter((mark) => mark.kind === 'line' && mark.closed);
    expect(bars).toHaveLength(schedule.laid.flatMap(({ stretches }) => stretches).length);
    const xs = drawing.marks.flatMap((mark) =>
      mark.kind === 'line' ? mark.points.map(({ x }) => x) : [mark.at.x],
    );
    expect(Math.min(...xs)).toBeGreaterThanOrEqual(drawing.box.left);
    expect(Math.max(...xs)).toBeLessThanOrEqual(drawing.box.right + 1e-9);
    expect(drawing.words[0]).toMatch(/^Measure and template the car: Wed 2026-11-25 8:00 to /);
  });
});

describe('schedulePaperDrawings', () => {
  test('a long job is drawn in as many pictures as pages need, every task once, over the same days', () => {
    const many = Array.from({ length: 80 }, (_, index) => task(`job_${String(index)}`, '30 min'));
    const found = laySchedule(jobWith({ date: '2026-11-25' }, ...many));
    if (!found.ok) throw new Error(found.why);
    const drawings = schedulePaperDrawings(found.schedule);
    expect(drawings).toHaveLength(3);
    const rows = drawings.flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'text' && mark.row !== undefined ? mark.row.id : [])),
    );
    expect(rows.toSorted()).toEqual(many.map((_, index) => `job_${String(index)}`).toSorted());
    const dates = drawings.map(({ marks }) =>
      marks.flatMap((mark) => (mark.kind === 'text' && mark.row === undefined ? mark.text : [])),
    );
    expect(new Set(dates.map((one) => one.join())).size).toBe(1);
    for (const { box } of drawings) expect(box.top).toBeLessThan(175);
  });
});

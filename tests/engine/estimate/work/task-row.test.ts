import { describe, expect, test } from 'vitest';
import type { Task } from '../../../../extension/engine/estimate/work/task.ts';
import { pricedJob, row } from '../../../helpers/priced-job.ts';

const pair = row('panel', 'door', { hands: 'pair' });
const base = row('part', 'plate', {
  kind: 'base',
  panel: 'door',
  material: 'hardboard_6',
  shape: 'rect(24 in, 12 in)',
});

function worked(cells: Readonly<Record<string, string>>, ...more: readonly string[]) {
  const bare = row('kind', 'bare', { name: 'Bare', table: 'task' });
  const { work } = pricedJob(pair, base, bare, ...more, row('task', 'job', cells));
  const task = work.tasks.at(-1);
  if (task === undefined) throw new Error('There is no task');
  return { task, problems: work.problems.filter(({ code }) => code !== 'work-missing') };
}

function elapsed(cells: Readonly<Record<string, string>>): number {
  return worked(cells).task.elapsed;
}

describe('taskRow', () => {
  test('minutes are basis × rate for each panel, and the set-up once', () => {
    // 2 sq ft at 10 min/sqft for each of two panels, and 10 min of set-up.
    expect(
      elapsed({ kind: 'stretch', on: 'plate', basis: '=on.area', rate: '10 min/sqft' }),
    ).toBeCloseTo(50, 9);
  });

  test.each([
    ['an area', '2 sqft', '10 min/sqft', 20],
    ['a length', '36 in', '0.5 min/in', 18],
    ['a count', '3', '12 min', 36],
    ['a weight', '500 g', '4 min/kg', 2],
    ['a volume', '1 qt', '3 min/floz', 96],
  ])('the basis may be %s', (_, basis, rate, minutes) => {
    const cells = { kind: 'clean', setup: '0 min', per: 'job', basis, rate };
    expect(elapsed(cells)).toBeCloseTo(minutes, 9);
  });

  test('a whole time that is typed stands before basis and rate, one that is a default behind', () => {
    expect(elapsed({ kind: 'stretch', minutes: '7 min', setup: '0 min', per: 'job' })).toBe(7);
    expect(elapsed({ kind: 'clean', basis: '2', rate: '4 min' })).toBe(8);
  });

  test('a basis over a list of rows', () => {
    const cells = { kind: 'clean', basis: '=SUM(all(base).area)', rate: '5 min/sqft', per: 'job' };
    expect(elapsed(cells)).toBeCloseTo(10, 9);
  });

  test('work on a left part is done for left panels only', () => {
    const left = row('part', 'stick', { kind: 'shim', on: 'plate', hand: 'left', use: '1 in' });
    const cells = { kind: 'aim', on: 'stick', minutes: '9 min', setup: '0 min' };
    expect(worked(cells, left).task).toMatchObject({ elapsed: 9, times: 1 });
  });

  // PERT: 10, 15 and 30 min come to 16.667 with 3.333 (a page of examination questions on PERT).
  test('three estimates give the expected time and its spread', () => {
    const cells = { kind: 'clean', low: '10 min', minutes: '15 min', high: '30 min' };
    const { task } = worked(cells);
    expect(task.working).toBeCloseTo(16.667, 3);
    expect(task.spread).toBeCloseTo(3.333, 3);
  });

  test('three estimates that do not rise are told and left out', () => {
    const { task, problems } = worked({ kind: 'clean', low: '20 min', minutes: '15 min' });
    expect(task).toMatchObject({ working: 15, spread: 0 });
    expect(problems.map(({ code }) => code)).toEqual(['task-range-out-of-order']);
  });

  // Common trade use of Crawford's model: at 85 % the second of two takes 85 % of the first.
  test('the second door takes a share of the first', () => {
    const cells = { kind: 'fit', on: 'plate', minutes: '60 min', setup: '10 min', learn: '85 %' };
    const { task } = worked(cells);
    expect(task.elapsed).toBeCloseTo(10 + 60 + 51, 9);
    expect(task.steps.map(({ text }) => text)).toContain(
      '× 2 panels, each doubling at 85 % of the time: × 1.85',
    );
  });

  test('a share of learning outside 0 to 100 % is told and left out', () => {
    const { task, problems } = worked({
      kind: 'fit',
      on: 'plate',
      minutes: '60 min',
      learn: '120 %',
    });
    expect(task.elapsed).toBe(130);
    expect(problems.map(({ code }) => code)).toEqual(['task-learning-outside']);
  });

  test('two people double the hours to be paid, not the hours by the clock', () => {
    const { task } = worked({ kind: 'fit', on: 'plate', minutes: '60 min', people: '2' });
    expect(task).toMatchObject({ elapsed: 130, working: 260 });
  });

  test('nobody is paid for a wait', () => {
    const { task } = worked({ kind: 'wait', minutes: '360 min' });
    expect(task).toMatchObject({ elapsed: 360, working: 0, waits: true });
  });

  test('a rate of the built-in kinds says that the shop must calibrate; one that was typed does not', () => {
    const source = (cells: Readonly<Record<string, string>>): Task['source'] =>
      worked(cells).task.source;
    expect(source({ kind: 'aim', basis: '1' })).toMatch(/^shop must calibrate/);
    expect(source({ kind: 'aim', basis: '1', rate: '20 min' })).toBe('');
  });

  test.each([
    ['task-unit-unfitting', { kind: 'aim', basis: '2 sqft', rate: '5 min/in' }],
    ['task-without-time', { kind: 'bare', basis: '3' }],
    ['task-kind-missing', { name: 'Something' }],
    ['task-negative', { kind: 'clean', minutes: '-5 min' }],
    ['task-negative', { kind: 'clean', basis: '-5 in', rate: '1 min/in' }],
    ['task-unanswered', { kind: 'clean', minutes: '=nobody.area' }],
  ])('%s leaves the task out of the totals', (code, cells) => {
    const { task, problems } = worked(cells);
    expect(problems.map((problem) => problem.code)).toEqual([code]);
    expect(task).toMatchObject({ complete: false, working: 0 });
  });
});

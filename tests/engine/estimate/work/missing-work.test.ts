import { describe, expect, test } from 'vitest';
import { pricedJob, row, task } from '../../../helpers/priced-job.ts';

const rows = [
  row('panel', 'door', { hands: 'pair' }),
  row('part', 'plate', {
    kind: 'base',
    panel: 'door',
    material: 'hardboard_6',
    shape: 'rect(24 in, 12 in)',
  }),
  row('part', 'cloth', { kind: 'skin', on: 'plate', material: 'fleece' }),
  row('part', 'putty', { name: 'Filler', kind: 'filler', on: 'cloth' }),
  row('part', 'matting', { kind: 'mat', on: 'cloth' }),
  row('part', 'wet', { kind: 'resin', on: 'matting' }),
];

function missing(...tasks: readonly string[]): readonly string[] {
  return pricedJob(...rows, ...tasks)
    .work.problems.filter(({ code }) => code === 'work-missing')
    .map(({ message }) => /“(.*)”/.exec(message)?.[1] ?? '');
}

describe('missingWork', () => {
  test('a job without any task has no plan yet', () => {
    expect(missing()).toEqual([]);
  });

  test('sanding that was forgotten is told', () => {
    const done = ['rout', 'fit', 'stretch', 'trim', 'fill', 'lay_mat'];
    const tasks = done.map((kind) => row('task', `do_${kind}`, { kind, minutes: '5 min' }));
    expect(missing(...tasks)).toEqual(['Sand']);
  });

  test('laying mat wets it as well, and work on the base is work on all that stands on it', () => {
    const lists = {
      rout: 'plate',
      fit: 'plate',
      stretch: 'cloth',
      trim: 'cloth',
      fill: 'putty',
      sand: 'putty',
      lay_mat: 'matting',
    };
    const tasks = Object.entries(lists).map(([kind, on]) =>
      row('task', `do_${kind}`, { kind, on, minutes: '5 min' }),
    );
    expect(missing(...tasks)).toEqual([]);
  });

  test('the way out writes a task on the row that takes this kind of work', () => {
    const { work } = pricedJob(...rows, task('sweep', '5 min'));
    const found = work.problems.find(({ message }) => message.includes('“Fill”'));
    expect(found?.message).toBe(
      'No time for “Fill”: Filler calls for it. Add the task; one of 0 min says that it needs none.',
    );
    expect(found?.fixes?.[0]?.rows).toEqual([
      { table: 'task', word: 'fill', cells: { name: 'Fill: Filler', kind: 'fill', on: 'putty' } },
    ]);
  });
});

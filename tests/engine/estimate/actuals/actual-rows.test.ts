import { describe, expect, test } from 'vitest';
import { actualRows } from '../../../../extension/engine/estimate/actuals/actual-rows.ts';
import { cost, pricedJob, row, task } from '../../../helpers/priced-job.ts';

const rows = actualRows(
  pricedJob(
    row('material', 'resin', { name: 'Resin', form: 'liquid', density: '1 g/cm3', waste: '20 %' }),
    row('pack', 'resin_l', { material: 'resin', holds: '1 l', price: '10 USD' }),
    row('kind', 'goop', { name: 'Goop', table: 'part', group: 'skin', takes: 'amount' }),
    row('part', 'coat', { kind: 'goop', material: 'resin', use: '1000 ml', used: '1300 g' }),
    row('part', 'second', { kind: 'goop', material: 'resin', use: '500 ml' }),
    row('part', 'third', { kind: 'goop', material: 'resin', use: '500 ml', used: '2 sqft' }),
    cost('freight', '20 USD'),
    task('sand', '60 min', { name: 'Sand', actual: '75 min' }),
    task('trim', '30 min', { name: 'Trim', actual: '30 min' }),
    task('open', '10 min', { name: 'Fit' }),
    row('task', 'untold', { name: 'Untold' }),
  ),
);

describe('actualRows', () => {
  test('every task with a time stands there, done or not; one without a time does not', () => {
    const tasks = rows.tasks.map((one) => [one.name, one.estimated, one.actual]);
    expect(tasks).toEqual([
      ['Sand', '1 h', '1 h 15 min'],
      ['Trim', '30 min', '30 min'],
      ['Fit', '10 min', ''],
    ]);
  });

  test('a task is longer by its minutes and by its share, or as planned', () => {
    const off = rows.tasks.map(({ difference, off: share }) => [difference, share]);
    expect(off).toEqual([
      ['+15 min', '+25 %'],
      ['as planned', '0 %'],
      ['', ''],
    ]);
  });

  test('a material is held against its estimate in the measure it is bought in', () => {
    // 1300 g at 1 g/cm3 are 1.3 l; 1 l and 20 % of waste are 1.2 l: 0.1 l, 8 %, more.
    const [coat, second] = rows.materials;
    expect(coat).toMatchObject({ of: 'Resin', column: 'used', off: '+8 %', problem: '' });
    expect(coat?.difference).toMatch(/^\+/);
    expect(second).toMatchObject({ actual: '', difference: '', problem: '' });
  });

  test('an amount that cannot be turned into the measure of its material says so', () => {
    expect(rows.materials[2]).toMatchObject({ actual: '', difference: '' });
    expect(rows.materials[2]?.problem).toMatch(/^2 sqft of Resin cannot be held against/);
  });

  test('goods without a material are left out', () => {
    expect(rows.materials).toHaveLength(3);
  });

  test('the tasks that were timed stand together', () => {
    expect(rows.timed).toMatchObject({
      name: 'The 2 tasks that were timed',
      estimated: '1 h 30 min',
      actual: '1 h 45 min',
      difference: '+15 min',
      off: '+17 %',
    });
    expect(actualRows(pricedJob(task('sand', '60 min', { actual: '1 h' }))).timed).toBeUndefined();
  });
});

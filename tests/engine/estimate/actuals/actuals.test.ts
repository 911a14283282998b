import { describe, expect, test } from 'vitest';
import { actualLines, actualsOf } from '../../../../extension/engine/estimate/actuals/actuals.ts';
import { pricedJob, row, task } from '../../../helpers/priced-job.ts';

const snapshot = pricedJob(
  row('material', 'resin', { name: 'Resin', form: 'liquid', density: '1 g/cm3', waste: '20 %' }),
  row('pack', 'resin_l', { material: 'resin', holds: '1 l', price: '10 USD' }),
  row('kind', 'goop', { name: 'Goop', table: 'part', group: 'skin', takes: 'amount' }),
  row('part', 'coat', {
    name: 'Coat',
    kind: 'goop',
    material: 'resin',
    use: '1000 ml',
    used: '1300 g',
  }),
  task('sand', '60 min', { name: 'Sand', actual: '75 min' }),
  task('trim', '30 min', { name: 'Trim', actual: '30 min' }),
  task('open', '10 min'),
);

describe('actualsOf', () => {
  test('tasks by the clock, materials in the measure they are bought in', () => {
    const { tasks, materials, minutes } = actualsOf(snapshot);
    expect(tasks.map(({ task: { id }, estimated, actual }) => [id, estimated, actual])).toEqual([
      ['sand', 60, 75],
      ['trim', 30, 30],
    ]);
    expect(minutes).toEqual({ estimated: 90, actual: 105 });
    // 1300 g at 1 g/cm3 are 1300 ml, 1,300,000 mm³; 1 l and 20 % of waste were planned.
    expect(materials[0]?.used).toBeCloseTo(1_300_000, 3);
    expect(materials[0]?.estimated).toBeCloseTo(1_200_000, 3);
    expect(materials[0]?.bare).toBeCloseTo(1_000_000, 3);
  });
});

describe('actualLines', () => {
  test('estimate and actual stand side by side with what they are off by', () => {
    const lines = actualLines(snapshot).map(({ name, actual, off }) => [name, actual, off]);
    expect(lines).toEqual([
      ['Sand', '1 h 15 min', '+25 %'],
      ['Trim', '30 min', '0 %'],
      ['Coat', expect.stringContaining('l'), '+8 %'],
      ['Tasks that were timed', '1 h 45 min', '+17 %'],
    ]);
  });
});

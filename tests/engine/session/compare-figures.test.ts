import { describe, expect, test } from 'vitest';
import {
  comparedFigures,
  comparedMaterials,
  rowFigures,
} from '../../../extension/engine/session/compare-figures.ts';
import { charge, cost, pricedJob, task } from '../../helpers/priced-job.ts';

const one = pricedJob(cost('goods', '100 USD'), task('work', '90 min'));
const two = pricedJob(
  cost('goods', '120 USD'),
  task('work', '60 min'),
  charge('hours', 'labour', { rate: '60 USD/h' }),
);

describe('comparedFigures', () => {
  test('money is in cents, hours in minutes', () => {
    const told = comparedFigures(one, two).map(({ key, before, after }) => [key, before, after]);
    expect(told).toContainEqual(['materials', 10000, 12000]);
    expect(told).toContainEqual(['labour', 0, 6000]);
    expect(told).toContainEqual(['hours', 90, 60]);
  });
});

describe('comparedMaterials', () => {
  test('lines that are the same are not told', () => {
    expect(comparedMaterials(one, one)).toEqual([]);
    expect(comparedMaterials(one, two)).toMatchObject([
      { id: 'part/goods', charge: { before: 10000, after: 12000 } },
    ]);
  });
});

describe('rowFigures', () => {
  test('a part has its money, a task its minutes and labour, a charge its sum', () => {
    const found = rowFigures(two);
    expect(found.get('part/goods#0')).toMatchObject({ charge: 12000, minutes: undefined });
    expect(found.get('task/work#0')).toMatchObject({ charge: 6000, minutes: 60 });
    expect(found.get('charge/hours#0')).toMatchObject({ charge: 6000 });
  });
});

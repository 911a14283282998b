import { describe, expect, test } from 'vitest';
import {
  compareOptions,
  compareOptionSteps,
  optionLines,
  optionPrices,
  unweighedWords,
} from '../../../../extension/engine/estimate/options/compare-options.ts';
import { openSession } from '../../../../extension/engine/session/session.ts';
import { charge, cost, row, task } from '../../../helpers/priced-job.ts';

const session = openSession(
  [
    'format = 1\n\n[job]\nunits = "in"\ncurrency = "USD"\n\n',
    cost('goods', '100 USD'),
    task('hour', '60 min'),
    charge('hours', 'labour', { rate: '50 USD/h' }),
    charge('state', 'tax', { percent: '10 %' }),
    row('option', 'dear', { name: 'Dear', 'set.goods.price': '200 USD' }),
    row('option', 'quick', { name: 'Quick', 'set.hour.minutes': '30 min' }),
  ].join(''),
);
const compared = compareOptions(session);

describe('compareOptions', () => {
  test('each option stands alone on the job as it is', () => {
    expect(compared.base).toMatchObject({ price: 15000, total: 16500, minutes: 60, whole: true });
    expect(compared.options.map(({ figures }) => figures)).toMatchObject([
      { price: 25000, total: 27500, minutes: 60 },
      { price: 12500, total: 13750, minutes: 30 },
    ]);
  });
});

describe('compareOptionSteps', () => {
  test('rests before each option and comes to the same', () => {
    const steps = compareOptionSteps(session);
    expect([steps.next().done, steps.next().done]).toEqual([false, false]);
    expect(steps.next()).toEqual({ done: true, value: compared });
  });
});

describe('optionLines', () => {
  test('figures stand side by side with their differences', () => {
    const [price, , hours] = optionLines(compared);
    expect(price).toMatchObject({
      now: '150.00 USD',
      then: [{ change: '+100.00 USD' }, { change: '−25.00 USD' }],
    });
    expect(hours?.then).toEqual([
      { text: '1 h', change: 'no change' },
      { text: '30 min', change: '−30 min' },
    ]);
  });
});

describe('optionPrices', () => {
  test('a client is told what each adds to the total, with tax', () => {
    expect(optionPrices(compared).map(({ change }) => change)).toEqual([11000, -2750]);
  });
});

describe('unweighedWords', () => {
  test('what has no mass is named', () => {
    const weighed = { ...compared.base, unweighed: ['Magnets', 'Grille'] };
    expect(unweighedWords({ ...compared, base: weighed })).toContain('Magnets, Grille');
    expect(unweighedWords({ ...compared, base: { ...weighed, unweighed: [] }, options: [] })).toBe(
      '',
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Snapshot } from '../../../../extension/engine/session/snapshot.ts';
import { charge, cost, pricedJob, row, task } from '../../../helpers/priced-job.ts';
import { amountIn, openedWorkbook, type ReadWorkbook } from '../../../helpers/read-workbook.ts';
import { demoBook } from '../../../helpers/sample-session.ts';
import { sourceText } from '../../../helpers/source-files.ts';
import { openSession } from '../../../../extension/engine/session/session.ts';

function expectSameMoney(snapshot: Snapshot): ReadWorkbook {
  const read = openedWorkbook(snapshot);
  const { price, bill } = snapshot;
  for (const { id, amount } of price.charges) {
    expect([id, amountIn(read, 'Price', id, 5)]).toEqual([id, amount]);
  }
  expect(amountIn(read, 'Price', 'Total', 5)).toBe(price.totals.total);
  expect(amountIn(read, 'Bill', 'Total', 4)).toBe(bill.totals.buy);
  expect(amountIn(read, 'Bill', 'Total', 5)).toBe(bill.totals.charge);
  for (const { id, buy, charge: money } of bill.lines) {
    expect([id, amountIn(read, 'Bill', id, 4), amountIn(read, 'Bill', id, 5)]).toEqual([
      id,
      buy,
      money,
    ]);
  }
  return read;
}

describe('jobWorkbook', () => {
  test.each(['front-door-pair', 'kick-panel-pair-mm'])(
    'another program opens %s and calculates the same money, sheet by sheet',
    (name) => {
      const text = sourceText(`sample-jobs/${name}.paneljob`);
      const snapshot = openSession(text, demoBook).snapshot();
      const read = expectSameMoney(snapshot);
      expect(read.formulas).toBeGreaterThan(40);
      const hours = read.values('Tasks').find(([first]) => first === 'Total')?.[9];
      expect(hours).toBeCloseTo(snapshot.work.totals.working, 6);
      for (const sheet of ['Parts', 'Drivers', 'Panels', 'Checks', 'Charges']) {
        expect(read.values(sheet).length).toBeGreaterThan(1);
      }
    },
  );

  const cents = fc.integer({ min: 1, max: 99_999 });
  const percent = fc.integer({ min: 0, max: 4000 });
  const amount = (minor: number): string => `${(minor / 100).toFixed(2)} USD`;

  test('money is never off by a cent, whatever goods, hours, rates and shares', () => {
    fc.assert(
      fc.property(fc.tuple(cents, cents, cents, percent, percent), (drawn) => {
        const [goods, minutes, rate, margin, tax] = drawn;
        expectSameMoney(
          pricedJob(
            cost('goods', amount(goods)),
            task('hour', `${String(minutes % 4000)} min`),
            charge('hours', 'labour', { rate: `${(rate / 100).toFixed(2)} USD/h` }),
            charge('spare', 'contingency', { percent: `${String(tax / 150)} %` }),
            charge('keep', 'margin', { percent: `${String(margin / 100)} %` }),
            charge('off', 'discount', { percent: `${String(tax / 200)} %` }),
            charge('state', 'tax', { percent: `${String(tax / 100)} %` }),
            charge('first', 'deposit', { percent: '50 %' }),
          ),
        );
      }),
      // 5 min at 999.54 USD/h are 83.295 USD: half a cent.
      { numRuns: 25, examples: [[[1, 5, 99_954, 0, 0]]] },
    );
  });

  test('a name that looks like a formula or a mark of XML stays a text', () => {
    const name = '+1 <b>&"';
    const snapshot = pricedJob(row('part', 'odd', { kind: 'extra', name, price: '1 USD' }));
    const parts = openedWorkbook(snapshot).values('Parts').flat();
    expect(parts).toContain('+1 <b>&"');
  });

  test('lengths stand as numbers in the job’s unit, which the heading says', () => {
    const snapshot = pricedJob(row('driver', 'mid', { name: 'Mid', cutout: '5 5/8 in' }));
    const [top = [], mid = []] = openedWorkbook(snapshot).values('Drivers');
    expect(top).toContain('cut-out (in)');
    expect(mid).toContain(5.625);
  });
});

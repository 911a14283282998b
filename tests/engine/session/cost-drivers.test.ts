import { describe, expect, test } from 'vitest';
import { openSession } from '../../../extension/engine/index.ts';
import { costDrivers } from '../../../extension/engine/session/cost-drivers.ts';
import { charge, cost, task } from '../../helpers/priced-job.ts';

const head = 'format = 1\n\n[job]\ntitle = "Test"\n\nunits = "in"\ncurrency = "USD"\n\n';

function driversOf(...rows: readonly string[]) {
  return costDrivers(openSession(`${head}${rows.join('')}`));
}

describe('costDrivers', () => {
  test('the cell that moves the price most stands first, with what a tenth does either way', () => {
    const found = driversOf(
      cost('goods', '100 USD'),
      task('work', '120 min'),
      charge('hours', 'labour', { rate: '50 USD/h' }),
      charge('spare', 'contingency', { percent: '10 %' }),
    );
    // 2 h at 50 and 100 of goods, 10 % on both: 220. A tenth of hours or of goods is 10, with its 10 %.
    expect(found.map(({ id, column, less, more }) => [id, column, less, more])).toEqual([
      ['goods', 'price', -1100, 1100],
      ['hours', 'rate', -1100, 1100],
      ['work', 'minutes', -1100, 1100],
      ['spare', 'percent', -200, 200],
    ]);
  });

  test('five at most, none that moves nothing, and no count', () => {
    const found = driversOf(
      ...[1, 2, 3, 4, 5, 6, 7].map((one) =>
        cost(`item_${String(one)}`, `${String(one)}0 USD`, { qty: '2' }),
      ),
      charge('hours', 'labour', { rate: '50 USD/h' }),
    );
    expect(found.map(({ id, column }) => `${id}.${column}`)).toEqual([
      'item_7.price',
      'item_6.price',
      'item_5.price',
      'item_4.price',
      'item_3.price',
    ]);
  });

  test('a rate that comes from the book counts like one that is typed', () => {
    const found = driversOf(task('work', '60 min'), charge('hours', 'labour'));
    expect(found[0]).toMatchObject({ id: 'hours', column: 'rate', text: '68 USD/h', more: 680 });
  });

  test('looking at what would be changes nothing', () => {
    const session = openSession(`${head}${cost('goods', '100 USD')}${charge('more', 'markup')}`);
    const before = session.snapshot();
    costDrivers(session);
    expect(session.snapshot().price.totals).toEqual(before.price.totals);
    expect(session.snapshot().reading.text).toBe(before.reading.text);
  });
});

import { describe, expect, test } from 'vitest';
import { moneyText } from '../../../extension/engine/index.ts';
import { headlineView } from '../../../extension/host/views/headline-view.ts';
import { hoursView, priceView } from '../../../extension/host/views/price-view.ts';
import { charge, cost, pricedJob, row, task } from '../../helpers/priced-job.ts';
import { doorPair, doorSession, doorSnapshot, replaced } from '../../helpers/sample-session.ts';

function figures(of = doorSnapshot(), was = of): Readonly<Record<string, string>> {
  return Object.fromEntries(headlineView(of, was).figures.map(({ key, value }) => [key, value]));
}

describe('headlineView', () => {
  test('says price for the job and a panel, hours, materials, margin, what to buy', () => {
    const { price, bill, work } = doorSnapshot();
    const money = (minor: number): string => moneyText(minor, 'USD');
    expect(figures()).toMatchObject({
      price: money(price.totals.price),
      panel: money(Math.round(price.totals.price / 2)),
      hours: `${(work.totals.working / 60).toFixed(1)} h`,
      charge: money(bill.totals.charge),
      margin: `${(price.totals.margin * 100).toFixed(1)} %`,
      buy: money(bill.totals.buy),
    });
  });

  test('a job without charges says materials only, and shows no price', () => {
    const bare = pricedJob(cost('goods', '100 USD'));
    const view = headlineView(bare, bare);
    expect(view.figures.map(({ key }) => key)).not.toContain('price');
    expect(view.notes[0]).toMatch(/^Materials only/);
  });

  test('differences are told since the file was opened', () => {
    const session = doorSession();
    const opened = session.snapshot();
    session.setText(replaced(doorPair, 'minutes = "75 min"', 'minutes = "135 min"'));
    const view = headlineView(session.snapshot(), opened);
    const changes = Object.fromEntries(view.figures.map(({ key, change }) => [key, change]));
    // An hour at 68.00 and 7 % of contingency on it.
    expect(changes).toMatchObject({ hours: '+1 h', price: '+72.76 USD', panel: '+36.38 USD' });
  });
});

describe('hoursView', () => {
  test('lists phases with their tasks, waits apart, and what is not timed', () => {
    const view = hoursView(doorSnapshot());
    expect(view.total).toMatch(/^\d+ h( \d+ min)? of work, 6 h of waiting$/);
    expect(view.phases.map(({ label }) => label)).toEqual([
      'Structure',
      'Skin',
      'Finish',
      'Drivers and wiring',
      'Shop',
    ]);
    expect(view.phases.at(-1)?.working).toBe('3 h');
    expect(view.notes.join()).toMatch(/18 tasks go by rates of the built-in kinds/);
  });

  test('a task without time says why; people are listed where they are named', () => {
    const view = hoursView(
      pricedJob(
        task('one', '30 min', { who: 'helper' }),
        row('task', 'two', { kind: 'aim', basis: '2 in' }),
      ),
    );
    const two = view.phases.flatMap(({ tasks }) => tasks).find(({ id }) => id === 'two');
    expect(two).toMatchObject({ complete: false, time: '–' });
    expect(two?.note).toMatch(/is no time/);
    expect(view.people.map(({ label }) => label)).toEqual(['Anybody', 'helper']);
  });
});

describe('priceView', () => {
  const job = pricedJob(
    row('panel', 'door', { name: 'Front door', hands: 'pair' }),
    cost('goods', '100 USD'),
    task('work', '60 min'),
    charge('hours', 'labour', { name: 'Labour', rate: '50 USD/h' }),
    charge('state', 'tax', { name: 'Tax', percent: '10 %' }),
    charge('first', 'deposit', { name: 'Deposit', percent: '50 %' }),
  );

  test('goes from materials to the balance, with the working beside', () => {
    const { lines } = priceView(job, job);
    expect(lines.map(({ label, amount, look }) => [label, amount, look])).toEqual([
      ['Shop: materials', '100.00 USD', 'part'],
      ['Labour', '50.00 USD', 'part'],
      ['Price before tax', '150.00 USD', 'sum'],
      ['Tax', '15.00 USD', 'part'],
      ['Total', '165.00 USD', 'total'],
      ['Deposit', '82.50 USD', 'due'],
      ['Balance', '82.50 USD', 'due'],
    ]);
    expect(lines[1]?.detail).toBe('1 h × 50.00 USD/h');
  });

  test('says what the price means', () => {
    const facts = Object.fromEntries(
      priceView(job, job).facts.map(({ key, value }) => [key, value]),
    );
    expect(facts).toMatchObject({
      earned: '0.00 USD, 0.0 % of the price',
      'panel/door': '150.00 USD, 75.00 USD each',
      packs: '150.00 USD',
    });
  });
});

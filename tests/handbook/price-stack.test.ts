import { describe, expect, test } from 'vitest';
import { charge, cost, pricedJob, task } from '../helpers/priced-job.ts';

describe('a price from top to bottom', () => {
  // A stack worked from its definition: materials 180 with 15 % of waste, 22 h at 85, supplies 8 % of
  // labour (CE Outlook, October 2013: 8 to 10 % of the fee), contingency 10 % of all, a margin of 30 %
  // (cost ÷ (1 − margin): Fabric Architecture, February 2018), tax 7.25 %, half of it as a deposit.
  const { price } = pricedJob(
    cost('goods', '=180 USD * 1.15'),
    task('work', '1320 min'),
    charge('hours', 'labour', { rate: '85 USD/h' }),
    charge('small', 'supplies', { percent: '8 %' }),
    charge('spare', 'contingency', { percent: '10 %' }),
    charge('keep', 'margin', { percent: '30 %' }),
    charge('state', 'tax', { percent: '7.25 %' }),
    charge('first', 'deposit', { percent: '50 %' }),
  );
  const amounts = Object.fromEntries(price.charges.map(({ id, amount }) => [id, amount / 100]));

  test('materials, labour, supplies and contingency to the cent', () => {
    expect(price.totals.materials).toBe(20700);
    expect(amounts).toMatchObject({ hours: 1870, small: 149.6, spare: 222.66 });
    expect(price.totals.cost).toBe(244926);
  });

  test('price, tax and deposit to the cent', () => {
    expect(price.totals.price).toBe(349894);
    expect(amounts).toMatchObject({ state: 253.67, first: 1876.31 });
    expect(price.totals.margin).toBeCloseTo(0.3, 5);
  });

  // Unrounded it is 3,752.616; a quote adds up what it prints: 3,498.94 + 253.67.
  test('the total is what the printed lines add up to', () => {
    expect(price.totals.total).toBe(375261);
    expect(Math.abs(price.totals.total / 100 - 3752.62)).toBeLessThan(0.011);
  });

  // Terms printed by a tint and sound shop: 50 for the first two hours, 25 for each hour more.
  test('a booking deposit for six hours', () => {
    const booked = pricedJob(
      cost('goods', '1000 USD'),
      charge('booking', 'deposit', { amount: '=50 USD + (6 - 2) * 25 USD' }),
    ).price;
    expect(booked.charges[0]?.amount).toBe(15000);
  });
});

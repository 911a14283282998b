import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Price } from '../../../../extension/engine/estimate/price/price.ts';
import { charge, cost, pricedJob, row, task } from '../../../helpers/priced-job.ts';

function priced(...rows: readonly string[]): Price {
  return pricedJob(...rows).price;
}

function amountsOf({ charges }: Price): Readonly<Record<string, number>> {
  return Object.fromEntries(charges.map(({ id, amount }) => [id, amount]));
}

function codesOf({ problems }: Price): readonly string[] {
  return problems.map(({ code }) => code);
}

const goods = cost('goods', '100 USD');
const hour = task('hour', '60 min');
const labour = charge('hours', 'labour', { rate: '50 USD/h' });

describe('openPrice', () => {
  test('charges go from top to bottom, each on what stands above it', () => {
    const price = priced(
      goods,
      hour,
      labour,
      charge('spare', 'contingency', { percent: '10 %' }),
      charge('more', 'markup', { percent: '20 %' }),
      charge('off', 'discount', { percent: '10 %' }),
    );
    // 100 + 50; 10 % of 150; 20 % of the 100 of materials; 10 % off 185.
    expect(amountsOf(price)).toEqual({ hours: 5000, spare: 1500, more: 2000, off: -1850 });
    expect(price.totals).toMatchObject({ price: 16650, cost: 16500, earned: 150, total: 16650 });
  });

  test('a charge may be of labour, of a group, of all, or of the rows it names', () => {
    const share = (of: string): number => {
      const given = charge('share', 'contingency', { percent: '10 %', of });
      return amountsOf(priced(goods, hour, labour, given))['share'] ?? 0;
    };
    expect(share('labour')).toBe(500);
    expect(share('materials')).toBe(1000);
    expect(share('shop')).toBe(1000);
    expect(share('skin')).toBe(0);
    expect(share('all')).toBe(1500);
    expect(share('hours')).toBe(500);
    expect(share('goods')).toBe(1000);
    expect(share('hour, goods')).toBe(1500);
  });

  test('a word that names nothing is told, and so is a charge that comes later', () => {
    const early = charge('early', 'contingency', { of: 'hours, nowhere' });
    expect(codesOf(priced(goods, hour, early, labour))).toEqual([
      'charge-of-later',
      'charge-of-unknown',
    ]);
  });

  test('what is not marked up stays out of a markup, what is not taxed out of tax', () => {
    const price = priced(
      goods,
      cost('freight', '18.50 USD', { taxed: 'no', marked_up: 'no' }),
      charge('more', 'markup', { percent: '50 %' }),
      charge('state', 'tax', { percent: '10 %' }),
    );
    // 50 % of 100; tax on 100 and on the 50 that its markup added.
    expect(amountsOf(price)).toEqual({ more: 5000, state: 1500 });
    expect(price.totals).toMatchObject({ price: 16850, taxable: 15000, tax: 1500, total: 18350 });
  });

  test('tax goes on a charge as on what it is of, unless its row says otherwise', () => {
    const taxOf = (taxed: string): number => {
      const spare = charge('spare', 'contingency', {
        percent: '10 %',
        ...(taxed === '' ? {} : { taxed }),
      });
      const untaxed = charge('hours', 'labour', { rate: '100 USD/h', taxed: 'no' });
      return priced(goods, hour, untaxed, spare).totals.taxable;
    };
    // Half of 200 is taxed, so half of the 20 on top.
    expect([taxOf(''), taxOf('yes'), taxOf('no')]).toEqual([11000, 12000, 10000]);
  });

  // Fabric Architecture, February 2018: a cost of 100 and a margin of 20 % make 125.
  test('a margin is a share of the price', () => {
    const price = priced(goods, charge('keep', 'margin', { percent: '20 %' }));
    expect(price.totals).toMatchObject({ price: 12500, earned: 2500, margin: 0.2 });
  });

  // Fabric Architecture, February 2018: 20 % on a cost of 100 is a margin of 16.66 %.
  test('a markup leaves a smaller margin', () => {
    const price = priced(goods, charge('more', 'markup', { percent: '20 %' }));
    expect(price.totals.margin).toBeCloseTo(1 / 6, 12);
  });

  test('a markup and a margin on one base are told', () => {
    const price = priced(
      goods,
      charge('more', 'markup', { percent: '20 %' }),
      charge('keep', 'margin', { percent: '20 %' }),
    );
    expect(codesOf(price)).toEqual(['markup-and-margin']);
  });

  test('labour of phases, kinds or people at rates of their own, the rest at the general one', () => {
    const price = priced(
      task('sanding', '60 min', { kind: 'sand', setup: '0 min' }),
      hour,
      task('sweep', '30 min', { who: 'helper' }),
      charge('general', 'labour', { rate: '60 USD/h' }),
      charge('finish', 'labour', { rate: '80 USD/h', of: 'sand' }),
      charge('hand', 'labour', { rate: '20 USD/h', of: 'helper' }),
    );
    expect(amountsOf(price)).toEqual({ general: 6000, finish: 8000, hand: 1000 });
    expect(Object.fromEntries(price.labourOf)).toEqual({
      'sanding#0': 8000,
      'hour#0': 6000,
      'sweep#0': 1000,
    });
  });

  test('hours that no rate takes are told, with a way out', () => {
    const price = priced(hour, charge('finish', 'labour', { rate: '80 USD/h', of: 'sand' }));
    const [problem] = price.problems;
    expect(problem?.code).toBe('labour-unpriced');
    expect(problem?.fixes?.[0]?.rows?.[0]).toMatchObject({ table: 'charge' });
    expect(price.state).toBe('incomplete');
  });

  test('a second general rate finds no hours left', () => {
    expect(codesOf(priced(hour, labour, charge('again', 'labour')))).toEqual(['labour-again']);
  });

  test('shop supplies as a share of labour beside rows of supplies are told', () => {
    const gloves = row('part', 'gloves', { kind: 'consumable', material: 'glove', qty: '4' });
    const supplies = charge('small', 'supplies', { percent: '8 %' });
    expect(codesOf(priced(gloves, hour, labour, supplies))).toEqual(['supplies-twice']);
    expect(codesOf(priced(goods, hour, labour, supplies))).toEqual([]);
  });

  test('a minimum lifts what is above it, rounding goes up to a whole amount', () => {
    const price = priced(
      goods,
      charge('least', 'minimum', { amount: '123.45 USD' }),
      charge('even', 'rounding', { amount: '5 USD' }),
    );
    expect(amountsOf(price)).toEqual({ least: 2345, even: 155 });
    const after = priced(
      goods,
      charge('state', 'tax', { percent: '7.25 %' }),
      charge('even', 'rounding', { amount: '1 USD' }),
    );
    expect(after.totals).toMatchObject({ tax: 725, total: 10800 });
  });

  test('deposit and stages are parts of the total, and the balance is the rest', () => {
    const price = priced(
      cost('goods', '100.01 USD'),
      charge('first', 'deposit', { percent: '50 %' }),
      charge('half', 'stage', { percent: '25 %' }),
      charge('parts', 'stage', { amount: '10 USD' }),
    );
    expect(amountsOf(price)).toEqual({ first: 5001, half: 2500, parts: 1000 });
    expect(price.totals.balance).toBe(10001 - 5001 - 2500 - 1000);
    const over = priced(goods, charge('first', 'deposit', { amount: '200 USD' }));
    expect(codesOf(over)).toEqual(['payments-over']);
  });

  test('a job without charges is materials only', () => {
    expect(priced(goods, hour).state).toBe('materials-only');
    expect(priced(goods, charge('more', 'markup')).state).toBe('no-labour');
    expect(priced(goods, hour, labour).state).toBe('whole');
  });

  test.each([
    ['charge-blank', 'keep', 'margin', {}],
    ['charge-outside', 'keep', 'margin', { percent: '99 %' }],
    ['charge-outside', 'off', 'discount', { percent: '150 %' }],
    ['charge-unanswered', 'keep', 'margin', { percent: '=nobody.area' }],
    ['charge-outside', 'extra', 'fee', { amount: '-5 USD' }],
    ['charge-unfitting', 'hours', 'labour', { rate: '5 USD/ft' }],
    ['charge-kind-missing', 'what', 'nothing_known', { amount: '5 USD' }],
  ])('%s', (code, id, kind, cells) => {
    const price = priced(hour, charge(id, kind, cells));
    expect(codesOf(price)).toContain(code);
    expect(price.charges[0]).toMatchObject({ complete: false, amount: 0 });
  });

  const percents = fc.integer({ min: 0, max: 9000 }).map((share) => `${String(share / 100)} %`);
  const kinds = fc.constantFrom('markup', 'margin', 'contingency', 'discount', 'tax', 'supplies');
  const drawn = fc.record({
    money: fc.array(fc.integer({ min: 1, max: 99_999 }), { minLength: 1, maxLength: 4 }),
    minutes: fc.array(fc.integer({ min: 1, max: 999 }), { minLength: 1, maxLength: 4 }),
    charges: fc.array(fc.record({ kind: kinds, percent: percents }), { maxLength: 6 }),
    due: fc.array(fc.integer({ min: 0, max: 3000 }), { maxLength: 3 }),
  });

  test(
    'materials, labour and charges add up to the total, payments and balance too',
    { timeout: 60_000 },
    () => {
      fc.assert(
        fc.property(drawn, ({ money, minutes, charges, due }) => {
          const price = priced(
            ...money.map((cents, index) =>
              cost(`item_${String(index)}`, `${(cents / 100).toFixed(2)} USD`),
            ),
            ...minutes.map((time, index) => task(`work_${String(index)}`, `${String(time)} min`)),
            charge('hours', 'labour', { rate: '61.37 USD/h' }),
            ...charges.map(({ kind, percent }, index) =>
              charge(`more_${String(index)}`, kind, { percent }),
            ),
            ...due.map((share, index) =>
              charge(`due_${String(index)}`, 'stage', { percent: `${String(share / 100)} %` }),
            ),
          );
          const { totals } = price;
          const payments = price.charges.filter(({ operation }) => operation === 'stage');
          const others = price.charges.filter(({ operation }) => operation !== 'stage');
          const sum = (amounts: readonly number[]): number => amounts.reduce((a, b) => a + b, 0);
          const whole = [...price.charges.map(({ amount }) => amount), ...Object.values(totals)];
          expect(whole.slice(0, price.charges.length).every(Number.isInteger)).toBe(true);
          expect(totals.materials).toBe(sum(money));
          expect(sum([...price.labourOf.values()])).toBe(totals.labour);
          expect(totals.materials + sum(others.map(({ amount }) => amount))).toBe(totals.total);
          expect(totals.price + totals.tax).toBe(totals.total);
          expect(totals.cost + totals.earned).toBe(totals.price);
          expect(sum(payments.map(({ amount }) => amount)) + totals.balance).toBe(totals.total);
          expect(sum(price.materials.map(({ amount }) => amount))).toBe(totals.materials);
        }),
        { numRuns: 40 },
      );
    },
  );
});

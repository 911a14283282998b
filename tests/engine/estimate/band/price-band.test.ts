import { describe, expect, test } from 'vitest';
import { chanceFrom } from '../../../../extension/engine/cutting/chance.ts';
import {
  bandWords,
  priceBand,
  type PriceBand,
} from '../../../../extension/engine/estimate/band/price-band.ts';
import { charge, cost, pricedJob, row, task } from '../../../helpers/priced-job.ts';

function bandOf(...rows: readonly string[]): PriceBand | undefined {
  return priceBand(pricedJob(...rows));
}

const labour = charge('hours', 'labour', { rate: '60 USD/h' });
const [wide, narrow] = [
  task('wide', '100 min', { low: '40 min', high: '160 min' }),
  task('narrow', '60 min', { low: '30 min', high: '90 min' }),
];

describe('priceBand', () => {
  test('a job without ranges has no band', () => {
    expect(bandOf(task('one', '60 min'), labour)).toBeUndefined();
  });

  // Closed form: s = hypot(120/6, 60/6) min = 22.3607 min; at 1 USD a minute, 1.645 s = 36.78 USD.
  test('independent times add by their variances: 1.645 × √(20² + 10²) min at 1 USD/min', () => {
    const band = bandOf(wide, narrow, labour);
    expect(band?.minutes).toBeCloseTo(1.6448536 * Math.hypot(20, 10), 5);
    expect(band?.price).toBe(3678);
    expect(band?.causes.map(({ id, spread }) => [id, Math.round(spread)])).toEqual([
      ['wide', 2000],
      ['narrow', 1000],
    ]);
  });

  // 36.780 / (1 − 0.3) = 52.54; with tax of 10 %: 57.80.
  test('a margin of 30 % and a tax of 10 % widen it as they do the price', () => {
    const more = [
      charge('keep', 'margin', { percent: '30 %' }),
      charge('vat', 'tax', { percent: '10 %' }),
    ];
    const band = bandOf(wide, narrow, labour, ...more);
    expect(Math.abs((band?.price ?? 0) - 5254)).toBeLessThanOrEqual(1);
    expect(Math.abs((band?.total ?? 0) - 5780)).toBeLessThanOrEqual(1);
  });

  test('a price rounded to whole tens has the band it had before it was rounded', () => {
    const tens = charge('tens', 'rounding', { amount: '10 USD' });
    expect(bandOf(wide, narrow, labour, tens)?.price).toBe(3678);
  });

  test('many prices drawn from normal times lie nine in ten within the band', () => {
    const band = bandOf(wide, narrow, labour);
    const chance = chanceFrom(20261125);
    // Two numbers of chance give one of the bell curve (Box and Muller, 1958).
    const bell = (): number =>
      Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());
    const draws = 20_000;
    let within = 0;
    for (let draw = 0; draw < draws; draw += 1) {
      const off = (bell() * 20 + bell() * 10) * 100;
      if (Math.abs(off) <= (band?.price ?? 0)) within += 1;
    }
    expect(within / draws).toBeCloseTo(0.9, 2);
  });

  const stuff = (charges: string): string =>
    row('material', 'stuff', {
      name: 'Stuff',
      form: 'liquid',
      density: '1 g/cm3',
      waste: '10 %',
      waste_low: '4 %',
      waste_high: '34 %',
      charge: charges,
    }) + row('pack', 'stuff_l', { material: 'stuff', holds: '1 l', price: '100 USD' });
  const pool = (use: string): string =>
    row('kind', 'goop', { name: 'Goop', table: 'part', group: 'shop', takes: 'amount' }) +
    row('part', 'pool', { kind: 'goop', material: 'stuff', use });

  // 1 l of use: the charge is 1.1 × 100 USD; a hundredth of waste is 1 USD: s = 30 / 6 = 5 USD.
  test('waste between 4 % and 34 % of a litre at 100 USD gives s = 5 USD', () => {
    const band = bandOf(stuff('used'), pool('1 l'), labour);
    expect(band?.causes).toEqual([{ of: 'material', id: 'stuff', name: 'Stuff', spread: 500 }]);
    expect(band?.price).toBe(822);
  });

  test('by whole packs, what is left over takes up the worst waste', () => {
    expect(bandOf(stuff('packs'), pool('0.7 l'), labour)).toBeUndefined();
    expect(bandOf(stuff('packs'), pool('0.8 l'), labour)?.price).toBeGreaterThan(0);
  });
});

describe('bandWords', () => {
  test('price and band stand in one line', () => {
    const snapshot = pricedJob(cost('goods', '100 USD'), wide, narrow, labour);
    const band = priceBand(snapshot);
    expect(band && bandWords(band, snapshot.price)).toBe('260.00 ± 36.78 USD, 9 in 10');
  });
});

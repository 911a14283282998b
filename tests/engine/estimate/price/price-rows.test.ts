import { describe, expect, test } from 'vitest';
import { openSession } from '../../../../extension/engine/index.ts';
import { isDue, priceRows } from '../../../../extension/engine/estimate/price/price-lines.ts';
import { pricesByPanel } from '../../../../extension/engine/estimate/price/prices-by-panel.ts';
import { sourceText } from '../../../helpers/source-files.ts';

function priced(sample: string) {
  return openSession(
    sourceText(`sample-jobs/${sample}`),
    sourceText('sample-jobs/books/demo-shop.panelbook'),
  ).snapshot();
}

describe('priceRows', () => {
  test('materials and charges above the total add up to it; payments stand below and are no part of it', () => {
    const { price } = priced('front-door-pair.paneljob');
    const rows = priceRows(price);
    const total = rows.findIndex(({ sort }) => sort === 'total');
    const sum = rows
      .slice(0, total)
      .filter(({ sort }) => sort !== 'price')
      .reduce((money, { amount }) => money + amount, 0);
    expect(sum).toBe(price.totals.total);
    expect(rows[total]?.amount).toBe(price.totals.total);
    const below = rows.slice(total + 1);
    expect(below.every(({ sort }) => sort === 'due' || sort === 'balance')).toBe(true);
    const due = below.filter(({ sort }) => sort === 'due').reduce((m, { amount }) => m + amount, 0);
    if (below.length > 0) expect(due + (below.at(-1)?.amount ?? 0)).toBe(price.totals.total);
  });

  test('a deposit is due, a tax is not', () => {
    const { price } = priced('front-door-pair.paneljob');
    const dues = price.charges.filter(isDue).map(({ operation }) => operation);
    expect(dues.every((operation) => operation === 'deposit' || operation === 'stage')).toBe(true);
    expect(dues).not.toContain('tax');
  });
});

describe('pricesByPanel', () => {
  test.each(['front-door-pair.paneljob', 'five-panel-sedan.paneljob'])(
    'the panels of %s share the price before tax to the last cent',
    (sample) => {
      const snapshot = priced(sample);
      const panels = pricesByPanel(snapshot);
      expect(panels).toHaveLength(snapshot.workbook.rows('panel').length);
      const sum = panels.reduce((money, { amount }) => money + amount, 0);
      expect(sum).toBe(snapshot.price.totals.price);
      expect(panels.every(({ amount, count }) => amount > 0 && count > 0)).toBe(true);
    },
  );
});

import { describe, expect, test } from 'vitest';
import { otherStocks } from '../../../extension/engine/estimate/other-stocks.ts';
import { makeBill } from '../../../extension/engine/estimate/estimate.ts';
import { fakeAnswers, fakeBook, inches } from '../../helpers/fake-answers.ts';
import { paperJob } from '../../helpers/paper-job.ts';

const bill = makeBill(fakeAnswers(paperJob), fakeBook, inches);

function othersOf(id: string) {
  const line = bill.lines.find((one) => one.id === id);
  if (line === undefined) throw new Error(`no line ${id}`);
  return otherStocks(line, inches);
}

describe('otherStocks', () => {
  test('each stock is tried alone, whole and cut in half', () => {
    const others = othersOf('mdf_12');
    const packs = bill.lines.find(({ id }) => id === 'mdf_12')?.laid?.order.instance;
    const stocks = packs?.kind === 'rectangles' ? packs.stocks.length : 0;
    expect(others.length).toBe(2 * stocks);
    expect(others[0]?.words).toMatch(/^\d+ for \d+\.\d\d USD, \d+ % used$/);
  });

  test('goods that are poured have no stocks to compare', () => {
    expect(othersOf('sealer')).toEqual([]);
  });
});

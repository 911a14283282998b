import { describe, expect, test } from 'vitest';
import { makeBill } from '../../../extension/engine/estimate/estimate.ts';
import { fakeAnswers, fakeBook, inches, type FakeRow } from '../../helpers/fake-answers.ts';

// Prices are examples: a gallon costs less than three quarts.
const quart = { id: 'quart', material: 'resin', holds: '1 qt', price: '40 USD' };
const gallon = { id: 'gallon', material: 'resin', holds: '1 gal', price: '65 USD' };

function told(use: string, resin: FakeRow, ...packs: readonly FakeRow[]): readonly string[] {
  const job = {
    material: [{ id: 'resin', name: 'Resin', form: 'liquid', ...resin }],
    pack: packs,
    part: [{ id: 'coat', kind: 'amount', material: 'resin', use }],
  };
  const { problems } = makeBill(fakeAnswers(job), fakeBook, inches);
  return problems.filter(({ code }) => code === 'shelf-life').map(({ message }) => message);
}

describe('shelfLifeProblem', () => {
  const keeps = { shelf_life: '180 day' };

  test('a gallon bought for less than half of it is told, with what smaller packs would cost', () => {
    // 1.5 qt: one gallon at 65 USD beats two quarts at 80 USD, and 2.5 qt are left over.
    expect(told('1.5 qt', keeps, quart, gallon)).toEqual([
      expect.stringMatching(
        /^Resin: of 1 × 1 gal, 2\.5 qt is left over .* keeps for 180 days? only/,
      ),
    ]);
    expect(told('1.5 qt', keeps, quart, gallon)[0]).toContain(
      'buy 2 × quart instead for 15.00 USD more',
    );
  });

  test('nothing is said of what keeps, of what is mostly used up, or where there are no smaller packs', () => {
    expect(told('1.5 qt', {}, quart, gallon)).toEqual([]);
    expect(told('3 qt', keeps, quart, gallon)).toEqual([]);
    expect(told('1.5 qt', keeps, gallon)).toEqual([]);
  });

  test('a pack’s own shelf life counts before the material’s', () => {
    const [words] = told('1.5 qt', keeps, quart, { ...gallon, shelf_life: '30 day' });
    expect(words).toContain('keeps for 30 day');
  });
});

import { describe, expect, test } from 'vitest';
import { readBook } from '../../../extension/engine/book/read-book.ts';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import {
  isNews,
  matchPrices,
  priceEdits,
  type PriceMatch,
} from '../../../extension/engine/shop/match-prices.ts';
import { readPriceList } from '../../../extension/engine/shop/price-list.ts';
import { demoBook } from '../../helpers/sample-session.ts';

const file = readFile(demoBook);
const book = readBook({ file, job: new Map() });
const dollars = { units: 'in', currency: 'USD' } as const;

function matched(text: string): readonly PriceMatch[] {
  return matchPrices(readPriceList(text), book, dollars);
}

function told(text: string): readonly string[] {
  return matched(text).map(
    ({ how, pack = '–', old, now, fault }) => `${how} ${pack}: ${old} → ${now}${fault}`,
  );
}

describe('readPriceList', () => {
  test('reads commas, semicolons and tabs, with or without a heading, and quoted cells', () => {
    const lines = (text: string) => readPriceList(text).lines.map(({ cells }) => cells.join('|'));
    expect(lines('name,price\n"Board, 3 mm",18\n')).toEqual(['Board, 3 mm|18']);
    expect(lines('Board;18\n\nBrush;14\n')).toEqual(['Board|18', 'Brush|14']);
    expect(lines('Board\t"3 ""thin"""\t18')).toEqual(['Board|3 "thin"|18']);
  });

  test('finds what its columns hold by their headings, else by what stands in them', () => {
    expect(readPriceList('Code,Description,Price\na,b,1\n').columns).toEqual({
      id: 0,
      name: 1,
      holds: undefined,
      price: 2,
    });
    expect(readPriceList('Acetone\t1 qt\t$13.25\n').columns).toEqual({
      id: undefined,
      name: 0,
      holds: 1,
      price: 2,
    });
  });
});

describe('matchPrices', () => {
  test('finds packs by id, by name with what they hold, and by a name that is much like it', () => {
    expect(told('pack,price\nacetone_qt,13.25\n')).toEqual(['id acetone_qt: 12 USD → 13.25 USD']);
    expect(told('name,holds,price\nAcetone,1 qt,13\n')).toEqual([
      'name acetone_qt: 12 USD → 13 USD',
    ]);
    expect(told('name,price\nTrim carpet black 54 in wide,18\n')[0]).toMatch(
      /^likely carpet_black_cut: 17 USD\/yd → 18 USD\/yd/,
    );
  });

  test('what is like nothing, or like two packs, is left to the person', () => {
    expect(told('name,price\nMoon rock,5\n')).toEqual([
      'none –:  → 5 USDNo pack of the book is like it.',
    ]);
  });

  test('prices in another currency, for another unit, or that are none are told', () => {
    expect(matched('pack,price\nacetone_qt,13 EUR\n')[0]?.fault).toContain('in EUR');
    expect(matched('pack,price\ncarpet_cut,17 USD/ft\n')[0]?.fault).toContain('for a ft');
    expect(matched('pack,price\nacetone_qt,call us\n')[0]?.fault).toContain('is no price');
  });

  test('the change is a share of the old price', () => {
    expect(matched('pack,price\nacetone_qt,15\n')[0]?.change).toBeCloseTo(0.25, 9);
  });
});

describe('priceEdits', () => {
  test('what is agreed to is written in one edit, a line a price, with the day', () => {
    const matches = matched('pack,price\nacetone_qt,13.25\ncarpet_cut,17\nblack_can,9 USD\n');
    expect(matches.map(isNews)).toEqual([true, true, false]);
    const edits = priceEdits(file, matches.filter(isNews), '2026-12-01');
    const applied = applyEdits(file, edits);
    if (!applied.ok) throw new Error(applied.problem.message);
    const { reading, changes } = applied.value;
    expect(changes).toHaveLength(3);
    const pack = (id: string) => reading.tables.get('pack')?.find((row) => row.id === id)?.cells;
    expect(pack('acetone_qt')?.get('price')?.text).toBe('13.25 USD');
    expect(pack('carpet_cut')?.get('rate')?.text).toBe('17 USD/yd');
    expect(reading.head.get('date')?.text).toBe('2026-12-01');
  });

  test('nothing agreed to writes nothing, not even the day', () => {
    expect(priceEdits(file, [], '2026-12-01')).toEqual([]);
  });
});

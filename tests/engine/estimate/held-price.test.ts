import { describe, expect, test } from 'vitest';
import { boughtNotes, readHeldPack } from '../../../extension/engine/estimate/held-price.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { fakeRow, inches, type FakeRow } from '../../helpers/fake-answers.ts';
import { demoBook, doorPair } from '../../helpers/sample-session.ts';

const quartCells = { id: 'qt', material: 'resin', holds: '1 qt', price: '24 USD' };
const quart = fakeRow('pack', quartCells);
const yard = fakeRow('pack', { id: 'yd', material: 'vinyl', step: '1/4 yd', rate: '28 USD/yd' });
const liquid = {
  name: 'Resin',
  measure: 'volume',
  unit: 'qt',
  properties: {},
  settings: inches,
} as const;
const roll = {
  name: 'Vinyl',
  measure: 'length',
  unit: 'yd',
  properties: {},
  settings: inches,
} as const;

function price(cells: FakeRow) {
  return fakeRow('price', { id: 'hold', ...cells });
}

describe('readHeldPack', () => {
  test('a pack without a price held costs what the book says', () => {
    const { pack, problems } = readHeldPack(
      quart,
      [price({ pack: 'gal', price: '9 USD' })],
      liquid,
    );
    expect([pack?.price, pack?.held, problems]).toEqual([2400, undefined, []]);
  });

  test('the lower price for several packs is the job’s own, or none', () => {
    const book = fakeRow('pack', { ...quartCells, from: '4', price_from: '20 USD' });
    const bare = price({ pack: 'qt', price: '23 USD' });
    const both = price({ pack: 'qt', price: '23 USD', from: '6', price_from: '21 USD' });
    expect(readHeldPack(book, [], liquid).pack?.breaks).toEqual([{ from: 4, price: 2000 }]);
    expect(readHeldPack(book, [bare], liquid).pack?.breaks).toBeUndefined();
    expect(readHeldPack(book, [both], liquid).pack?.breaks).toEqual([{ from: 6, price: 2100 }]);
  });

  test('a price held counts, and the book’s own is told with what it moved by', () => {
    const { pack, problems } = readHeldPack(
      quart,
      [price({ pack: 'qt', price: '20 USD', date: '2026-11-02' })],
      liquid,
    );
    expect([pack?.price, pack?.held]).toEqual([2000, '2026-11-02']);
    expect(problems).toMatchObject([
      {
        code: 'price-drifted',
        severity: 'note',
        place: { table: 'price', row: 'hold', column: 'price' },
        message:
          'The job holds qt of Resin at 20.00 USD since 2026-11-02; the book now says 24.00 USD (+20 %).',
      },
    ]);
  });

  test('a price that did not move is no note', () => {
    const { problems } = readHeldPack(quart, [price({ pack: 'qt', price: '24 USD' })], liquid);
    expect(problems).toEqual([]);
  });

  test('goods cut to measure are held by their rate', () => {
    const { pack } = readHeldPack(yard, [price({ pack: 'yd', rate: '20 USD/yd' })], roll);
    expect([pack?.price, pack?.held]).toEqual([500, '']);
  });

  test('a price where the pack has a rate is told, and the book’s rate stands', () => {
    const { pack, problems } = readHeldPack(yard, [price({ pack: 'yd', price: '20 USD' })], roll);
    expect([pack?.price, problems.map(({ code }) => code)]).toEqual([
      700,
      ['price-held-unfitting'],
    ]);
  });

  test('a price that cannot be read leaves the book’s, with its place', () => {
    const { pack, problems } = readHeldPack(quart, [price({ pack: 'qt', price: '3 in' })], liquid);
    expect(pack?.price).toBe(2400);
    expect(problems).toMatchObject([{ code: 'pack-unreadable', place: { table: 'price' } }]);
  });

  test('of two prices held for one pack the first counts, with a warning', () => {
    const rows = [
      price({ pack: 'qt', price: '24 USD' }),
      fakeRow('price', { id: 'b', pack: 'qt', price: '1 USD' }),
    ];
    const { pack, problems } = readHeldPack(quart, rows, liquid);
    expect([pack?.price, problems.map(({ code }) => code)]).toEqual([2400, ['price-held-twice']]);
  });

  test('a pack of the book that cannot be read may still be held at a price', () => {
    const bare = fakeRow('pack', { id: 'qt', material: 'resin', holds: '1 qt' });
    const { pack } = readHeldPack(bare, [price({ pack: 'qt', price: '24 USD' })], liquid);
    expect(pack?.price).toBe(2400);
  });
});

describe('boughtNotes', () => {
  const held = `${doorPair}
[[price]]
id = "quote_resin"

pack = "resin_can_qt"
price = "20 USD"

date = 2026-11-02
`;

  test('a job’s frozen price reaches its bill, the working and the note', () => {
    const before = openSession(doorPair, demoBook).snapshot();
    const { bill, problems } = openSession(held, demoBook).snapshot();
    const line = bill.lines.find(({ id }) => id === 'poly_resin');
    const was = before.bill.lines.find(({ id }) => id === 'poly_resin');
    expect(line && boughtNotes(line)).toBe('frozen on 2026-11-02');
    expect(was && boughtNotes(was)).toBe('');
    expect(line?.buy).toBe(4000);
    expect(line?.steps.map(({ text }) => text).join('; ')).toContain('price frozen on 2026-11-02');
    const prices = problems.filter(({ problem }) => problem.code.startsWith('price-'));
    expect(prices.map(({ problem, line: at }) => [problem.code, at > 0])).toEqual([
      ['price-drifted', true],
    ]);
  });

  test('an edit of a frozen price moves its line and no other', () => {
    const session = openSession(held, demoBook);
    const before = session.snapshot().bill;
    session.setText(held.replace('price = "20 USD"', 'price = "21 USD"'));
    const after = session.snapshot().bill;
    const was = new Map(before.lines.map(({ id, buy }) => [id, buy]));
    const moved = after.lines.filter(({ id, buy }) => was.get(id) !== buy).map(({ id }) => id);
    expect(moved).toEqual(['poly_resin']);
    expect(after.totals.buy - before.totals.buy).toBe(200);
  });
});

import { describe, expect, test } from 'vitest';
import { boughtNotes } from '../../../extension/engine/estimate/held-price.ts';
import { jobWith, row } from '../../helpers/priced-job.ts';

// Invented stock: 3 quarts of resin at 20 USD, of which one stands on the shelf, worth 18 USD.
const stock = [
  row('material', 'test_resin', { name: 'Test resin', form: 'liquid', charge: 'packs' }),
  row('pack', 'new_quart', { material: 'test_resin', holds: '1 qt', price: '20 USD' }),
  row('pack', 'old_quart', { material: 'test_resin', holds: '1 qt', price: '18 USD', have: '1' }),
  row('part', 'soak', { kind: 'consumable', material: 'test_resin', use: '2 qt', waste: '0' }),
];

const boards = [
  row('material', 'test_board', {
    name: 'Test board',
    form: 'sheet',
    thickness: '3 mm',
    length: '48 in',
    width: '24 in',
  }),
  row('pack', 'whole', { material: 'test_board', holds: '1152 sqin', price: '30 USD' }),
  row('pack', 'rest', {
    material: 'test_board',
    holds: '480 sqin',
    length: '24 in',
    width: '20 in',
    have: '1',
  }),
];

function lineOf(asked: string, rows: readonly string[], id: string) {
  const { bill } = jobWith(asked === '' ? {} : { use_stock: asked }, ...rows);
  const line = bill.lines.find((one) => one.id === id);
  if (line === undefined) throw new Error(`no line ${id}`);
  return line;
}

describe('use_stock', () => {
  test.each(['', 'no'])('the shelf is left alone unless the job asks for it (%s)', (asked) => {
    const line = lineOf(asked, stock, 'test_resin');
    expect(line.packs.map(({ id, count }) => `${String(count)} ${id}`)).toEqual(['2 new_quart']);
    expect(line).toMatchObject({ buy: 4000, charge: 4000 });
    expect(boughtNotes(line)).toBe('');
  });

  test('what is on the shelf is taken first: it is charged, but not bought again', () => {
    const line = lineOf('yes', stock, 'test_resin');
    expect(line.packs.map(({ id, count }) => `${String(count)} ${id}`).sort()).toEqual([
      '1 new_quart',
      '1 old_quart',
    ]);
    expect(line).toMatchObject({ buy: 2000, charge: 3800 });
    expect(boughtNotes(line)).toBe('1 from stock');
    expect(line.steps.map(({ text }) => text)).toContain(
      '1 × 1 qt from stock at 18.00 USD, on the shelf',
    );
  });

  test('an offcut that holds the part is cut before a sheet is opened, and costs nothing', () => {
    const base = (shape: string) =>
      row('part', 'lid', { kind: 'base', material: 'test_board', shape });
    const small = lineOf('yes', [...boards, base('rect(20 in, 16 in)')], 'test_board');
    expect(small.packs.map(({ id }) => id)).toEqual(['rest']);
    expect(small).toMatchObject({ buy: 0, charge: 0, complete: true });
    const large = lineOf('yes', [...boards, base('rect(30 in, 16 in)')], 'test_board');
    expect(large.packs.map(({ id }) => id)).toEqual(['whole']);
    expect(large).toMatchObject({ buy: 3000 });
  });

  test('the sum of what rows bear is the charge of the line', () => {
    const line = lineOf('yes', stock, 'test_resin');
    expect(line.rows.reduce((sum, { charge }) => sum + charge, 0)).toBe(line.charge);
    expect(line.rows.reduce((sum, { buy }) => sum + buy, 0)).toBe(line.buy);
  });
});

describe('price_from', () => {
  // Invented: a quart is 20 USD, and 14 USD from four on; four cost less than three.
  const quarts = (use: string): readonly string[] => [
    row('material', 'test_resin', { name: 'Test resin', form: 'liquid', charge: 'packs' }),
    row('pack', 'quart', {
      material: 'test_resin',
      holds: '1 qt',
      price: '20 USD',
      from: '4',
      price_from: '14 USD',
    }),
    row('part', 'soak', { kind: 'consumable', material: 'test_resin', use, waste: '0' }),
  ];

  test('so many that all cost less are bought where fewer cost more, at the price they have', () => {
    const line = lineOf('', quarts('3 qt'), 'test_resin');
    expect(line).toMatchObject({ buy: 5600, packs: [{ id: 'quart', count: 4, price: 1400 }] });
    expect(line.steps.map(({ text }) => text)).toContain('4 × 1 qt at 14.00 USD');
  });

  test('two are not worth four', () => {
    const line = lineOf('', quarts('2 qt'), 'test_resin');
    expect(line).toMatchObject({ buy: 4000, packs: [{ id: 'quart', count: 2, price: 2000 }] });
  });

  test('sheets are paid at the lower price where a layout opens so many, and not fewer than are sold', () => {
    const sheets = (more: Readonly<Record<string, string>>) =>
      lineOf(
        '',
        [
          row('material', 'test_board', {
            ...{ name: 'Test board', form: 'sheet', thickness: '3 mm' },
            ...{ length: '48 in', width: '24 in' },
          }),
          row('pack', 'whole', {
            ...{ material: 'test_board', holds: '1152 sqin', price: '30 USD' },
            ...more,
          }),
          row('part', 'board', {
            ...{ kind: 'base', material: 'test_board', shape: 'rect(40 in, 20 in)' },
            qty: '2',
          }),
        ],
        'test_board',
      );
    // One part takes a whole sheet.
    expect(sheets({ from: '2', price_from: '25 USD' })).toMatchObject({
      buy: 5000,
      packs: [{ id: 'whole', count: 2, price: 2500 }],
    });
    expect(sheets({ least: '11520 sqin' })).toMatchObject({
      buy: 30000,
      packs: [{ id: 'whole', count: 10 }],
    });
  });
});

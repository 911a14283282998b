import { describe, expect, test } from 'vitest';
import { jobWith, row } from '../../helpers/priced-job.ts';

// Invented: two quarts of resin and three yards of mat come to 76.98 USD at one supplier.
function job(supplier: Readonly<Record<string, string>>, ...more: readonly string[]) {
  return jobWith(
    {},
    row('supplier', 'coast', { name: 'Coast', ...supplier }),
    row('material', 'test_resin', { name: 'Resin', form: 'liquid', supplier: 'coast' }),
    row('pack', 'quart', { material: 'test_resin', holds: '1 qt', price: '24.99 USD' }),
    row('pack', 'gallon', { material: 'test_resin', holds: '1 gal', price: '69.99 USD' }),
    row('material', 'test_mat', {
      ...{ name: 'Mat', form: 'piece', unit: 'pack', supplier: 'coast', charge: 'packs' },
    }),
    row('pack', 'mat_pack', { material: 'test_mat', holds: '1', price: '9 USD' }),
    row('part', 'soak', { kind: 'consumable', material: 'test_resin', use: '2 qt', waste: '0' }),
    row('part', 'lay', { kind: 'consumable', material: 'test_mat', use: '3', waste: '0' }),
    ...more,
  ).bill;
}

type OrderBill = ReturnType<typeof job>;

function told({ problems }: OrderBill): readonly string[] {
  return problems.filter(({ code }) => code.startsWith('order-')).map(({ message }) => message);
}

function packsOf({ lines }: OrderBill, id: string): string {
  const line = lines.find((one) => one.id === id);
  return (line?.packs ?? []).map((pack) => `${String(pack.count)} ${pack.id}`).join(', ');
}

describe('smallOrders', () => {
  const plain = job({});

  test('an order that is large enough, or has no minimum, is bought as it is needed', () => {
    expect(plain.totals.buy).toBe(7698);
    expect(told(plain)).toEqual([]);
    const enough = job({ minimum: '76.98 USD', surcharge: '15 USD' });
    expect([enough.totals, told(enough)]).toEqual([plain.totals, []]);
  });

  test('two packs of mat more are cheaper than 20 dollars for a small order', () => {
    const bill = job({ minimum: '94 USD', surcharge: '20 USD' });
    expect(packsOf(bill, 'test_resin')).toBe('2 quart');
    expect(packsOf(bill, 'test_mat')).toBe('5 mat_pack');
    expect(bill.totals).toMatchObject({ buy: 9498, charge: plain.totals.charge });
    expect(told(bill)).toEqual([
      'Coast takes orders from 94.00 USD on, and this job needs 76.98 USD of them, 17.02 USD less: 5 × 1 pack of Mat make it up for 18.00 USD more, rather than 20.00 USD for a small order. The price of the job stays as it is; what is left over is stock.',
    ]);
  });

  test('the gallon is bought where it passes the minimum at least cost', () => {
    const bill = job({ minimum: '95 USD' });
    expect(packsOf(bill, 'test_resin')).toBe('1 gallon');
    expect(bill.totals.buy).toBe(9699);
    const line = bill.lines.find(({ id }) => id === 'test_resin');
    expect(line?.left?.base).toBeCloseTo(2 * 57.75 * 25.4 ** 3, 3);
    expect(line?.rows.reduce((sum, { buy }) => sum + buy, 0)).toBe(6999);
    expect(line?.steps.at(-1)?.text).toBe(
      'for the minimum order of Coast: 1 × 1 gal of Resin for 69.99 USD',
    );
  });

  test('the charge for a small order is a line of its own where that is cheaper', () => {
    const bill = job({ minimum: '95 USD', surcharge: '12 USD' });
    expect(packsOf(bill, 'test_resin')).toBe('2 quart');
    expect(bill.lines.find(({ id }) => id === 'supplier/coast')).toMatchObject({
      name: 'Small order, Coast',
      buy: 1200,
      charge: 1200,
      group: 'shop',
    });
    expect(bill.totals).toMatchObject({ buy: 8898, charge: plain.totals.charge + 1200 });
    expect(told(bill)[0]).toContain(
      '18.02 USD less: 12.00 USD is added for a small order. The cheapest way to make it up would be 1 × 1 gal of Resin, for 20.01 USD more.',
    );
  });

  test('a minimum that is far away is told and nothing is bought for it', () => {
    const bill = job({ minimum: '5000 USD' });
    expect(bill.totals).toEqual(plain.totals);
    expect(told(bill)[0]).toContain('Nothing of this job is sold so that it makes that up');
  });

  test('drivers of the same supplier count towards the minimum, and are bought as they are', () => {
    const midbass = (supplier: string): readonly string[] => [
      row('driver', 'mid', { name: 'Midbass', frame: '6 in', price: '20 USD', supplier }),
      row('part', 'plate', { kind: 'baffle', driver: 'mid', qty: '1', 'draw.own.use': '0' }),
    ];
    const elsewhere = job({ minimum: '94 USD' }, ...midbass(''));
    expect(told(elsewhere)).toHaveLength(1);
    const together = job({ minimum: '94 USD' }, ...midbass('coast'));
    expect(told(together)).toEqual([]);
    const short = job({ minimum: '105 USD' }, ...midbass('coast'));
    expect(told(short)[0]).toContain('this job needs 96.98 USD of them, 8.02 USD less: 4 × 1 pack');
    const line = short.lines.find(({ id }) => id === 'driver/mid');
    expect(line?.buy).toBe(2000);
  });

  test('sheets stay as they were laid, and one more is bought', () => {
    const boards = jobWith(
      {},
      row('supplier', 'mill', { name: 'Mill', minimum: '50 USD' }),
      row('material', 'test_board', {
        ...{ name: 'Board', form: 'sheet', thickness: '3 mm', supplier: 'mill' },
        ...{ length: '48 in', width: '24 in' },
      }),
      row('pack', 'whole', { material: 'test_board', holds: '1152 sqin', price: '30 USD' }),
      row('part', 'lid', { kind: 'base', material: 'test_board', shape: 'rect(40 in, 20 in)' }),
    ).bill;
    const line = boards.lines.find(({ id }) => id === 'test_board');
    // The lid is 800 of 1152 sq in: 9.17 USD of its sheet are left, and the other one.
    expect(line).toMatchObject({ buy: 6000, charge: 3000, leftValue: 917 + 3000 });
    expect(line?.packs).toMatchObject([{ id: 'whole', count: 2 }]);
  });

  test('while an amount is missing, nothing is said of the order', () => {
    const open = row('part', 'more', { kind: 'consumable', material: 'test_resin', use: '' });
    expect(told(job({ minimum: '95 USD' }, open))).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { htmlPage } from '../../../../extension/engine/export/paper/paper.ts';
import { jobWith, row } from '../../../helpers/priced-job.ts';
import { paperOf } from '../../../helpers/paper-of.ts';

// Invented stock: a quart of resin on the shelf and glue for years; nails of another supplier.
const rows = [
  row('material', 'test_resin', { name: 'Test resin', form: 'liquid', group: 'Resin dealer' }),
  row('pack', 'new_quart', { material: 'test_resin', holds: '1 qt', price: '20 USD' }),
  row('pack', 'old_quart', { material: 'test_resin', holds: '1 qt', price: '18 USD', have: '1' }),
  row('material', 'test_glue', { name: 'Test glue', form: 'liquid', group: 'Wood dealer' }),
  row('pack', 'glue_pint', { material: 'test_glue', holds: '1 pt', price: '7 USD', have: '3' }),
  row('pack', 'glue_new', { material: 'test_glue', holds: '1 pt', price: '7 USD' }),
  row('material', 'test_nail', { name: 'Test nail', form: 'piece', group: 'Wood dealer' }),
  row('pack', 'nail_box', { material: 'test_nail', holds: '100 each', price: '5 USD' }),
  row('part', 'soak', { kind: 'consumable', material: 'test_resin', use: '1.5 qt', waste: '0' }),
  row('part', 'glue', { kind: 'consumable', material: 'test_glue', use: '0.5 pt', waste: '0' }),
  row('part', 'nails', { kind: 'consumable', material: 'test_nail', qty: '40', waste: '0' }),
];

/** Rows of the list, cell by cell; boxes to tick are empty cells. */
function listOf(stock: string): readonly (readonly string[])[] {
  const page = htmlPage(paperOf('shopping', jobWith({ use_stock: stock }, ...rows)));
  return [...page.matchAll(/<tr[^>]*>([\s\S]*?)<\/tr>/g)].map(([, cells = '']) =>
    [...cells.matchAll(/<t[hd][^>]*>([\s\S]*?)<\/t[hd]>/g)].map(([, text = '']) =>
      text.replaceAll(/<[^>]+>/g, ' ').trim(),
    ),
  );
}

describe('shoppingPaper', () => {
  test('what is on the shelf is taken off what is bought, and stands in a column of its own', () => {
    expect(listOf('yes')).toEqual([
      ['', 'Material', 'Needed', 'From the shelf', 'Buy', 'About'],
      ['Resin dealer: 20.00 USD'],
      ['', 'Test resin', '1.5 qt', '1 × 1 qt', '1 × 1 qt', '20.00 USD'],
      ['Wood dealer: 5.00 USD'],
      ['', 'Test nail', '40 each', '', '1 × 100 each', '5.00 USD'],
      ['On the shelf: nothing to buy'],
      ['', 'Test glue', '0.5 pt', '1 × 1 pt', 'nothing', '0.00 USD'],
    ]);
  });

  test('a job that leaves the shelf alone buys everything, supplier by supplier', () => {
    expect(listOf('no')).toEqual([
      ['', 'Material', 'Needed', 'Buy', 'About'],
      ['Resin dealer: 40.00 USD'],
      ['', 'Test resin', '1.5 qt', '2 × 1 qt', '40.00 USD'],
      ['Wood dealer: 12.00 USD'],
      ['', 'Test glue', '0.5 pt', '1 × 1 pt', '7.00 USD'],
      ['', 'Test nail', '40 each', '1 × 100 each', '5.00 USD'],
    ]);
  });

  test('a supplier of the book heads its materials and what it adds to a small order', () => {
    const coast = { name: 'Coast', minimum: '90 USD', surcharge: '4 USD' };
    const bought = rows.map((text) => text.replace("group = 'Resin dealer'", "supplier = 'coast'"));
    const job = jobWith({ use_stock: 'no' }, row('supplier', 'coast', coast), ...bought);
    const page = htmlPage(paperOf('shopping', job));
    expect(page).toContain('Coast: 44.00 USD');
    expect(page).toMatch(/Small order, Coast[\s\S]*?4\.00 USD/);
    expect(page).toContain('Together 56.00 USD.');
  });

  test('a driver stands under the supplier that its row names', () => {
    const driver = { name: 'Midbass', frame: '6 in', price: '30 USD', supplier: 'coast' };
    const job = jobWith(
      { use_stock: 'no' },
      row('supplier', 'coast', { name: 'Coast' }),
      row('driver', 'mid', driver),
      row('part', 'plate', { kind: 'baffle', driver: 'mid', material: 'none' }),
      ...rows,
    );
    const page = htmlPage(paperOf('shopping', job));
    expect(page).toMatch(/Coast: 30\.00 USD[\s\S]*?Midbass/);
  });

  test('the money of the suppliers adds up to what is to be brought', () => {
    const text = listOf('yes').flat().join(' ');
    expect(text).toContain('20.00 USD');
    const page = htmlPage(paperOf('shopping', jobWith({ use_stock: 'yes' }, ...rows)));
    expect(page).toContain('Together 25.00 USD.');
  });
});

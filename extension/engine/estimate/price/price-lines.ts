import type { KindGroup } from '../../book/book.ts';
import type { Minor } from '../bill.ts';
import type { Charge, Price } from './price.ts';

/** One line of a price as it is read from top to bottom. */
export type PriceRow =
  | { readonly sort: 'materials'; readonly group: KindGroup; readonly amount: Minor }
  | { readonly sort: 'charge' | 'due'; readonly charge: Charge; readonly amount: Minor }
  | { readonly sort: 'price' | 'total' | 'balance'; readonly amount: Minor };

/** True for what is a payment of the total and no part of it. */
export function isDue({ operation }: Charge): boolean {
  return operation === 'deposit' || operation === 'stage';
}

/**
 * The price from materials to balance: groups of materials, charges in their order, the price before
 * the first tax, the total, what is due when. Lines above the total add up to it.
 */
export function priceRows(price: Price): readonly PriceRow[] {
  const { charges, totals } = price;
  const rows: PriceRow[] = price.materials.map(({ group, amount }) => {
    return { sort: 'materials', group, amount };
  });
  const added = charges.filter((charge) => !isDue(charge));
  const firstTax = added.findIndex(({ operation }) => operation === 'tax');
  added.forEach((charge, index) => {
    if (index === firstTax) rows.push({ sort: 'price', amount: rows.reduce(summed, 0) });
    rows.push({ sort: 'charge', charge, amount: charge.amount });
  });
  rows.push({ sort: 'total', amount: totals.total });
  const due = charges.filter(isDue);
  for (const charge of due) rows.push({ sort: 'due', charge, amount: charge.amount });
  if (due.length > 0) rows.push({ sort: 'balance', amount: totals.balance });
  return rows;
}

function summed(sum: Minor, row: PriceRow): Minor {
  return row.sort === 'materials' || row.sort === 'charge' ? sum + row.amount : sum;
}

/** How a charge comes about, without its result: `7 % of 2479.29 USD`. */
export function chargeDetail({ steps }: Charge): string {
  return steps.map(({ text }) => text.replace(/ = [^=]*$/, '')).join(' ');
}

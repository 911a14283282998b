import { money, plain } from '../units/dimension.ts';
import { columnTable, date, link, quantity, text } from './column-table.ts';

/** Prices held for one job: listed after the material, pack and constant rows it speaks of. */
export const priceColumns = columnTable('price', [
  [
    link('pack', ['pack'], 'pack', 'Pack whose price is held.'),
    quantity('price', money, 'price', 'Price on the day of the quote.'),
    quantity('rate', 'any', 'rate', 'Rate on the day of the quote.'),
  ],
  [
    quantity('from', plain, 'cheaper from', 'Number of packs from which each costs less.'),
    quantity('price_from', money, 'lower price', 'Of one pack, where so many are bought.'),
  ],
  [
    date('date', 'date', 'Day of the price.'),
    text('note', 'note', 'Anything the next person should know.'),
  ],
]);

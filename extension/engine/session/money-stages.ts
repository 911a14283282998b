import type { Book } from '../book/book.ts';
import type { Bill } from '../estimate/bill.ts';
import { openEstimate } from '../estimate/estimate.ts';
import { openPrice } from '../estimate/price/open-price.ts';
import type { Price } from '../estimate/price/price.ts';
import type { Work } from '../estimate/work/task.ts';
import { openWork } from '../estimate/work/work.ts';
import type { HeavyAnswers, HeavyQuestion } from '../formula/catalogue.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { Workbook } from '../workbook/workbook.ts';

/** What a job takes, how long it takes, and what it costs. */
export interface Money {
  readonly bill: Bill;
  readonly work: Work;
  readonly price: Price;
}

/** Bill, work and price, each kept up with what stands before it. */
export interface MoneyStages {
  readonly update: (workbook: Workbook, book: Book, settings: UnitSettings) => Money;
  /** Layouts that the bill waits for. */
  readonly wants: () => readonly HeavyQuestion[];
}

/** Nothing worked out yet; layouts that are worked out elsewhere come from `heavy`. */
export function openMoney(heavy?: HeavyAnswers): MoneyStages {
  const estimate = openEstimate(heavy);
  const workKeeper = openWork();
  const priceKeeper = openPrice();
  return {
    wants: estimate.wants,
    update: (workbook, book, settings) => {
      const bill = estimate.update(workbook, book, settings);
      const work = workKeeper.update(workbook, book, settings);
      const price = priceKeeper.update(workbook, book, settings, { bill, work });
      return { bill, work, price };
    },
  };
}

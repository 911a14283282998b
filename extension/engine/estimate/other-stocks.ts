import { layOut } from '../cutting/lay-out.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { lengthText, sizeText } from './amount.ts';
import type { BillLine } from './bill.ts';
import { moneyText } from './money.ts';

/** What a line would come to on one stock alone, in words. */
export interface OtherStock {
  readonly stock: string;
  readonly words: string;
}

/**
 * What the parts of a line would come to on each of its stocks alone, and on that stock a half as long,
 * which many suppliers cut: how many, and what they cost where they are priced. Limits are left out:
 * the question is what to buy.
 */
export function otherStocks(line: BillLine, settings: UnitSettings): readonly OtherStock[] {
  const instance = line.laid?.order.instance;
  if (instance === undefined || (instance.kind !== 'rectangles' && instance.kind !== 'strips')) {
    return [];
  }
  return instance.stocks.flatMap(({ id, length, width, price }) => {
    const size = (long: number): string =>
      width === 0 ? lengthText(long, settings) : sizeText({ length: long, width }, settings);
    const tried = (long: number, cost: number): OtherStock => {
      const stocks = [{ id, length: long, width, price: cost }];
      const answer = layOut({ ...instance, stocks, effort: 'live' });
      const missing = answer.unplaced.reduce((sum, { count }) => sum + count, 0);
      const paid = cost > 0 ? ` for ${moneyText(Math.round(answer.price), settings.currency)}` : '';
      const words =
        missing > 0
          ? `${String(missing)} of the parts do not fit`
          : `${String(answer.count)}${paid}, ${String(Math.round(answer.utilisation * 100))} % used`;
      return { stock: `${id}: ${size(long)}`, words };
    };
    return [tried(length, price), tried(length / 2, 0)];
  });
}

import type { CutAnswer, Placement, Stock } from './instance.ts';

/** What stands for a roll that an instance does not name. */
export const noRoll: Stock = { id: '', length: 0, width: 0, price: 0 };

/** How a roll of cloth was laid; lengths in mm, areas in mm². */
interface LaidRoll {
  readonly stock: Stock;
  /** Taken off the roll. */
  readonly length: number;
  /** No layout takes less of it. */
  readonly leastLength: number;
  /** Of all that lies on it. */
  readonly area: number;
  readonly placements: readonly Placement[];
  readonly unplaced: CutAnswer['unplaced'];
}

/** Selling units in a length; the stock's length is one. */
function unitsOf(mm: number, { length }: Stock): number {
  return Math.max(0, Math.ceil(mm / (length > 0 ? length : 1) - 1e-9));
}

/** The answer for a layout along a roll: units to buy, the fewest that any layout takes, what it costs. */
export function rollAnswer(laid: LaidRoll): CutAnswer {
  const { stock, length, area, placements, unplaced } = laid;
  const [count, bound] = [unitsOf(length, stock), unitsOf(laid.leastLength, stock)];
  const utilisation = length > 0 ? area / (length * stock.width) : 0;
  return {
    kind: 'bolt',
    count,
    price: count * stock.price,
    bound,
    priceBound: bound * stock.price,
    proven: unplaced.length === 0 && count <= bound,
    utilisation,
    length,
    sheets: placements.length === 0 ? [] : [{ stock: stock.id, utilisation }],
    placements,
    patterns: [],
    cuts: [],
    unplaced,
  };
}

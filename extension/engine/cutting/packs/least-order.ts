import { cheapestCount, fewestMoney, priceOf } from './cheapest-packs.ts';
import { costsOf, packsAt, type CostTable, type OrderLine } from './line-costs.ts';

export interface OrderChosen {
  readonly cost: number;
  /** What is bought for each line, in their order. */
  readonly lines: readonly {
    readonly packs: readonly { readonly id: string; readonly count: number }[];
    readonly cost: number;
  }[];
}

/** More than this over what is needed, in minor units, is not an order that is a little too small. */
export const farthest = 100_000;

/**
 * The cheapest order that covers every line and comes to `minimum` together: of each line all totals
 * it can be bought for are found, and of these the sum that is least. Exact. Of equal sums later lines
 * keep what they cost by themselves; of combinations of one line at one price the one that holds most is taken.
 * Prices are in whole minor units, so is `minimum`.
 *
 * @returns undefined where the lines cannot be bought, cannot come to the minimum, or only by
 * more than `farthest` over what they cost
 */
export function leastOrder(lines: readonly OrderLine[], minimum: number): OrderChosen | undefined {
  const least = lines.map(leastCost);
  if (least.includes(Infinity)) return undefined;
  const missing = Math.max(0, minimum - least.reduce((sum, one) => sum + one, 0));
  const room = missing + lastStep(lines);
  if (room > farthest) return undefined;
  const tables = lines.map((line, index) => costsOf(line, (least[index] ?? 0) + room));
  const extras = tables.map((table, index) => extraCosts(table, lines[index], least[index] ?? 0));
  const chosen = leastSum(extras, { from: missing, to: room });
  if (chosen === undefined) return undefined;
  const bought = tables.map((table, index) => {
    const cost = (least[index] ?? 0) + (chosen[index] ?? 0);
    return { packs: packsAt(table, cost), cost };
  });
  return { cost: bought.reduce((sum, { cost }) => sum + cost, 0), lines: bought };
}

/** What a line costs by itself; no end of money where it cannot be bought. */
function leastCost({ need, offers }: OrderLine): number {
  const floors = offers.filter(({ floor = 0 }) => floor > 0);
  if (floors.length === 0) return fewestMoney(need, offers, 0)?.cost ?? Infinity;
  return floors.reduce((sum, one) => sum + priceOf(one, cheapestCount(one, one.floor ?? 0)), 0);
}

// One pack more is always to be had where there is no limit: the cheapest way to the minimum passes
// it by less than that pack.
function lastStep(lines: readonly OrderLine[]): number {
  const offers = lines.flatMap((line) => line.offers).filter(({ price }) => price > 0);
  const endless = offers.filter(({ limit = Infinity }) => limit === Infinity);
  if (endless.length > 0) {
    return Math.min(...endless.map(({ price, least = 1 }) => price * Math.max(1, least)));
  }
  return offers.reduce((sum, { price, limit = 0 }) => sum + price * limit, 0);
}

function extraCosts(table: CostTable, line: OrderLine | undefined, least: number): number[] {
  const enough = (line?.need ?? 0) * (1 - 1e-9);
  const found: number[] = [];
  table.amounts.forEach((amount, cost) => {
    if (cost >= least && amount >= enough) found.push(cost - least);
  });
  return found;
}

/** One extra cost of each line, so that their sum is the least in the range; undefined without any. */
function leastSum(
  extras: readonly (readonly number[])[],
  { from, to }: { readonly from: number; readonly to: number },
): readonly number[] | undefined {
  // Sums that the lines so far can make, a bit for each.
  const sums: bigint[] = [1n];
  const all = (1n << BigInt(to + 1)) - 1n;
  for (const extra of extras) {
    const before = sums.at(-1) ?? 0n;
    sums.push(extra.reduce((reached, one) => reached | (before << BigInt(one)), 0n) & all);
  }
  const above = (sums.at(-1) ?? 0n) >> BigInt(from);
  if (above === 0n) return undefined;
  const bits = above.toString(2);
  let rest = from + bits.length - 1 - bits.lastIndexOf('1');
  const chosen: number[] = [];
  for (let index = extras.length - 1; index >= 0; index--) {
    const before = sums[index] ?? 0n;
    const takes = (one: number): boolean => one <= rest && hasBit(before, rest - one);
    const one = (extras[index] ?? []).find(takes) ?? 0;
    chosen.unshift(one);
    rest -= one;
  }
  return chosen;
}

function hasBit(bits: bigint, at: number): boolean {
  return ((bits >> BigInt(at)) & 1n) === 1n;
}

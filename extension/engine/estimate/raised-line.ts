import type { UnitSettings } from '../units/quantity.ts';
import { amountOf, packText } from './amount.ts';
import type { BillLine, BoughtPack, Minor } from './bill.ts';
import type { MaterialFacts } from './material.ts';
import { moneyText, splitMoney } from './money.ts';
import { tightness } from './packs.ts';
import { boughtPack } from './purchase.ts';
import { packsApart } from './shelf-packs.ts';

/** What is bought of a line's material instead of its own packs. */
export interface BoughtMore {
  readonly packs: readonly { readonly id: string; readonly count: number }[];
  readonly cost: Minor;
  readonly material: MaterialFacts;
  /** Name of the supplier whose minimum it is bought for. */
  readonly supplier: string;
}

/** `2 × 1 gal of Resin`: the packs that are bought of a line. */
export function boughtText(line: BillLine, settings: UnitSettings): string {
  const packs = packsApart(line).bought.map((pack) => packText(pack, settings));
  return `${packs.join(' + ')} of ${line.name}`;
}

/** What packs of a material hold together, in its base unit. */
export function amountIn(
  packs: readonly { readonly id: string; readonly count: number }[],
  material: MaterialFacts,
): number {
  const holds = new Map(material.packs.map((pack) => [pack.id, pack.holds]));
  return packs.reduce((sum, { id, count }) => sum + count * (holds.get(id) ?? 0), 0);
}

/**
 * The line with other packs bought: what they cost, and what is left over. What is charged for it
 * stays, for what is bought on top is stock.
 */
export function withMore(
  line: BillLine,
  { packs, cost, material, supplier }: BoughtMore,
  settings: UnitSettings,
): BillLine {
  const need = line.need?.base ?? 0;
  const { shelf } = packsApart(line);
  const fresh = packs.flatMap(({ id, count }): readonly BoughtPack[] => {
    const pack = material.packs.find((one) => one.id === id);
    return pack === undefined ? [] : [boughtPack(pack, count)];
  });
  const all = [...shelf, ...fresh];
  const amount = amountIn(all, material);
  const left = amountOf(Math.max(0, amount - need), material.measure, material.unit);
  const buys = splitMoney(
    cost,
    line.rows.map(({ need }) => need.base),
  );
  const { tight, ...kept } = line;
  const still = tight === undefined ? undefined : tightness(need, amount);
  const raised = {
    ...kept,
    ...(still === undefined ? {} : { tight: still }),
    packs: all,
    buy: cost,
    left,
    leftValue: line.leftValue + cost - line.buy,
    rows: line.rows.map((row, index) => ({ ...row, buy: buys[index] ?? 0 })),
  };
  const words = `${boughtText(raised, settings)} for ${moneyText(cost, settings.currency)}`;
  const text = `for the minimum order of ${supplier}: ${words}`;
  return { ...raised, steps: [...line.steps, { text }] };
}

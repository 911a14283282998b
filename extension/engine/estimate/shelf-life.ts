import type { Problem } from '../problems.ts';
import { time } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import { amountOf, amountText, packText } from './amount.ts';
import { billProblem } from './bill-problems.ts';
import { placeOf } from './cells.ts';
import type { MaterialFacts } from './material.ts';
import { moneyText } from './money.ts';
import { offerOf } from './pack.ts';
import { cheapestPacks } from './packs.ts';
import type { Purchase } from './purchase.ts';

/** What is bought for how much of a material that does not keep. */
export interface Keeping {
  readonly material: MaterialFacts;
  /** In the measure the material is bought in. */
  readonly need: number;
  readonly buying: Purchase;
  readonly slack: number;
}

/**
 * A warning where as much is left in what is bought as a second job like this takes, smaller packs
 * would leave less, and it does not keep for ever. That a rest is used up by the next job and no later
 * is common practice, no source.
 */
export function shelfLifeProblem(
  { material, need, buying, slack }: Keeping,
  settings: UnitSettings,
): Problem | undefined {
  const fresh = buying.packs.flatMap((one) => {
    const pack = material.packs.find(({ id }) => id === one.id);
    return one.shelf === true || pack === undefined ? [] : [{ one, pack }];
  });
  const lives = fresh.flatMap(({ pack }) => pack.keeps ?? material.keeps ?? []);
  const left = buying.amount - need;
  const [first] = fresh;
  if (first === undefined || lives.length === 0 || need <= 0 || left < need) return undefined;
  const largest = fresh.reduce((a, b) => (b.pack.holds > a.pack.holds ? b : a), first);
  const smaller = material.packs.filter(
    ({ holds, have, step }) =>
      holds < largest.pack.holds && have === undefined && step === undefined,
  );
  const offers = smaller.map((pack) => offerOf(pack, pack.holds));
  const other = cheapestPacks(need, offers, slack);
  if (other === undefined || other.amount >= buying.amount) return undefined;
  const text = (base: number): string =>
    amountText(amountOf(base, material.measure, material.unit), settings);
  const dear = other.cost - buying.cost;
  const details = {
    material: material.name,
    pack: packText(largest.one, settings),
    left: text(left),
    need: text(need),
    life: showQuantity({ base: Math.min(...lives), dimension: time }, settings, 'day').text,
    packs: other.packs.map(({ id, count }) => `${String(count)} × ${id}`).join(' and '),
    more: moneyText(Math.abs(dear), settings.currency),
    way: dear < 0 ? 'less' : 'more',
  };
  const place = placeOf(material.row, 'shelf_life');
  return billProblem('shelf-life', details, { severity: 'warning', place });
}

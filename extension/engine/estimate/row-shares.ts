import { onDemand } from '../units/on-demand.ts';
import type { Minor, RowNeed } from './bill.ts';
import type { MaterialFacts } from './material.ts';
import { splitMoney } from './money.ts';
import type { Asked } from './need.ts';

const stepsOnDemand = onDemand('steps');

interface Shared {
  readonly asked: readonly Asked[];
  readonly rows: readonly RowNeed[];
}

// What was shared out last of a material: rows that bear the same again are the same objects.
const lastShared = new WeakMap<MaterialFacts, Shared>();

/** What each row bears of a line's charge and of what is bought, in whole minor units that add up to them. */
export function sharedRows(
  material: MaterialFacts,
  asked: readonly Asked[],
  { charge, buy }: { readonly charge: Minor; readonly buy: Minor },
): readonly RowNeed[] {
  const shares = asked.map(({ need }) => need.base);
  const charges = splitMoney(charge, shares);
  const buys = buy === charge ? charges : splitMoney(buy, shares);
  const before = lastShared.get(material);
  const rows = asked.map((row, index) => {
    const [rowCharge, rowBuy] = [charges[index] ?? 0, buys[index] ?? 0];
    const old = before?.asked[index] === row ? before.rows[index] : undefined;
    const same = old?.charge === rowCharge && old.buy === rowBuy;
    return same ? old : withShares(row, rowCharge, rowBuy);
  });
  lastShared.set(material, { asked, rows });
  return rows;
}

// Written out field by field: copying hundreds of rows with a spread costs more than all the
// arithmetic of a bill.
function withShares(asked: Asked, charge: Minor, buy: Minor): RowNeed {
  const { table, row, occurrence, draw, material, group } = asked;
  const { use, pieces, panels, waste, need, blank } = asked;
  const made = {
    table,
    row,
    occurrence,
    draw,
    material,
    group,
    use,
    pieces,
    panels,
    waste,
    need,
    charge,
    buy,
  };
  const whole = blank === undefined ? made : Object.assign(made, { blank });
  return stepsOnDemand(whole, () => asked.steps);
}

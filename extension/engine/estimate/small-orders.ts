import { leastOrder, type OrderChosen } from '../cutting/packs/least-order.ts';
import type { OrderLine, OrderOffer } from '../cutting/packs/line-costs.ts';
import type { Problem } from '../problems.ts';
import { money } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { billProblem } from './bill-problems.ts';
import type { BillLine, Minor } from './bill.ts';
import { baseIn, nameOf, placeOf, wordIn } from './cells.ts';
import type { MaterialFacts } from './material.ts';
import { moneyText, toMinor } from './money.ts';
import { offerOf } from './pack.ts';
import { amountIn, boughtText, withMore } from './raised-line.ts';
import { packsApart } from './shelf-packs.ts';

/** What the lines of materials come to once every supplier takes the order. */
export interface Ordered {
  readonly lines: readonly BillLine[];
  /** What is paid on top of small orders. */
  readonly surcharges: readonly BillLine[];
  readonly problems: readonly Problem[];
}

export interface OrderGround {
  readonly suppliers: readonly AnsweredRow[];
  readonly facts: ReadonlyMap<string, MaterialFacts>;
  /** Lines of drivers, which are bought as they are, and who sells each. */
  readonly drivers: readonly { readonly line: BillLine; readonly supplier: string }[];
  /** Share by which packs may fall short of the need. */
  readonly slack: number;
  readonly settings: UnitSettings;
}

/**
 * Holds the lines bought of each supplier against the least that is ordered there. An order of less
 * is paid as is cheapest: with more or larger packs of the same materials, or with what the supplier
 * adds to a small order. What a job charges for its materials stays as it is, for what is bought for the
 * minimum's sake is stock; the surcharge is a cost of the job.
 *
 * Suppliers whose lines lack an amount or a price are left until these are there.
 */
export function smallOrders(lines: readonly BillLine[], ground: OrderGround): Ordered {
  const start: Ordered = { lines, surcharges: [], problems: [] };
  return ground.suppliers.reduce((ordered, supplier) => {
    const short = shortOrder(ordered.lines, supplier, ground);
    return short === undefined ? ordered : settled(ordered, short, ground);
  }, start);
}

/** An order that does not come to its minimum. */
interface ShortOrder {
  readonly supplier: AnsweredRow;
  readonly own: readonly BillLine[];
  readonly sum: Minor;
  readonly minimum: Minor;
  readonly surcharge: Minor | undefined;
}

function shortOrder(
  lines: readonly BillLine[],
  supplier: AnsweredRow,
  { facts, drivers, settings }: OrderGround,
): ShortOrder | undefined {
  const least = baseIn(supplier, 'minimum', money);
  if (supplier.broken || least === undefined) return undefined;
  const minimum = toMinor(least, settings.currency);
  const ofMaterials = lines.filter(({ id }) => {
    const material = facts.get(id);
    return material !== undefined && wordIn(material.row, 'supplier') === supplier.id;
  });
  const ofDrivers = drivers.filter((driver) => driver.supplier === supplier.id);
  const own = [...ofMaterials, ...ofDrivers.map(({ line }) => line)].filter(({ buy }) => buy > 0);
  const sum = own.reduce((total, { buy }) => total + buy, 0);
  if (sum === 0 || sum >= minimum || own.some(({ complete }) => !complete)) return undefined;
  const added = baseIn(supplier, 'surcharge', money);
  const surcharge = added === undefined ? undefined : toMinor(added, settings.currency);
  return { supplier, own, sum, minimum, surcharge };
}

function settled(ordered: Ordered, short: ShortOrder, ground: OrderGround): Ordered {
  const { own, minimum, sum, surcharge } = short;
  const open = own.flatMap((line) => {
    const material = ground.facts.get(line.id);
    const asked = material && orderLine(line, material, ground.slack);
    return material === undefined || asked === undefined ? [] : [{ line, material, asked }];
  });
  const fixed = own
    .filter((line) => !open.some((one) => one.line === line))
    .reduce((total, { buy }) => total + buy, 0);
  const wanted = open.map(({ asked }) => asked);
  const found = open.length === 0 ? undefined : leastOrder(wanted, minimum - fixed);
  const more = found === undefined ? undefined : found.cost + fixed - sum;
  const raised = found === undefined ? [] : raisedLines(open, found, short, ground);
  const takes = more !== undefined && (surcharge === undefined || more <= surcharge);
  const told = tell(short, { more, raised, takes }, ground.settings);
  const problems = [...ordered.problems, told];
  if (takes) {
    const instead = new Map(raised.map((line) => [line.id, line]));
    return { ...ordered, problems, lines: ordered.lines.map((one) => instead.get(one.id) ?? one) };
  }
  if (surcharge === undefined || surcharge === 0) return { ...ordered, problems };
  const surcharges = [...ordered.surcharges, surchargeLine(short, surcharge, ground.settings)];
  return { ...ordered, problems, surcharges };
}

/**
 * How else a line can be bought: liquids, cans and pieces in any packs that hold the need; what was laid
 * out and what is cut to measure as it is, and more. Undefined where it is bought as it is or not at all.
 */
function orderLine(line: BillLine, material: MaterialFacts, slack: number): OrderLine | undefined {
  const { bought, shelf } = packsApart(line);
  const fresh = material.packs.filter(({ have }) => have === undefined);
  const cut = bought.find((pack) => pack.cut !== undefined);
  if (cut !== undefined) {
    const pack = fresh.find(({ id }) => id === cut.id);
    const [single] = pack === undefined ? [] : [offerOf(pack, pack.holds)];
    // Steps whose price is no whole number of cents are rounded together: they stay as they are.
    const even = single !== undefined && single.price * cut.count === line.buy && single.price > 0;
    return even ? { need: 0, offers: [{ ...single, floor: cut.count }] } : undefined;
  }
  const whole = fresh.filter(({ step }) => step === undefined);
  const offers = whole.map((pack): OrderOffer => offerOf(pack, pack.holds));
  if (['sheet', 'strip', 'roll'].includes(material.form)) {
    const counts = new Map(bought.map(({ id, count }) => [id, count]));
    return { need: 0, offers: offers.map((one) => ({ ...one, floor: counts.get(one.id) ?? 0 })) };
  }
  const there = amountIn(shelf, material);
  const short = material.measure === 'count' ? 0 : slack;
  return { need: (line.need?.base ?? 0) * (1 - short) - there, offers };
}

function raisedLines(
  open: readonly { readonly line: BillLine; readonly material: MaterialFacts }[],
  found: OrderChosen,
  { supplier }: ShortOrder,
  { settings }: OrderGround,
): readonly BillLine[] {
  return open.flatMap(({ line, material }, index) => {
    const bought = found.lines[index];
    if (bought === undefined || bought.cost === line.buy) return [];
    return [withMore(line, { ...bought, material, supplier: nameOf(supplier) }, settings)];
  });
}

function tell(
  { supplier, sum, minimum, surcharge }: ShortOrder,
  way: {
    readonly more: Minor | undefined;
    readonly raised: readonly BillLine[];
    readonly takes: boolean;
  },
  settings: UnitSettings,
): Problem {
  const text = (minor: Minor): string => moneyText(minor, settings.currency);
  const packs = way.raised.map((line) => boughtText(line, settings)).join(', ');
  const details = {
    supplier: nameOf(supplier),
    minimum: text(minimum),
    sum: text(sum),
    missing: text(minimum - sum),
    packs,
    more: text(way.more ?? 0),
    surcharge: text(surcharge ?? 0),
    instead: surcharge === undefined ? '' : `, rather than ${text(surcharge)} for a small order`,
    way:
      way.more === undefined
        ? 'Nothing of this job is sold so that it makes that up.'
        : `The cheapest way to make it up would be ${packs}, for ${text(way.more)} more.`,
  };
  const code = way.takes
    ? 'order-raised'
    : surcharge === undefined
      ? 'order-small'
      : 'order-surcharge';
  return billProblem(code, details, {
    severity: 'warning',
    place: placeOf(supplier, 'minimum'),
  });
}

function surchargeLine(
  { supplier, sum, minimum }: ShortOrder,
  surcharge: Minor,
  { currency }: UnitSettings,
): BillLine {
  const small = `${moneyText(sum, currency)} is less than ${moneyText(minimum, currency)}`;
  return {
    id: `supplier/${supplier.id}`,
    name: `Small order, ${nameOf(supplier)}`,
    source: { table: 'supplier', id: supplier.id },
    group: 'shop',
    packs: [],
    buy: surcharge,
    charge: surcharge,
    charges: 'packs',
    leftValue: 0,
    approximate: false,
    rows: [],
    steps: [{ text: `${small}: ${moneyText(surcharge, currency)} is added` }],
    complete: true,
  };
}

import type { HeavyAnswers, HeavyQuestion } from '../formula/catalogue.ts';
import type { Problem } from '../problems.ts';
import { whenAsked } from '../steps.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { amountOf, amountText, lengthText, packText, sizeText } from './amount.ts';
import { billProblem, type BillProblemCode } from './bill-problems.ts';
import type { Amount, BillLine, BoughtPack, Minor, Step } from './bill.ts';
import { timesInto } from './layout.ts';
import { lockProblem } from './locks.ts';
import type { MaterialFacts } from './material.ts';
import { moneyText, roundedMinor } from './money.ts';
import type { Asked } from './need.ts';
import { tightness } from './packs.ts';
import { laidSteps } from './buy-laid.ts';
import type { Laid } from './cut-layout.ts';
import { layingOf, type QuickLayouts } from './laid.ts';
import { sharedRows } from './row-shares.ts';
import { pieceOfStrip } from './strip-piece.ts';
import { shelfLifeProblem } from './shelf-life.ts';
import { lineNeed, piecesFromPack, purchase, type LineNeed, type Purchase } from './purchase.ts';
import { onDemand } from '../units/on-demand.ts';
import { differingPlaces } from '../units/renewed-list.ts';

/** What a line is made from; the same inputs give the same line. */
export interface LineInput {
  readonly material: MaterialFacts;
  readonly asked: readonly Asked[];
  /** Rows that hold parts in place on this material's sheets. */
  readonly locks: readonly AnsweredRow[];
  /** Needs of this material that have no answer. */
  readonly missing: number;
  /** Share by which packs may fall short of the need. */
  readonly slack: number;
  readonly settings: UnitSettings;
}

export interface LineOutcome {
  readonly line: BillLine;
  readonly problems: readonly Problem[];
  /** Every blank fits what is sold. */
  readonly fits: boolean;
  /** The layout that the line waits for. */
  readonly waits?: HeavyQuestion;
}

/** Where layouts come from: those worked out elsewhere, and those found at once. */
export interface LayoutsFrom {
  readonly heavy: HeavyAnswers | undefined;
  readonly quick: QuickLayouts;
}

/** A line as it was, and from what. */
export interface LineBefore {
  readonly input: LineInput;
  readonly outcome: LineOutcome;
}

/** The bill's line for one material: what its rows need, what is bought, and what each row bears. */
export function materialLine(
  input: LineInput,
  from: LayoutsFrom,
  before?: LineBefore,
): LineOutcome {
  const { material, settings } = input;
  const unfit = unfitBlanks(input, before);
  const rejected = new Set(unfit.map(({ row }) => row));
  const asked = unfit.length === 0 ? input.asked : input.asked.filter((row) => !rejected.has(row));
  const { locks } = input;
  const { laid: cut, waits, unheld = [] } = layingOf(material, asked, { ...from, locks });
  const need = lineNeed(material, asked, settings, cut);
  const buying = purchase(material, need, { rows: asked, slack: input.slack, cut });
  const problems = [
    ...material.problems,
    ...unfit.map(({ problem }) => problem),
    ...unheld.map((one) => lockProblem(one, settings)),
  ];
  if (buying === undefined) {
    problems.push(...asked.map((row) => unsold(row, material)));
  }
  const kept =
    buying && shelfLifeProblem({ material, need: need.base, buying, slack: input.slack }, settings);
  if (kept !== undefined) problems.push(kept);
  const placed = cut === undefined || cut.answer.unplaced.length === 0;
  const whole = buying !== undefined && placed && unfit.length === 0 && input.missing === 0;
  const line = lineOf({ ...input, asked }, { need, buying, cut, complete: whole });
  const made = { line, problems, fits: unfit.length === 0 };
  return waits === undefined ? made : { ...made, waits };
}

function askingPlace(row: Asked): Partial<Problem> {
  const column = row.draw === '' ? 'material' : `draw.${row.draw}.material`;
  return { place: { table: row.table, row: row.row, occurrence: row.occurrence, column } };
}

function unsold(row: Asked, material: MaterialFacts): Problem {
  const details = { row: row.row, material: material.name };
  return billProblem('material-unsold', details, { severity: 'warning', ...askingPlace(row) });
}

interface Unfit {
  readonly row: Asked;
  readonly problem: Problem;
}

function unfitBlanks(
  { asked, material, settings }: LineInput,
  before: LineBefore | undefined,
): readonly Unfit[] {
  // Where all did fit, those that are as they were fit again.
  const fitted = before?.outcome.fits === true && before.input.material === material;
  const places = fitted ? differingPlaces(before.input.asked, asked) : undefined;
  const rows = places?.flatMap((place) => asked[place] ?? []) ?? asked;
  return rows.flatMap((row) => unfitBlank(row, material, settings) ?? []);
}

// A blank must lie on the bolt, on some sheet, or along some length that is sold.
function unfitBlank(
  row: Asked,
  material: MaterialFacts,
  settings: UnitSettings,
): Unfit | undefined {
  const code = unfitCode(row, material);
  if (code === undefined) return undefined;
  const details = {
    row: row.row,
    material: material.name,
    size:
      row.blank === undefined ? lengthText(row.use.base, settings) : sizeText(row.blank, settings),
    width: lengthText(material.properties.width ?? 0, settings),
  };
  const place = { table: row.table, row: row.row, occurrence: row.occurrence, column: 'length' };
  return { row, problem: billProblem(code, details, { place }) };
}

function unfitCode(row: Asked, material: MaterialFacts): BillProblemCode | undefined {
  if (material.form === 'roll') return offTheBolt(row, material) ? 'blank-too-wide' : undefined;
  if (material.form !== 'sheet' && material.form !== 'strip') return undefined;
  const piece = material.form === 'sheet' ? row.blank : pieceOfStrip(row);
  if (piece === undefined || material.packs.length === 0) return undefined;
  const taken = material.packs.some((pack) => piecesFromPack(piece, pack, material.turns) > 0);
  if (taken) return undefined;
  return material.form === 'sheet' ? 'blank-too-large' : 'piece-too-long';
}

function offTheBolt({ blank }: Asked, { properties, turns }: MaterialFacts): boolean {
  if (blank === undefined || properties.width === undefined) return false;
  const turned = turns ? timesInto(blank.length, properties.width) : 0;
  return timesInto(blank.width, properties.width) + turned === 0;
}

interface Worked {
  readonly need: LineNeed;
  readonly buying: Purchase | undefined;
  readonly cut: Laid | undefined;
  readonly complete: boolean;
}

const nothingBought: Purchase = { packs: [], cost: 0, value: 0, amount: 0 };

const rowsOnDemand = onDemand('rows');
const stepsOnDemand = onDemand('steps');

function lineOf(input: LineInput, worked: Worked): BillLine {
  const { need, buying, cut, complete } = worked;
  const { material, asked } = input;
  const measured = (base: number): Amount => amountOf(base, material.measure, material.unit);
  const { packs, cost: buy, value, amount } = buying ?? nothingBought;
  const used = amount > 0 ? roundedMinor(value * Math.min(1, need.base / amount)) : 0;
  const charge = material.charges === 'used' ? used : value;
  const counted = material.measure === 'count' || buying === undefined;
  const tight =
    counted || wholeStock(material, cut) || isFinelyCut(packs, need.base, amount)
      ? undefined
      : tightness(need.base, amount);
  // What is kept for the words is what they say, not the line before, which would keep its own.
  const told = { need, buying, cut };
  const line: Omit<BillLine, 'steps' | 'rows'> = {
    id: material.id,
    name: material.name,
    source: { table: 'material', id: material.id },
    group: asked[0]?.group ?? 'shop',
    need: measured(need.base),
    packs,
    buy,
    charge,
    charges: material.charges,
    left: measured(Math.max(0, amount - need.base)),
    leftValue: value - used,
    approximate: need.approximate,
    ...(cut === undefined ? {} : { laid: cut }),
    ...(tight === undefined ? {} : { tight }),
    asked,
    complete,
  };
  const rows = whenAsked(() => sharedRows(material, asked, { charge, buy }));
  // Words for a person to read: most edits are past before anybody asks.
  const words = whenAsked(() => lineSteps(input, told, charge));
  return stepsOnDemand(rowsOnDemand(line, rows), words);
}

// A layout shows that everything comes out of the stock, however close its area is to the need.
function wholeStock(material: MaterialFacts, cut: Laid | undefined): boolean {
  return cut !== undefined && material.form !== 'roll';
}

// Goods cut in steps that are small against the need are never far over it, and one step more is
// soon asked for.
function isFinelyCut(packs: readonly BoughtPack[], need: number, amount: number): boolean {
  const [only] = packs;
  return packs.length === 1 && only?.cut !== undefined && only.count >= 10 && amount >= need;
}

function lineSteps(
  input: LineInput,
  { need, buying, cut }: Pick<Worked, 'need' | 'buying' | 'cut'>,
  charge: Minor,
): readonly Step[] {
  const { material, settings } = input;
  const text = (base: number): string =>
    amountText(amountOf(base, material.measure, material.unit), settings);
  const laid = cut === undefined ? [] : laidSteps(material, cut, settings);
  const steps: Step[] = [...laid, ...need.steps, { text: `needed: ${text(need.base)}` }];
  if (buying === undefined) return steps;
  const { currency } = settings;
  const packs = buying.packs.map((pack): Step => ({
    text: pricedPackText(pack, { currency, settings }),
    row: { table: 'pack', id: pack.id },
  }));
  steps.push(...packs, {
    text: `bought: ${text(buying.amount)} for ${moneyText(buying.cost, currency)}`,
  });
  steps.push({
    text:
      material.charges === 'packs'
        ? `charged: the packs, ${moneyText(charge, currency)}`
        : `charged: what is used, ${moneyText(charge, currency)}`,
  });
  return steps;
}

function pricedPackText(
  pack: BoughtPack,
  { currency, settings }: { readonly currency: string; readonly settings: UnitSettings },
): string {
  const bought =
    pack.cut === undefined
      ? `${packText(pack, settings)} at ${moneyText(pack.price, currency)}`
      : `${packText(pack, settings)}, cut in steps of ${amountText(pack.holds, settings)}`;
  if (pack.shelf === true) return `${bought}, on the shelf`;
  if (pack.held === undefined) return bought;
  return `${bought}, price frozen${pack.held === '' ? '' : ` on ${pack.held}`}`;
}

import { kindGroups, type KindGroup } from '../book/book.ts';
import type { HeavyAnswers } from '../formula/catalogue.ts';
import type { Problem } from '../problems.ts';
import { sameList } from '../units/same-list.ts';
import { plain } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { Answers, AnsweredRow } from '../workbook/answers.ts';
import { isSameRow } from '../workbook/row-view.ts';
import type { Bill, BillLine, GroupTotal, Minor } from './bill.ts';
import { baseIn, wordIn } from './cells.ts';
import { driverLine, type DriverOutcome, type Held } from './driver-line.ts';
import { openGathering, type Needed } from './gather-needs.ts';
import type { QuickLayouts } from './laid.ts';
import { lockProblem, readLock } from './locks.ts';
import type { MaterialFacts } from './material.ts';
import {
  materialLine,
  type LineBefore,
  type LineInput,
  type LineOutcome,
} from './material-line.ts';
import type { WorkedRow, WorkedRows } from './outcomes.ts';
import { ownLine, type OwnCost } from './own-cost.ts';
import { allPanels } from './panels.ts';
import { openPartTally } from './part-tally.ts';
import { smallOrders } from './small-orders.ts';
import type { BillTables } from './table-changes.ts';

interface KnownDrivers {
  readonly rows: readonly AnsweredRow[] | undefined;
  readonly known: ReadonlyMap<
    AnsweredRow,
    { readonly held: readonly Held[]; readonly outcome: DriverOutcome }
  >;
  readonly outcomes: readonly DriverOutcome[];
}

/** Lines as they were last time, to be taken again where their inputs are the same. */
export interface Lines {
  readonly settings: UnitSettings;
  /** Layouts found at once, kept while the estimate is open. */
  readonly quick: QuickLayouts;
  materials: ReadonlyMap<string, LineBefore>;
  drivers: KnownDrivers;
  own: ReadonlyMap<OwnCost, BillLine>;
  /** What the rows ask of each material. */
  readonly needed: (worked: WorkedRows) => Needed;
  readonly tally: ReturnType<typeof openPartTally>;
}

/** No lines yet. */
export function openLines(settings: UnitSettings): Lines {
  return {
    settings,
    quick: new Map(),
    materials: new Map(),
    drivers: { rows: undefined, known: new Map(), outcomes: [] },
    own: new Map(),
    needed: openGathering(),
    tally: openPartTally(),
  };
}

/** What a bill is assembled from. */
export interface BillInput {
  readonly answers: Answers;
  readonly tables: BillTables;
  readonly facts: ReadonlyMap<string, MaterialFacts>;
  readonly worked: WorkedRows;
  /** Layouts that were worked out elsewhere. */
  readonly heavy: HeavyAnswers | undefined;
}

// A need over the packs by less than this share takes them (common practice, no source); a shop says
// otherwise with the constant pack_slack.
const usualSlack = 0.01;

/** Puts the lines together, groups in bench order, and adds them up. */
export function assembleBill(lines: Lines, input: BillInput): Bill {
  const { answers } = input;
  const { rows } = input.worked;
  const constant = answers.row('constant', 'pack_slack');
  const slack = (constant && baseIn(constant, 'value', plain)) ?? usualSlack;
  const materials = materialLines(lines, input, slack);
  const drivers = driverLines(lines, input);
  const ordered = smallOrders(
    materials.map(({ line }) => line),
    {
      ...input,
      suppliers: input.tables.get('supplier') ?? [],
      drivers: drivers.map(({ line, supplier }) => ({ line, supplier })),
      slack,
      settings: lines.settings,
    },
  );
  const { loose, problems, own } = lines.tally(rows);
  const all = inGroups([
    ...drivers.map(({ line }) => line),
    ...ordered.lines,
    ...ordered.surcharges,
    ...ownLines(lines, own),
  ]);
  const groups = groupTotals(all);
  const incomplete = all.filter(({ complete }) => !complete).length + loose;
  return {
    currency: lines.settings.currency,
    lines: all,
    groups,
    totals: {
      buy: groups.reduce((sum, { buy }) => sum + buy, 0),
      charge: groups.reduce((sum, { charge }) => sum + charge, 0),
      incomplete,
      complete: incomplete === 0,
      panels: panelsMade(input.tables.get('panel') ?? []),
    },
    waits: materials.flatMap(({ waits }) => waits ?? []),
    problems: [
      ...problems,
      ...materials.flatMap(({ problems }) => problems),
      ...ordered.problems,
      ...drivers.flatMap(({ problems }) => problems),
      ...idleLocks(input, lines.settings),
    ],
  };
}

const panelsOf = new WeakMap<readonly AnsweredRow[], number>();

function panelsMade(panels: readonly AnsweredRow[]): number {
  const known = panelsOf.get(panels);
  if (known !== undefined) return known;
  const whole = panels.filter(({ broken }) => !broken);
  const made = whole.length === 0 ? 1 : whole.reduce((sum, panel) => sum + allPanels(panel), 0);
  panelsOf.set(panels, made);
  return made;
}

const groupPlaces: ReadonlyMap<KindGroup, number> = new Map(
  kindGroups.map((group, place) => [group, place]),
);

function inGroups(lines: readonly BillLine[]): readonly BillLine[] {
  const place = ({ group }: BillLine): number => groupPlaces.get(group) ?? 0;
  return lines.toSorted((one, other) => place(one) - place(other));
}

function groupTotals(lines: readonly BillLine[]): readonly GroupTotal[] {
  const totals = new Map<KindGroup, { group: KindGroup; buy: Minor; charge: Minor }>();
  for (const { group, buy, charge } of lines) {
    const total = totals.get(group) ?? { group, buy: 0, charge: 0 };
    totals.set(group, total);
    total.buy += buy;
    total.charge += charge;
  }
  return [...totals.values()];
}

function materialLines(lines: Lines, input: BillInput, slack: number): readonly LineOutcome[] {
  const { settings } = lines;
  const next = new Map<string, LineBefore>();
  const locks = input.tables.get('lock') ?? [];
  for (const [id, { asked, missing }] of lines.needed(input.worked)) {
    const material = input.facts.get(id);
    if (material === undefined) continue;
    const own = locks.length === 0 ? locks : locks.filter((lock) => isOf(material, lock));
    const line: LineInput = { material, asked, locks: own, missing, slack, settings };
    const before = lines.materials.get(id);
    const usable =
      before !== undefined && isSameInput(before.input, line) && !hasSettled(before, input.heavy);
    const from = { heavy: input.heavy, quick: lines.quick };
    next.set(id, usable ? before : { input: line, outcome: materialLine(line, from, before) });
  }
  lines.materials = next;
  return [...next.values()].map(({ outcome }) => outcome);
}

function isOf({ id, form, packs }: MaterialFacts, lock: AnsweredRow): boolean {
  const stock = wordIn(lock, 'stock');
  return packs.some((pack) => pack.id === stock) || (form === 'roll' && id === stock);
}

/** Locks on stock that nothing of the job is cut from. */
function idleLocks(
  { tables, facts, worked }: BillInput,
  settings: UnitSettings,
): readonly Problem[] {
  const locks = tables.get('lock') ?? [];
  if (locks.length === 0) return [];
  const asked = new Set(
    worked.rows.flatMap(({ outcome }) => outcome.asked.map((one) => one.material)),
  );
  return locks
    .filter((lock) => {
      return ![...facts].some(([id, material]) => asked.has(id) && isOf(material, lock));
    })
    .map((row) =>
      lockProblem({ row, why: readLock(row) === undefined ? 'unread' : 'part' }, settings),
    );
}

// A layout that was looked for has come.
function hasSettled({ outcome }: LineBefore, heavy: HeavyAnswers | undefined): boolean {
  const { waits } = outcome;
  return waits !== undefined && heavy?.answer(waits) !== undefined;
}

function isSameInput(a: LineInput, b: LineInput): boolean {
  return (
    a.material === b.material &&
    a.missing === b.missing &&
    a.slack === b.slack &&
    sameList(a.locks, b.locks) &&
    sameList(a.asked, b.asked)
  );
}

function driverLines(lines: Lines, { tables, worked }: BillInput): readonly DriverOutcome[] {
  const rows = tables.get('driver') ?? [];
  const before = lines.drivers;
  const held = worked.changes?.every(({ before, now }) => before.holds === now.holds) === true;
  if (before.rows === rows && held) return before.outcomes;
  const next = driversHeld(lines, rows, worked.rows);
  const outcomes = [...next.values()].map(({ outcome }) => outcome);
  lines.drivers = { rows, known: next, outcomes };
  return outcomes;
}

function driversHeld(
  { drivers: { known }, settings }: Lines,
  rows: readonly AnsweredRow[],
  worked: readonly WorkedRow[],
): KnownDrivers['known'] {
  const drivers = rows.filter(({ broken }) => !broken);
  const held = new Map<string, Held[]>(drivers.map(({ id }) => [id, []]));
  for (const { row, outcome } of worked) {
    if (outcome.holds === undefined) continue;
    const { driver, count, words } = outcome.holds;
    held.get(driver)?.push({ row, count, words });
  }
  const next = new Map<AnsweredRow, { held: readonly Held[]; outcome: DriverOutcome }>();
  for (const driver of drivers) {
    const own = held.get(driver.id) ?? [];
    const before = known.get(driver);
    const usable =
      before?.held.length === own.length &&
      before.held.every((one, index) => isSameHeld(one, own[index]));
    next.set(driver, usable ? before : { held: own, outcome: driverLine(driver, own, settings) });
  }
  return next;
}

function isSameHeld(a: Held, b: Held | undefined): boolean {
  return b !== undefined && isSameRow(a.row, b.row) && a.count === b.count && a.words === b.words;
}

function ownLines(lines: Lines, costs: readonly OwnCost[]): readonly BillLine[] {
  const next = new Map<OwnCost, BillLine>();
  for (const cost of costs) next.set(cost, lines.own.get(cost) ?? ownLine(cost));
  lines.own = next;
  return [...next.values()];
}

import type { Answers } from '../../workbook/answers.ts';
import type { Bill, Minor } from '../bill.ts';
import { nameOf } from '../cells.ts';
import { splitMoney } from '../money.ts';
import { allPanels, openPanelFinder } from '../panels.ts';
import type { Work } from '../work/task.ts';
import { taskKey } from './labour.ts';
import type { Price } from './price.ts';

/** The share of one panel row (a pair is one) in the price before tax. */
export interface PanelPrice {
  readonly id: string;
  readonly name: string;
  /** Panels it stands for. */
  readonly count: number;
  readonly amount: Minor;
}

/** What the rows of each table are charged, with their draws, by id. */
function chargesByRow({ lines }: Bill): ReadonlyMap<string, ReadonlyMap<string, Minor>> {
  const tables = new Map<string, Map<string, Minor>>();
  for (const { rows } of lines) {
    for (const { table, row, charge } of rows) {
      const sums = tables.get(table) ?? new Map<string, Minor>();
      sums.set(row, (sums.get(row) ?? 0) + charge);
      tables.set(table, sums);
    }
  }
  return tables;
}

// What a row belongs to hangs on its rows alone, so it may be remembered from one price to the next.
const panelsIn = openPanelFinder();

/**
 * The price before tax shared among the panel rows by what their parts and tasks cost, in whole minor
 * units that add up to it. What belongs to no panel, and what is charged on top, follows those shares.
 */
export function pricesByPanel(of: {
  readonly workbook: Answers;
  readonly bill: Bill;
  readonly work: Work;
  readonly price: Price;
}): readonly PanelPrice[] {
  const { workbook, bill, work, price } = of;
  const panels = workbook.rows('panel').filter(({ broken }) => !broken);
  if (panels.length === 0) return [];
  const direct = new Map(panels.map(({ id }) => [id, 0]));
  const panelIn = panelsIn(workbook);
  const add = (table: string, id: string, amount: Minor): void => {
    const panel = panelIn(table, id);
    if (panel !== undefined) direct.set(panel.id, (direct.get(panel.id) ?? 0) + amount);
  };
  for (const [table, sums] of chargesByRow(bill)) {
    for (const [id, charge] of sums) add(table, id, charge);
  }
  for (const task of work.tasks) add('task', task.id, price.labourOf.get(taskKey(task)) ?? 0);
  const shares = panels.map(({ id }) => direct.get(id) ?? 0);
  const even = shares.every((share) => share === 0);
  const amounts = splitMoney(price.totals.price, even ? panels.map(allPanels) : shares);
  return panels.map((panel, index) => ({
    id: panel.id,
    name: nameOf(panel),
    count: allPanels(panel),
    amount: amounts[index] ?? 0,
  }));
}

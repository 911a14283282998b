import {
  bandWords,
  chargeDetail,
  moneyText,
  priceBand,
  priceRows,
  pricesByPanel,
  minutesText,
  type PriceRow,
  type Snapshot,
  type Task,
  type UnitSettings,
} from '../engine/index.ts';
import { inColumns, type TableLine } from './columns.ts';
import { groupLabels } from './group-labels.ts';

const stateNotes: Readonly<Record<Snapshot['price']['state'], string>> = {
  whole: '',
  'materials-only': 'Materials only, no charges yet',
  'no-labour': 'No labour in it yet',
  incomplete: 'The price is incomplete',
};

/** What the price leaves out; empty where it is whole. */
export function stateNote({ price }: Snapshot): string {
  return stateNotes[price.state];
}

/** A share as people read it: `4.8 %`. */
function shareText(share: number): string {
  return `${(Math.round(share * 1000) / 10).toFixed(1)} %`;
}

/** Times in one column: whole minutes. */
function timeText(minutes: number, settings: UnitSettings): string {
  return minutesText(Math.round(minutes), settings);
}

/** `Price 2652.96 USD (2843.86 USD with tax), 26 h 55 min, margin 4.8 %, charge …, buy …`. */
export function priceWords({ price, work, bill, settings }: Snapshot): string {
  const { currency } = bill;
  const { totals } = price;
  const materials = `materials ${moneyText(bill.totals.charge, currency)}, buy ${moneyText(bill.totals.buy, currency)}`;
  if (price.state === 'materials-only') return materials.replace('materials', 'Charge');
  const tax = totals.tax === 0 ? '' : ` (${moneyText(totals.total, currency)} with tax)`;
  return [
    `Price ${moneyText(totals.price, currency)}${tax}`,
    timeText(work.totals.working, settings),
    materials,
    `margin ${shareText(totals.margin)}`,
  ].join(', ');
}

function taskLine(task: Task, snapshot: Snapshot): TableLine {
  const { settings, price, bill } = snapshot;
  const labour = price.labourOf.get(`${task.id}#${String(task.occurrence)}`);
  const steps = task.steps.map(({ text }) => text).filter((text) => !text.startsWith('= '));
  return [
    `  ${task.name}`,
    task.complete ? timeText(task.elapsed, settings) : 'no time',
    labour === undefined || task.waits ? '' : moneyText(labour, bill.currency),
    steps.join(' '),
  ];
}

/** Hours by phase with their tasks; empty where the job has none. */
export function hoursTable(snapshot: Snapshot): string {
  const { work, settings } = snapshot;
  if (work.tasks.length === 0) return '';
  const rows: TableLine[] = [['Work', 'Time', 'Labour', '']];
  for (const { key, working, waiting } of work.phases) {
    const label = Object.entries(groupLabels).find(([group]) => group === key)?.[1] ?? key;
    const waits = waiting === 0 ? '' : `and ${timeText(waiting, settings)} waiting`;
    rows.push('', [label, timeText(working, settings), '', waits]);
    for (const task of work.tasks) if (task.phase === key) rows.push(taskLine(task, snapshot));
  }
  const { totals } = work;
  const waits = totals.waiting === 0 ? '' : `and ${timeText(totals.waiting, settings)} waiting`;
  rows.push('', ['Total', timeText(totals.working, settings), '', waits]);
  const rates = totals.uncalibrated;
  const note =
    rates === 0
      ? ''
      : `${String(rates)} ${rates === 1 ? 'task goes' : 'tasks go'} by rates that are invented: time your own.\n`;
  return inColumns(rows, [1, 2]) + note;
}

const sumLabels = { price: 'Price before tax', total: 'Total', balance: 'Balance' } as const;

function priceLine(row: PriceRow, currency: string): TableLine {
  const amount = moneyText(row.amount, currency);
  switch (row.sort) {
    case 'materials':
      return [`  ${groupLabels[row.group]}: materials`, amount, ''];
    case 'charge':
    case 'due':
      return [
        `  ${row.charge.name}`,
        row.charge.complete ? amount : 'open',
        row.sort === 'due' ? '' : chargeDetail(row.charge),
      ];
    default:
      return [sumLabels[row.sort], amount, ''];
  }
}

/** `By the ranges given: 412.00 ± 35.00 USD, 9 in 10; hours ± 1 h 52 min.`; empty without ranges. */
function bandLine(snapshot: Snapshot): string {
  const band = priceBand(snapshot);
  if (band === undefined) return '';
  const { price, settings } = snapshot;
  const causes = band.causes.slice(0, 3).map(({ name }) => name);
  const hours = band.minutes === 0 ? '' : `; hours ± ${timeText(band.minutes, settings)}`;
  return `By the ranges given: ${bandWords(band, price)}${hours}; most of it from ${causes.join(', ')}.\n`;
}

/** The price from materials to balance, and what it means; empty where the job has no charges. */
export function priceTable(snapshot: Snapshot): string {
  const { price } = snapshot;
  if (price.charges.length === 0) return '';
  const { currency, totals, ways } = price;
  const money = (minor: number): string => moneyText(minor, currency);
  const panels = pricesByPanel(snapshot).map(({ name, count, amount }): TableLine => {
    const each = count === 1 ? '' : `${money(Math.round(amount / count))} each`;
    return [`  ${name}`, money(amount), each];
  });
  const rows: TableLine[] = [
    ['Price', '', ''],
    ...priceRows(price).map((row) => priceLine(row, currency)),
    ['Earned over the cost', money(totals.earned), `${shareText(totals.margin)} of the price`],
    ['By whole packs', money(ways.packs), ''],
    ['By what is used', money(ways.used), ''],
    ...(panels.length === 0 ? [] : [['By panel', '', ''], ...panels]),
  ];
  return inColumns(rows, [1]) + bandLine(snapshot);
}

import {
  amountText,
  cautionsFirst,
  boughtNotes,
  jobCautions,
  moneyText,
  packText,
  type Bill,
  type BillLine,
  type JobCaution,
  type UnitSettings,
  priceDrift,
} from '../engine/index.ts';
import { inColumns, type TableLine } from './columns.ts';
import { groupLabels } from './group-labels.ts';
import type { JobProblem, ReadJob } from './job.ts';
import { hoursTable, priceTable, priceWords, stateNote } from './price-report.ts';

/** "2 lines without a price or an amount", or empty where the total is whole. */
export function incompleteText({ totals }: Bill): string {
  if (totals.complete) return '';
  const lines = totals.incomplete === 1 ? '1 line' : `${String(totals.incomplete)} lines`;
  return `incomplete: ${lines} without a price or an amount`;
}

/** The headline of a job: what it is, what it costs, and how far that can be relied on. */
function headline({ snapshot }: ReadJob): string {
  const { bill, shown, book } = snapshot;
  const text = (key: string): string => shown.head.get(key)?.text ?? '';
  const who = [text('client'), text('vehicle'), text('date')].filter((word) => word !== '');
  const panels = bill.totals.panels === 1 ? '1 panel' : `${String(bill.totals.panels)} panels`;
  const notes = [
    stateNote(snapshot),
    incompleteText(bill),
    book.origin === 'demo' ? 'prices are those of the built-in demo book' : '',
  ].filter((note) => note !== '');
  const lines = [
    text('title') === '' ? 'Untitled job' : text('title'),
    ...(who.length === 0 ? [] : [who.join(', ')]),
    `${priceWords(snapshot)}, ${panels}`,
    ...(notes.length === 0 ? [] : [notes.join('; ')]),
  ];
  return lines.map((line) => `${line}\n`).join('');
}

function packsText(line: BillLine, settings: UnitSettings): string {
  return line.packs.map((pack) => packText(pack, settings)).join(' + ');
}

function noteOf(line: BillLine): string {
  const open = line.complete ? '' : 'incomplete';
  return [open, line.tight ?? '', boughtNotes(line)].filter((note) => note !== '').join(', ');
}

/** Cells of one line: name, need, what is bought, its cost, the charge, what is left, a note. */
export function lineCells(line: BillLine, bill: Bill, settings: UnitSettings): readonly string[] {
  const need = line.need === undefined ? '' : amountText(line.need, settings);
  const left =
    line.left === undefined || line.left.base === 0 ? '' : amountText(line.left, settings);
  return [
    `  ${line.name}`,
    line.approximate && !need.startsWith('≈') ? `≈ ${need}` : need,
    packsText(line, settings),
    moneyText(line.buy, bill.currency),
    moneyText(line.charge, bill.currency),
    left,
    noteOf(line),
  ];
}

export const lineHeader: readonly string[] = [
  'Material',
  'Need',
  'Packs',
  'Buy',
  'Charge',
  'Left over',
  '',
];
export const moneyColumns: readonly number[] = [1, 3, 4, 5];

/** The bill group after group, with totals; `under` adds lines below each line of the bill. */
export function billTable(
  bill: Bill,
  settings: UnitSettings,
  under: (line: BillLine) => readonly TableLine[] = () => [],
): string {
  const rows: TableLine[] = [lineHeader];
  for (const { group, buy, charge } of bill.groups) {
    rows.push('', [
      groupLabels[group],
      '',
      '',
      moneyText(buy, bill.currency),
      moneyText(charge, bill.currency),
      '',
      '',
    ]);
    for (const line of bill.lines) {
      if (line.group === group) rows.push(lineCells(line, bill, settings), ...under(line));
    }
  }
  const { totals, currency } = bill;
  rows.push('', [
    'Total',
    '',
    '',
    moneyText(totals.buy, currency),
    moneyText(totals.charge, currency),
    '',
    incompleteText(bill),
  ]);
  return inColumns(rows, moneyColumns);
}

/** `jobs/front.paneljob:12: message [code]`; a line is said once, however many cells it stands for. */
export function problemLines(file: string, problems: readonly JobProblem[]): string {
  const lines = problems.map(({ line, message, severity, code }) => {
    const place = line === 0 ? file : `${file}:${String(line)}`;
    const weight = severity === 'error' ? '' : `${severity}: `;
    return `${place}: ${weight}${message} [${code}]\n`;
  });
  return [...new Set(lines)].join('');
}

/** A line for each caution of the job; limits with their sources are in the JSON. */
function cautionLines(cautions: readonly JobCaution[]): string {
  if (cautions.length === 0) return '';
  const lines = cautions.map(({ hazard }) => `  ${hazard.title}: ${hazard.text}\n`);
  return `Cautions. ${cautionsFirst}\n${lines.join('')}`;
}

/** The report of `estimate`: headline, bill, hours, price, problems, cautions. */
export function estimateReport(job: ReadJob): string {
  const { bill, settings } = job.snapshot;
  const parts = [headline(job)];
  if (bill.lines.length > 0) parts.push(billTable(bill, settings));
  parts.push(...[hoursTable(job.snapshot), priceTable(job.snapshot)].filter((one) => one !== ''));
  if (job.problems.length > 0) parts.push(problemLines(job.file, job.problems));
  const cautions = cautionLines(jobCautions(job.snapshot));
  if (cautions !== '') parts.push(cautions);
  return parts.join('\n');
}

/** What frozen prices come to against today’s; empty for a job that holds none. */
function driftLine(job: ReadJob): string {
  const session = job.again();
  const drift = priceDrift(session.snapshot(), session.whatIf);
  if (drift === undefined) return '';
  const { currency } = job.snapshot.bill;
  const since = drift.since.length === 0 ? '' : ` on ${drift.since.join(', ')}`;
  const [frozen, today] = [moneyText(drift.frozen, currency), moneyText(drift.today, currency)];
  return `${String(drift.held)} prices frozen${since}: materials in the price ${frozen}; ${today} at today’s prices.\n`;
}

/** The report of `bom`: the bill with the rows that need each material. */
export function billReport(job: ReadJob): string {
  const { bill, settings } = job.snapshot;
  const table = billTable(bill, settings, (line) =>
    line.rows.map((row) => [
      `    ${row.row}${row.draw === '' ? '' : ` (${row.draw})`}`,
      amountText(row.need, settings),
      '',
      '',
      moneyText(row.charge, bill.currency),
      '',
      '',
    ]),
  );
  return `${table}${driftLine(job)}`;
}

import { numberOf, packText } from '../estimate/amount.ts';
import type { Amount, Bill, BillLine, BoughtPack } from '../estimate/bill.ts';
import { boughtNotes } from '../estimate/held-price.ts';
import { moneyNumber, moneyText } from '../estimate/money.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { withDecimals } from '../units/show-number.ts';

const header = [
  'Group',
  'Id',
  'Name',
  'Need',
  'Need unit',
  'Packs',
  'Buy',
  'Charge',
  'Left over',
  'Left over unit',
  'Left over value',
  'Currency',
  'Charged',
  'Note',
  'Complete',
] as const;

const groupWords: Readonly<Record<BillLine['group'], string>> = {
  structure: 'Structure',
  skin: 'Skin',
  finish: 'Finish',
  drivers: 'Drivers and wiring',
  shop: 'Shop',
};

/**
 * A text cell. A spreadsheet would run what begins with one of these signs as a formula; an
 * apostrophe before it makes it a text.
 */
function textCell(text: string): string {
  const plain = /^[\s]*[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replace(/"/g, '""')}"` : plain;
}

function amountCells(amount: Amount | undefined, settings: UnitSettings): readonly string[] {
  if (amount === undefined) return ['', ''];
  return [withDecimals(numberOf(amount, settings), 6), textCell(amount.unit)];
}

function boughtText(pack: BoughtPack, currency: string, settings: UnitSettings): string {
  const words = packText(pack, settings);
  return pack.cut === undefined ? `${words} at ${moneyText(pack.price, currency)}` : words;
}

function noteOf(line: BillLine): string {
  const notes = [line.approximate ? 'layout approximate' : '', line.tight ?? '', boughtNotes(line)];
  return notes.filter((note) => note !== '').join('; ');
}

function lineCells(line: BillLine, currency: string, settings: UnitSettings): readonly string[] {
  const packs = line.packs.map((pack) => boughtText(pack, currency, settings)).join(' + ');
  return [
    groupWords[line.group],
    textCell(line.id),
    textCell(line.name),
    ...amountCells(line.need, settings),
    textCell(packs),
    moneyNumber(line.buy, currency),
    moneyNumber(line.charge, currency),
    ...amountCells(line.left, settings),
    moneyNumber(line.leftValue, currency),
    currency,
    line.charges === 'packs' ? 'packs' : 'what is used',
    textCell(noteOf(line)),
    line.complete ? 'yes' : 'no',
  ];
}

function totalCells({ totals, currency, lines }: Bill): readonly string[] {
  const left = lines.reduce((sum, { leftValue }) => sum + leftValue, 0);
  const open = totals.incomplete;
  const note = totals.complete ? '' : `${String(open)} ${open === 1 ? 'line' : 'lines'} incomplete`;
  return [
    'Total',
    '',
    textCell('Materials only, no labour'),
    '',
    '',
    '',
    moneyNumber(totals.buy, currency),
    moneyNumber(totals.charge, currency),
    '',
    '',
    moneyNumber(left, currency),
    currency,
    '',
    note,
    totals.complete ? 'yes' : 'no',
  ];
}

/**
 * The bill of materials as comma-separated values (RFC 4180: CRLF, a header, quotes doubled):
 * amounts as a plain number with its unit beside it, money in units of the currency, the total last.
 */
export function billCsv(bill: Bill, settings: UnitSettings): string {
  const rows = [
    header,
    ...bill.lines.map((line) => lineCells(line, bill.currency, settings)),
    totalCells(bill),
  ];
  return rows.map((cells) => `${cells.join(',')}\r\n`).join('');
}

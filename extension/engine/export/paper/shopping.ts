import { amountText, packText } from '../../estimate/amount.ts';
import type { BillLine } from '../../estimate/bill.ts';
import { wordIn } from '../../estimate/cells.ts';
import { boughtNotes } from '../../estimate/held-price.ts';
import { moneyText } from '../../estimate/money.ts';
import { section, table, tag, tickBox, type Content } from './html.ts';
import {
  paperContent,
  type PaperContent,
  usualFacts,
  type PaperGround,
  type PaperSource,
} from './paper.ts';
import { groupWords } from './words.ts';

function headingOf(line: BillLine, { workbook }: PaperGround): string {
  const row =
    line.source.table === 'material' ? workbook.row('material', line.source.id) : undefined;
  const said = row === undefined ? '' : wordIn(row, 'group');
  return said === '' ? groupWords[line.group] : said;
}

function boughtText(line: BillLine, { settings }: PaperGround): string {
  if (line.packs.length > 0) return line.packs.map((pack) => packText(pack, settings)).join(' + ');
  return line.need === undefined ? '' : amountText(line.need, settings);
}

function notes(line: BillLine): string {
  const open = line.complete ? '' : 'amount or price missing';
  return [open, line.tight ?? '', boughtNotes(line)].filter((note) => note !== '').join('; ');
}

function lineRow(line: BillLine, ground: PaperGround): readonly Content[] {
  const need = line.need === undefined ? '' : amountText(line.need, ground.settings);
  const note = notes(line);
  const name = note === '' ? line.name : [line.name, tag('div', { class: 'small' }, note)];
  return [tickBox, name, boughtText(line, ground), need, moneyText(line.buy, ground.bill.currency)];
}

/** Lines by the heading of their supplier; what costs nothing and is bought by nobody stands apart. */
function headings(ground: PaperGround): ReadonlyMap<string, readonly BillLine[]> {
  const found = new Map<string, BillLine[]>();
  for (const line of ground.bill.lines) {
    const brought = line.source.table === 'driver' && line.buy === 0;
    const heading = brought ? 'Brought by the client, or in the car' : headingOf(line, ground);
    const known = found.get(heading);
    if (known === undefined) found.set(heading, [line]);
    else known.push(line);
  }
  return found;
}

/** The shopping list: what to buy, by supplier's heading, in the packs it is sold in. */
export function shoppingPaper(ground: PaperGround, source: PaperSource = {}): PaperContent {
  const { bill } = ground;
  const rows = [...headings(ground)].flatMap(
    ([heading, lines]): readonly (readonly Content[])[] => [
      [heading],
      ...lines.map((line) => lineRow(line, ground)),
    ],
  );
  const total = moneyText(bill.totals.buy, bill.currency);
  const open =
    bill.totals.incomplete === 0
      ? ''
      : `${String(bill.totals.incomplete)} of them lack an amount or a price, and are not in the total.`;
  return paperContent(
    'Shopping list',
    { ground, source, facts: [...usualFacts(ground), ['To buy', total]] },
    section(
      'What to buy',
      table(['', 'Material', 'Buy', 'Needed', 'About'], ['c', '', 'w', 'n', 'n'], rows),
      tag('p', {}, `Together ${total}. ${open}`),
    ),
  );
}

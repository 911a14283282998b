import { amountText, packText } from '../../estimate/amount.ts';
import type { BillLine } from '../../estimate/bill.ts';
import { nameOf, wordIn } from '../../estimate/cells.ts';
import { boughtNotes } from '../../estimate/held-price.ts';
import { moneyText } from '../../estimate/money.ts';
import { section, table, tag, tickBox, type ColumnLook, type Content } from './html.ts';
import {
  paperContent,
  type PaperContent,
  usualFacts,
  type PaperGround,
  type PaperSource,
} from './paper.ts';
import { groupWords } from './words.ts';
import { packsApart } from '../../estimate/shelf-packs.ts';

function headingOf(line: BillLine, { workbook }: PaperGround): string {
  const { table: from, id } = line.source;
  const row = from === 'material' || from === 'driver' ? workbook.row(from, id) : undefined;
  const of = from === 'supplier' ? id : row && wordIn(row, 'supplier');
  const supplier = of === undefined ? undefined : workbook.row('supplier', of);
  if (supplier !== undefined) return nameOf(supplier);
  const said = row === undefined ? '' : wordIn(row, 'group');
  return said === '' ? groupWords[line.group] : said;
}

/** Packs that are bought, and those that stand on the shelf already. */
function packsOf(
  line: BillLine,
  settings: PaperGround['settings'],
): { readonly bought: string; readonly shelf: string } {
  const { bought, shelf } = packsApart(line);
  const text = (packs: typeof bought): string =>
    packs.map((pack) => packText({ ...pack, shelf: false }, settings)).join(' + ');
  return { bought: text(bought), shelf: text(shelf) };
}

function notes(line: BillLine): string {
  const open = line.complete ? '' : 'amount or price missing';
  const bought = { ...line, packs: packsApart(line).bought };
  return [open, line.tight ?? '', boughtNotes(bought)].filter((note) => note !== '').join('; ');
}

function hasShelf({ bill }: PaperGround): boolean {
  return bill.lines.some((line) => packsApart(line).shelf.length > 0);
}

function lineRow(line: BillLine, ground: PaperGround): readonly Content[] {
  const { settings, bill } = ground;
  const need = line.need === undefined ? '' : amountText(line.need, settings);
  const note = notes(line);
  const name = note === '' ? line.name : [line.name, tag('div', { class: 'small' }, note)];
  const { bought, shelf } = packsOf(line, settings);
  const buy = line.packs.length === 0 ? need : bought || 'nothing';
  const stock = hasShelf(ground) ? [shelf] : [];
  return [tickBox, name, need, ...stock, buy, moneyText(line.buy, bill.currency)];
}

/** What nobody has to go for stands under a heading of its own. */
function specialHeading(line: BillLine): string {
  if (line.source.table === 'driver' && line.buy === 0)
    return 'Brought by the client, or in the car';
  const shelved = line.packs.length > 0 && line.packs.every(({ shelf }) => shelf === true);
  return shelved ? 'On the shelf: nothing to buy' : '';
}

/** Lines by the heading of their supplier; those with nothing to buy come last. */
function headings(ground: PaperGround): ReadonlyMap<string, readonly BillLine[]> {
  const found = new Map<string, BillLine[]>();
  const special = (line: BillLine): boolean => specialHeading(line) !== '';
  const lines = [
    ...ground.bill.lines.filter((line) => !special(line)),
    ...ground.bill.lines.filter(special),
  ];
  for (const line of lines) {
    const heading = specialHeading(line) || headingOf(line, ground);
    const known = found.get(heading);
    if (known === undefined) found.set(heading, [line]);
    else known.push(line);
  }
  return found;
}

/** The money of one supplier's lines, beside its heading. */
function headingText(heading: string, lines: readonly BillLine[], { bill }: PaperGround): string {
  const sum = lines.reduce((total, { buy }) => total + buy, 0);
  return sum === 0 ? heading : `${heading}: ${moneyText(sum, bill.currency)}`;
}

/**
 * The shopping list: what to buy, by supplier's heading, in the packs it is sold in. What the job takes
 * off the shelf is named beside it and not bought.
 */
export function shoppingPaper(ground: PaperGround, source: PaperSource = {}): PaperContent {
  const { bill } = ground;
  const rows = [...headings(ground)].flatMap(
    ([heading, lines]): readonly (readonly Content[])[] => [
      [headingText(heading, lines, ground)],
      ...lines.map((line) => lineRow(line, ground)),
    ],
  );
  const stock = hasShelf(ground) ? ['From the shelf'] : [];
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
      table(
        ['', 'Material', 'Needed', ...stock, 'Buy', 'About'],
        ['c', '', 'n', ...stock.map((): ColumnLook => 'w'), 'w', 'n'],
        rows,
      ),
      tag('p', {}, `Together ${total}. ${open}`),
    ),
  );
}

import type { Problem } from '../problems.ts';
import { percentChangeText } from '../units/percent-text.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { billProblem } from './bill-problems.ts';
import type { BillLine } from './bill.ts';
import { placeOf, quantityIn, wordIn } from './cells.ts';
import { moneyText } from './money.ts';
import { readPack, type PackContext, type PackFacts } from './pack.ts';
import { packsApart } from './shelf-packs.ts';

interface HeldReading {
  readonly pack?: PackFacts;
  readonly problems: readonly Problem[];
}

function isFilled(row: AnsweredRow, column: string): boolean {
  return quantityIn(row, column).state !== 'blank';
}

// The lower price for a number of packs is held with it, or is not there: the book’s is of today.
function withPrice(pack: AnsweredRow, held: AnsweredRow, column: string): AnsweredRow {
  const own = new Set([column, 'from', 'price_from']);
  return { ...pack, cell: (key) => (own.has(key) ? held.cell(key) : pack.cell(key)) };
}

function sinceText(date: string): string {
  return date === '' ? '' : ` since ${date}`;
}

function drift(now: PackFacts, held: PackFacts, at: HeldAt): readonly Problem[] {
  if (now.price === held.price || held.price <= 0) return [];
  const { currency } = at.context.settings;
  const details = {
    pack: at.pack.id,
    material: at.context.name,
    held: moneyText(held.price, currency),
    since: sinceText(held.held ?? ''),
    now: moneyText(now.price, currency),
    change: percentChangeText(now.price / held.price - 1),
  };
  const place = placeOf(at.price, at.column);
  return [billProblem('price-drifted', details, { severity: 'note', place })];
}

interface HeldAt {
  readonly pack: AnsweredRow;
  readonly price: AnsweredRow;
  readonly column: 'price' | 'rate';
  readonly context: PackContext;
}

function twice(prices: readonly AnsweredRow[], pack: AnsweredRow): readonly Problem[] {
  const [first, ...more] = prices;
  return more.map((row) =>
    billProblem(
      'price-held-twice',
      { pack: pack.id, first: first?.id ?? '', row: row.id },
      { severity: 'warning', place: placeOf(row, 'pack') },
    ),
  );
}

/**
 * Reads a pack at the price that the job holds for it, where it holds one: a quote stands at the
 * prices of its day. The book's own price of today is told beside it as a note.
 */
export function readHeldPack(
  pack: AnsweredRow,
  prices: readonly AnsweredRow[],
  context: PackContext,
): HeldReading {
  const today = readPack(pack, context);
  const own = prices.filter((price) => !price.broken && wordIn(price, 'pack') === pack.id);
  const [price] = own;
  const problems = today.problem === undefined ? [] : [today.problem];
  if (price === undefined) return { ...today, problems };
  const column = isFilled(pack, 'rate') ? 'rate' : 'price';
  const at: HeldAt = { pack, price, column, context };
  const again = twice(own, pack);
  if (!isFilled(price, column)) return { ...today, problems: [...problems, ...again, unfit(at)] };
  const read = readPack(withPrice(pack, price, column), context);
  if (read.pack === undefined) {
    const told =
      read.problem === undefined ? [] : [{ ...read.problem, place: placeOf(price, column) }];
    return { ...today, problems: [...problems, ...again, ...told] };
  }
  const held = { ...read.pack, held: wordIn(price, 'date') };
  const moved = today.pack === undefined ? [] : drift(today.pack, held, at);
  return { pack: held, problems: [...again, ...moved] };
}

function unfit({ pack, price, column }: HeldAt): Problem {
  const given = column === 'rate' ? 'price' : 'rate';
  const details = { row: price.id, given, pack: pack.id, column };
  return billProblem('price-held-unfitting', details, { place: placeOf(price, column) });
}

/** “frozen on 2026-11-02, 2 from stock”: what is to be said of the packs of a line; else empty. */
export function boughtNotes(line: BillLine): string {
  const dates = line.packs.flatMap(({ held }) => (held === undefined ? [] : [held]));
  const words = [...new Set(dates)].map((date) => (date === '' ? 'frozen' : `frozen on ${date}`));
  const taken = packsApart(line).shelf.reduce((sum, { count }) => sum + count, 0);
  return [...words, ...(taken === 0 ? [] : [`${String(taken)} from stock`])].join(', ');
}

import { kindGroups } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import type { BillLine, Minor, RowNeed } from '../bill.ts';
import { placeOf, wordIn } from '../cells.ts';
import { roundedMinor } from '../money.ts';
import { panelOf } from '../panels.ts';
import { chargeName, wordsOf, type ChargeGround } from './charge-cells.ts';
import { taskKey, type Labour } from './labour.ts';
import { priceProblem } from './price-problems.ts';
import type { MaterialsBy } from './price.ts';
import type { Slice } from './slices.ts';

/** What a share is taken of. */
export interface Base {
  readonly amount: Minor;
  readonly taxed: Minor;
  /** Charges whose amounts are in it. */
  readonly charges: ReadonlySet<string>;
  readonly problems: readonly Problem[];
}

/** The ledger so far, and what single rows come to. */
export interface Ledger extends ChargeGround {
  readonly by: MaterialsBy;
  readonly slices: readonly Slice[];
  readonly labour: Labour;
  /** Somebody reads how charges come about: else no words are made of it. */
  readonly told: boolean;
}

type Chosen = Pick<Slice, 'amount' | 'taxed'> & { readonly charge?: string };

function usedOf(line: BillLine, row: RowNeed): Minor {
  if (line.charges === 'used') return row.charge;
  return line.buy === 0 ? 0 : roundedMinor(((line.buy - line.leftValue) * row.buy) / line.buy);
}

function needMoney(line: BillLine, row: RowNeed, by: MaterialsBy): Minor {
  if (by === 'book') return row.charge;
  return by === 'packs' ? row.buy : usedOf(line, row);
}

function ofRows(ledger: Ledger, takes: (row: RowNeed, line: BillLine) => boolean): Chosen {
  let amount = 0;
  for (const line of ledger.bill.lines) {
    for (const row of line.rows) if (takes(row, line)) amount += needMoney(line, row, ledger.by);
  }
  return { amount, taxed: amount };
}

function ofPanel(panel: AnsweredRow, ledger: Ledger): readonly Chosen[] {
  const { answers } = ledger;
  const has = (table: string, id: string): boolean => {
    const row = answers.row(table, id);
    return row !== undefined && panelOf(row, answers).panel?.id === panel.id;
  };
  const parts = ofRows(ledger, ({ table, row }) => has(table, row));
  const tasks = answers
    .rows('task')
    .filter(({ id }) => has('task', id))
    .map((task) => ledger.labour.byTask.get(taskKey(task)) ?? 0);
  const labour = tasks.reduce((sum, one) => sum + one, 0);
  return [parts, { amount: labour, taxed: taxedLabour(ledger) ? labour : 0 }];
}

function taxedLabour({ slices }: Ledger): boolean {
  return slices.some(({ of, taxed }) => of === 'labour' && taxed > 0);
}

function ofId(word: string, ledger: Ledger): readonly Chosen[] | 'later' | undefined {
  const { answers } = ledger;
  const own = ledger.slices.filter(({ charge }) => charge === word);
  if (own.length > 0) return own;
  if (answers.row('charge', word) !== undefined) return 'later';
  if (answers.row('part', word) !== undefined) {
    return [ofRows(ledger, ({ table, row }) => table === 'part' && row === word)];
  }
  if (answers.row('driver', word) !== undefined) {
    return [ofRows(ledger, (_, { source }) => source.table === 'driver' && source.id === word)];
  }
  const task = answers.row('task', word);
  if (task !== undefined) {
    const amount = ledger.labour.byTask.get(taskKey(task)) ?? 0;
    return [{ amount, taxed: taxedLabour(ledger) ? amount : 0 }];
  }
  const panel = answers.row('panel', word);
  return panel === undefined ? undefined : ofPanel(panel, ledger);
}

function ofWord(word: string, ledger: Ledger): readonly Chosen[] | 'later' | undefined {
  const { slices } = ledger;
  if (word === 'all') return slices.filter(({ of }) => of !== 'tax');
  if (word === 'labour') return slices.filter(({ of }) => of === 'labour');
  if (word === 'materials') return slices.filter(({ of }) => of === 'materials');
  if (kindGroups.some((group) => group === word)) {
    return slices.filter(({ of, group }) => of === 'materials' && group === word);
  }
  return ofId(word, ledger);
}

function problemOf(row: AnsweredRow, word: string, later: boolean, ledger: Ledger): Problem {
  const column = wordIn(row, 'on') === word ? 'on' : 'of';
  const details = { charge: chargeName(row, ledger), word };
  const code = later ? 'charge-of-later' : 'charge-of-unknown';
  return priceProblem(code, details, { severity: 'warning', place: placeOf(row, column) });
}

/**
 * What a charge is a share of: the sum of what its words name in the ledger so far. What is not marked
 * up stays out where `markedUp` is asked for. A word that names nothing is told and counts for nothing.
 */
export function baseOf(
  row: AnsweredRow,
  ledger: Ledger,
  only: { readonly markedUp: boolean },
): Base {
  const wanted = only.markedUp
    ? { ...ledger, slices: ledger.slices.filter(({ markedUp }) => markedUp) }
    : ledger;
  const words = wordsOf(row);
  const chosen: Chosen[] = [];
  const problems: Problem[] = [];
  for (const word of words.length === 0 ? ['all'] : words) {
    const found = ofWord(word, wanted);
    if (found !== undefined && found !== 'later') {
      chosen.push(...found.filter((one) => !chosen.includes(one)));
    } else if (!isAbove(row, word, ledger)) {
      // A charge above it that came to nothing has no slice, and is no fault.
      problems.push(problemOf(row, word, found === 'later', ledger));
    }
  }
  return {
    amount: chosen.reduce((sum, { amount }) => sum + amount, 0),
    taxed: chosen.reduce((sum, { taxed }) => sum + taxed, 0),
    charges: new Set(chosen.flatMap(({ charge }) => (charge === undefined ? [] : [charge]))),
    problems,
  };
}

function isAbove(row: AnsweredRow, word: string, { answers }: Ledger): boolean {
  const ids = answers.rows('charge').map(({ id }) => id);
  const at = ids.indexOf(word);
  return at >= 0 && at < ids.indexOf(row.id);
}

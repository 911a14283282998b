import type { KindGroup } from '../../book/book.ts';
import type { AnsweredRow, Answers } from '../../workbook/answers.ts';
import type { Bill, BillLine, Minor } from '../bill.ts';
import { splitMoney } from '../money.ts';
import type { MaterialsBy } from './price.ts';

/** Money of one sort: what charges are worked from. */
export interface Slice {
  readonly of: 'materials' | 'labour' | 'charge' | 'tax';
  readonly group?: KindGroup;
  /** Id of the charge that brought it. */
  readonly charge?: string;
  readonly amount: Minor;
  /** Part of it that tax is charged on. */
  readonly taxed: Minor;
  /** True where a markup may go on it. */
  readonly markedUp: boolean;
}

/** Money of a line that shares two flags. */
interface Part {
  readonly taxed: boolean;
  readonly markedUp: boolean;
  readonly amount: Readonly<Record<MaterialsBy, Minor>>;
}

/** Slices of the bill, with what was worked out before for lines that did not change. */
export interface SliceMaker {
  readonly slices: (bill: Bill, answers: Answers, by: MaterialsBy) => readonly Slice[];
}

const flags = [
  { taxed: true, markedUp: true },
  { taxed: true, markedUp: false },
  { taxed: false, markedUp: true },
  { taxed: false, markedUp: false },
] as const;

function isNo(row: AnsweredRow, column: string): boolean {
  const { result } = row.cell(column);
  if (result.state !== 'value') return false;
  const { value } = result;
  if (value.kind === 'yes-no') return !value.yes;
  return value.kind === 'text' && value.text === 'no';
}

/** Place in `flags` of a row that says no to tax or markup; rows that say nothing have none. */
type Said = ReadonlyMap<string, number>;

function saidBy(row: AnsweredRow): number {
  return (isNo(row, 'taxed') ? 2 : 0) + (isNo(row, 'marked_up') ? 1 : 0);
}

/** Keeps what each part says of tax and markup for as long as its row stays the same. */
function openSaid(): (answers: Answers) => Said {
  const known = new WeakMap<AnsweredRow, number>();
  let rows: readonly AnsweredRow[] | undefined;
  let said: Said = new Map();
  return (answers) => {
    const now = answers.rows('part');
    if (now === rows) return said;
    rows = now;
    const found = new Map<string, number>();
    for (const row of now) {
      let place = known.get(row);
      if (place === undefined) known.set(row, (place = saidBy(row)));
      if (place > 0) found.set(row.id, place);
    }
    said = found;
    return said;
  };
}

function amounts(line: BillLine): Readonly<Record<MaterialsBy, Minor>> {
  return { book: line.charge, packs: line.buy, used: line.buy - line.leftValue };
}

/** Money of a line by the flags of its rows; whole minor units that add up to the line's. */
function partsOf(line: BillLine, said: Said): readonly Part[] {
  const places = line.rows.map(({ table, row }) => (table === 'part' ? (said.get(row) ?? 0) : 0));
  const whole = amounts(line);
  const [only = 0] = places;
  if (places.every((place) => place === only)) {
    return [{ ...(flags[only] ?? flags[0]), amount: whole }];
  }
  const shares = flags.map((_, place) =>
    line.rows.reduce((sum, { need }, index) => sum + (places[index] === place ? need.base : 0), 0),
  );
  const split = {
    book: splitMoney(whole.book, shares),
    packs: splitMoney(whole.packs, shares),
    used: splitMoney(whole.used, shares),
  };
  return flags.map((flag, place) => ({
    ...flag,
    amount: {
      book: split.book[place] ?? 0,
      packs: split.packs[place] ?? 0,
      used: split.used[place] ?? 0,
    },
  }));
}

/** Opens a maker of slices that remembers the lines it saw. */
export function openSlices(): SliceMaker {
  const known = new WeakMap<BillLine, readonly Part[]>();
  const saidIn = openSaid();
  return {
    slices: (bill, answers, by) => {
      const said = saidIn(answers);
      const sums = new Map<string, Slice>();
      for (const line of bill.lines) {
        let parts = known.get(line);
        if (parts === undefined) known.set(line, (parts = partsOf(line, said)));
        for (const { taxed, markedUp, amount } of parts) {
          const key = `${line.group} ${String(taxed)} ${String(markedUp)}`;
          const sum = (sums.get(key)?.amount ?? 0) + amount[by];
          const share = { amount: sum, taxed: taxed ? sum : 0, markedUp };
          sums.set(key, { of: 'materials', group: line.group, ...share });
        }
      }
      return [...sums.values()].filter(({ amount }) => amount !== 0);
    },
  };
}

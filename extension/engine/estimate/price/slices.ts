import type { KindGroup } from '../../book/book.ts';
import type { Answers } from '../../workbook/answers.ts';
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

function isNo(answers: Answers, row: { table: string; row: string }, column: string): boolean {
  const result = answers.row(row.table, row.row)?.cell(column).result;
  if (result?.state !== 'value') return false;
  const { value } = result;
  if (value.kind === 'yes-no') return !value.yes;
  return value.kind === 'text' && value.text === 'no';
}

function amounts(line: BillLine): Readonly<Record<MaterialsBy, Minor>> {
  return { book: line.charge, packs: line.buy, used: line.buy - line.leftValue };
}

/** Money of a line by the flags of its rows; whole minor units that add up to the line's. */
function partsOf(line: BillLine, answers: Answers): readonly Part[] {
  const places = line.rows.map((row) => {
    const taxed = !isNo(answers, row, 'taxed');
    const markedUp = !isNo(answers, row, 'marked_up');
    return flags.findIndex((flag) => flag.taxed === taxed && flag.markedUp === markedUp);
  });
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
  return {
    slices: (bill, answers, by) => {
      const sums = new Map<string, Slice>();
      for (const line of bill.lines) {
        let parts = known.get(line);
        if (parts === undefined) known.set(line, (parts = partsOf(line, answers)));
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

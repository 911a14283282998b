import type { KindGroup } from '../../book/book.ts';
import type { AnsweredRow, Answers } from '../../workbook/answers.ts';
import type { Bill, BillLine, Minor } from '../bill.ts';
import { differingPlaces } from '../../units/renewed-list.ts';
import { columnsMoved } from '../cells-read.ts';
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

/** Money of a line that shares two flags; `key` is the same for parts that go into one slice. */
interface Part {
  readonly key: string;
  readonly taxed: boolean;
  readonly markedUp: boolean;
  readonly amount: Readonly<Record<MaterialsBy, Minor>>;
}

/** Slices of the bill, with what was worked out before for lines that did not change. */
export interface SliceMaker {
  readonly slices: (bill: Bill, answers: Answers, by: MaterialsBy) => readonly Slice[];
}

const ways = ['book', 'packs', 'used'] as const;

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

/** Keeps what the parts say of tax and markup: the same map for as long as they say the same. */
function openSaid(): (answers: Answers) => Said {
  let rows: readonly AnsweredRow[] = [];
  let said: Said = new Map();
  return (answers) => {
    const now = answers.rows('part');
    if (columnsMoved(rows, now, ['taxed', 'marked_up'])) {
      const found = new Map<string, number>();
      for (const row of now) {
        const place = saidBy(row);
        if (place > 0) found.set(row.id, place);
      }
      said = found;
    }
    rows = now;
    return said;
  };
}

function amounts(line: BillLine): Readonly<Record<MaterialsBy, Minor>> {
  return { book: line.charge, packs: line.buy, used: line.buy - line.leftValue };
}

type LineRows = BillLine['rows'] | NonNullable<BillLine['asked']>;

/** Place in `flags` of what a row asks for. */
function placeIn(said: Said, { table, row }: LineRows[number]): number {
  return table === 'part' ? (said.get(row) ?? 0) : 0;
}

/** Rows of a line that all have the same flags. */
interface Uniform {
  readonly said: Said;
  readonly rows: LineRows;
  readonly place: number;
}

function placeOfAll(said: Said, rows: LineRows): number | undefined {
  const [first] = rows;
  const place = first === undefined ? 0 : placeIn(said, first);
  return rows.every((row) => placeIn(said, row) === place) ? place : undefined;
}

/** Tells the flags that all rows of a line have; undefined where they differ. */
function openUniform(): (line: BillLine, said: Said) => number | undefined {
  const known = new Map<string, Uniform>();
  return (line, said) => {
    const rows = line.asked ?? line.rows;
    const before = known.get(line.id);
    const places = before?.said === said ? differingPlaces(before.rows, rows) : undefined;
    const others = places?.flatMap((at) => rows[at] ?? []);
    const stands = others?.every((row) => placeIn(said, row) === before?.place) === true;
    const place = stands ? before?.place : placeOfAll(said, rows);
    if (place === undefined) known.delete(line.id);
    else known.set(line.id, { said, rows, place });
    return place;
  };
}

/** Money of a line by the flags of its rows; whole minor units that add up to the line's. */
function partsOf(line: BillLine, said: Said, only: number | undefined): readonly Part[] {
  const whole = amounts(line);
  if (only !== undefined) return [partOf(line, flags[only] ?? flags[0], whole)];
  const rows = line.asked ?? line.rows;
  const places = rows.map((row) => placeIn(said, row));
  const shares = flags.map((_, place) =>
    rows.reduce((sum, { need }, index) => sum + (places[index] === place ? need.base : 0), 0),
  );
  const split = {
    book: splitMoney(whole.book, shares),
    packs: splitMoney(whole.packs, shares),
    used: splitMoney(whole.used, shares),
  };
  return flags.map((flag, place) =>
    partOf(line, flag, {
      book: split.book[place] ?? 0,
      packs: split.packs[place] ?? 0,
      used: split.used[place] ?? 0,
    }),
  );
}

function partOf({ group }: BillLine, flag: (typeof flags)[number], amount: Part['amount']): Part {
  const key = `${group} ${String(flag.taxed)} ${String(flag.markedUp)}`;
  return { key, ...flag, amount };
}

/** What the parts of one slice come to, by each way of counting materials. */
interface Sum {
  readonly line: BillLine;
  readonly part: Part;
  readonly amount: Record<MaterialsBy, Minor>;
}

function sliceOf({ line, part, amount }: Sum, by: MaterialsBy): Slice {
  const { taxed, markedUp } = part;
  const whole = amount[by];
  return {
    of: 'materials',
    group: line.group,
    amount: whole,
    taxed: taxed ? whole : 0,
    markedUp,
  };
}

function addTo(sums: Map<string, Sum>, line: BillLine, part: Part): void {
  const sum = sums.get(part.key);
  if (sum === undefined) sums.set(part.key, { line, part, amount: { ...part.amount } });
  else for (const by of ways) sum.amount[by] += part.amount[by];
}

/** Opens a maker of slices that remembers the lines it saw, and the sums of the bill it saw last. */
export function openSlices(): SliceMaker {
  const known = new WeakMap<BillLine, { readonly said: Said; readonly parts: readonly Part[] }>();
  const saidIn = openSaid();
  const flagsOf = openUniform();
  let last: { readonly bill: Bill; readonly said: Said; readonly sums: readonly Sum[] } | undefined;

  function partsFor(line: BillLine, said: Said): readonly Part[] {
    const found = known.get(line);
    if (found?.said === said) return found.parts;
    const parts = partsOf(line, said, said.size === 0 ? 0 : flagsOf(line, said));
    known.set(line, { said, parts });
    return parts;
  }

  function sumsOf(bill: Bill, said: Said): readonly Sum[] {
    const sums = new Map<string, Sum>();
    for (const line of bill.lines) {
      for (const part of partsFor(line, said)) addTo(sums, line, part);
    }
    return [...sums.values()];
  }

  return {
    slices: (bill, answers, by) => {
      const said = saidIn(answers);
      if (last?.bill !== bill || last.said !== said)
        last = { bill, said, sums: sumsOf(bill, said) };
      return last.sums.map((sum) => sliceOf(sum, by)).filter(({ amount }) => amount !== 0);
    },
  };
}

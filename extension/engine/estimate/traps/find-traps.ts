import type { Book } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import { whenAsked } from '../../steps.ts';
import { sameList } from '../../units/same-list.ts';
import { onDemand } from '../../units/on-demand.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { sameSettings } from '../../units/same-settings.ts';
import type { AnsweredCell, Answers, AnsweredRow } from '../../workbook/answers.ts';
import { isWrittenTheSame } from '../cells-read.ts';
import { openRowKeeper, type KeptRow } from '../kept-rows.ts';
import { changedRows } from '../table-changes.ts';
import { allTraps } from './all-traps.ts';
import { typedFormulas } from './trap-cells.ts';
import type { Trap, TrapView, TypedFormula } from './trap.ts';

/** Keeps the traps that rows of a job step into. */
export interface Traps {
  /** All of them; a row that did not change, nor anything its traps look at, is not asked again. */
  readonly update: (answers: Answers, book: Book, settings: UnitSettings) => readonly Problem[];
}

/** Traps of a table, one bit each. */
type Bits = number;

/** A cell that was read, the traps that read how it is written, and those that read what it comes to. */
class Read {
  readonly cell: AnsweredCell;
  text: Bits;
  result: Bits;

  constructor(cell: AnsweredCell, text: Bits = 0, result: Bits = 0) {
    this.cell = cell;
    this.text = text;
    this.result = result;
  }
}

/** A row that was looked at, as `table/id`, and the traps that did. */
interface Look {
  readonly key: string;
  by: Bits;
}

/** The formulas typed into a row, and the traps that asked for them. */
interface Formulas {
  readonly list: readonly TypedFormula[];
  readonly asked: Bits;
}

interface Kept extends KeptRow {
  readonly row: AnsweredRow;
  readonly reads: readonly Readonly<Read>[];
  readonly formulas: Formulas;
  readonly looks: readonly Readonly<Look>[];
  /** What each trap found, and all of that together. */
  readonly found: readonly (readonly Problem[])[];
  readonly problems: readonly Problem[];
}

const byTable: ReadonlyMap<string, readonly Trap[]> = new Map(
  [...new Set(allTraps.flatMap(({ tables }) => tables))].map((table) => [
    table,
    allTraps.filter(({ tables }) => tables.includes(table)),
  ]),
);

/** Tables that traps look into from other rows. */
const watched = [...new Set([...byTable.keys(), 'material', 'driver', 'constant', 'part'])];

type Lists = ReadonlyMap<string, readonly AnsweredRow[]>;

const none: readonly Problem[] = [];

type Around = Omit<TrapView, 'kind' | 'formulas'>;

const unread: Omit<Kept, 'row'> = {
  ...{ reads: [], formulas: { list: [], asked: 0 }, looks: [], looked: [] },
  ...{ found: [], problems: none },
};

const resultOnDemand = onDemand('result');

/** A row whose cells note which trap reads what of them: most read how a formula is written, and no more. */
function noting(row: AnsweredRow, reads: Read[], bit: () => Bits): AnsweredRow {
  const seen: AnsweredCell[] = [];
  const readOf = (column: string): Read => {
    const known = reads.find(({ cell }) => cell.column === column);
    if (known !== undefined) return known;
    const read = new Read(row.cell(column));
    reads.push(read);
    return read;
  };
  const noted = (read: Read): AnsweredCell => {
    const { column, text, origin, formula, result } = read.cell;
    return resultOnDemand({ column, text, origin, formula }, () => {
      read.result |= bit();
      return result;
    });
  };
  return {
    ...row,
    cell: (column) => {
      const read = readOf(column);
      read.text |= bit();
      const known = seen.find((one) => one.column === column);
      if (known !== undefined) return known;
      const cell = noted(read);
      seen.push(cell);
      return cell;
    },
  };
}

/** The formulas typed into a row. */
type TypedOf = () => readonly TypedFormula[];

/** Asks the traps of `stale`; what the others found of the row before is taken over. */
function work(
  row: AnsweredRow,
  traps: readonly Trap[],
  {
    around,
    before,
    stale,
    typed,
  }: { around: Around; before: Omit<Kept, 'row'>; stale: Bits; typed: TypedOf },
): Kept {
  if (row.broken) return { row, ...unread };
  const reads: Read[] = [];
  for (const { cell, text, result } of before.reads) {
    const left = new Read(row.cell(cell.column), text & ~stale, result & ~stale);
    if ((left.text | left.result) !== 0) reads.push(left);
  }
  const looks: Look[] = [];
  for (const { key, by } of before.looks)
    if ((by & ~stale) !== 0) looks.push({ key, by: by & ~stale });
  // For those that are not asked again they are the same ones.
  let { list } = before.formulas;
  let asked = before.formulas.asked & ~stale;
  let bit: Bits = 0;
  const own = noting(row, reads, () => bit);
  const view: TrapView = {
    ...around,
    formulas: () => {
      asked |= bit;
      return (list = typed());
    },
    row: (table, id) => {
      const key = `${table}/${id}`;
      const known = looks.find((look) => look.key === key);
      if (known === undefined) looks.push({ key, by: bit });
      else known.by |= bit;
      return around.row(table, id);
    },
    kind: (of) => around.book.kinds.get(of.kind),
  };
  const found = traps.map((trap, index) => {
    bit = 1 << index;
    if ((stale & bit) === 0) return before.found[index] ?? none;
    const problems = trap.find(own, view);
    return problems.length === 0 ? none : problems;
  });
  const same = sameList(found, before.found);
  const problems = same ? before.problems : together(found);
  const looked = looks.map(({ key }) => key);
  const formulas = { ...unread.formulas, list, asked };
  const noted = { reads: reads.slice(), formulas, looks: looks.slice(), looked };
  return { ...unread, row, ...noted, found, problems };
}

function together(found: readonly (readonly Problem[])[]): readonly Problem[] {
  return found.every((problems) => problems === none) ? none : found.flat();
}

function isAlike(one: AnsweredRow, other: AnsweredRow): boolean {
  return one.kind === other.kind && one.broken === other.broken && sameList(one.draws, other.draws);
}

function areWrittenTheSame(before: readonly TypedFormula[], now: readonly TypedFormula[]): boolean {
  return (
    before.length === now.length &&
    before.every(({ column, text }, at) => column === now[at]?.column && text === now[at].text)
  );
}

/** Traps that read a cell which says something else, or looked at a row that moved. */
function staleTraps(
  row: AnsweredRow,
  old: Kept,
  { moved, typed }: { readonly moved: ReadonlySet<string>; readonly typed: TypedOf },
): Bits {
  let stale = 0;
  for (const { cell, text, result } of old.reads) {
    const now = row.cell(cell.column);
    if (cell === now) continue;
    if (!isWrittenTheSame(cell, now)) stale |= text;
    if (cell.result !== now.result) stale |= result;
  }
  const { list, asked } = old.formulas;
  if ((asked & ~stale) !== 0 && !areWrittenTheSame(list, typed())) stale |= asked;
  for (const { key, by } of old.looks) if (moved.has(key)) stale |= by;
  return stale;
}

/** Keeps the traps of one table. */
function openTable(traps: readonly Trap[]): (
  rows: readonly AnsweredRow[],
  moved: ReadonlySet<string>,
  around: Around,
) => {
  readonly kept: readonly Kept[];
  /** What is told of it is other than before. */
  readonly others: boolean;
} {
  const keeper = openRowKeeper<Kept>();
  const all = 2 ** traps.length - 1;
  return (rows, moved, around) => {
    let others = 0;
    const { kept, changed } = keeper.update(rows, moved, (row, old) => {
      const alike = old !== undefined && isAlike(row, old.row);
      const typed = whenAsked(() => typedFormulas(row));
      const stale = alike ? staleTraps(row, old, { moved, typed }) : all;
      if (alike && stale === 0) return { ...old, row };
      const fresh = work(row, traps, { around, stale, typed, before: alike ? old : unread });
      if (fresh.problems !== (old?.problems ?? none)) others += 1;
      return fresh;
    });
    return { kept, others: others > 0 || changed === undefined };
  };
}

/** Opens the memory of a job's traps. */
export function openTraps(): Traps {
  let grounds: { readonly book: Book; readonly settings: UnitSettings } | undefined;
  let lists: Lists = new Map();
  let keepers = new Map<string, ReturnType<typeof openTable>>();
  let problems: readonly Problem[] = none;

  function forget(book: Book, settings: UnitSettings): void {
    if (grounds?.book === book && sameSettings(grounds.settings, settings)) return;
    grounds = { book, settings };
    lists = new Map();
    keepers = new Map([...byTable].map(([table, traps]) => [table, openTable(traps)]));
  }

  return {
    update: (answers, book, settings) => {
      forget(book, settings);
      const now: Lists = new Map(watched.map((table) => [table, answers.rows(table)]));
      const { keys, moved } = changedRows(lists, now);
      if (!moved && lists.size > 0) return problems;
      lists = now;
      const around = { row: answers.row, book, settings };
      const found = [...keepers].map(([table, keep]) => keep(now.get(table) ?? [], keys, around));
      if (found.some(({ others }) => others)) problems = found.flatMap(problemsOf);
      return problems;
    },
  };
}

function problemsOf({ kept }: { readonly kept: readonly Kept[] }): readonly Problem[] {
  const found: Problem[] = [];
  for (const { problems } of kept) if (problems.length > 0) found.push(...problems);
  return found;
}

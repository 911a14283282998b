import type { Book } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { sameSettings } from '../../units/same-settings.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
import { notedRow, readsTheSame, type CellsRead } from '../cells-read.ts';
import { openRowKeeper, type KeptRow } from '../kept-rows.ts';
import { changedRows } from '../table-changes.ts';
import { allTraps } from './all-traps.ts';
import type { Trap, TrapView } from './trap.ts';

/** Keeps the traps that rows of a job step into. */
export interface Traps {
  /** All of them; a row that did not change, nor anything its traps look at, is not asked again. */
  readonly update: (answers: Answers, book: Book, settings: UnitSettings) => readonly Problem[];
}

interface Kept extends KeptRow {
  readonly row: AnsweredRow;
  readonly read: CellsRead;
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

function work(row: AnsweredRow, traps: readonly Trap[], around: Omit<TrapView, 'kind'>): Kept {
  const noted = notedRow(row);
  if (row.broken) return { row, read: noted.read, looked: [], problems: none };
  const looked = new Set<string>();
  const view: TrapView = {
    ...around,
    row: (table, id) => {
      looked.add(`${table}/${id}`);
      return around.row(table, id);
    },
    kind: (of) => around.book.kinds.get(of.kind),
  };
  const found = traps.flatMap((trap) => trap.find(noted.row, view));
  const problems = found.length === 0 ? none : found;
  return { row, read: noted.read, looked: [...looked], problems };
}

function isAlike(one: AnsweredRow, other: AnsweredRow): boolean {
  const [draws, others] = [one.draws, other.draws];
  return (
    one.kind === other.kind &&
    one.broken === other.broken &&
    draws.length === others.length &&
    draws.every((draw, index) => draw === others[index])
  );
}

/** Keeps the traps of one table. */
function openTable(traps: readonly Trap[]): (
  rows: readonly AnsweredRow[],
  moved: ReadonlySet<string>,
  around: Omit<TrapView, 'kind'>,
) => {
  readonly kept: readonly Kept[];
  /** What is told of it is other than before. */
  readonly others: boolean;
} {
  const keeper = openRowKeeper<Kept>();
  return (rows, moved, around) => {
    let others = 0;
    const { kept, changed } = keeper.update(rows, moved, (row, old) => {
      const alike = old !== undefined && isAlike(row, old.row) && readsTheSame(old.read, row);
      if (alike && !old.looked.some((key) => moved.has(key))) return { ...old, row };
      const fresh = work(row, traps, around);
      if (fresh.problems !== old?.problems) others += 1;
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

import type { Book } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
import { allTraps } from './all-traps.ts';
import type { Trap, TrapView } from './trap.ts';

/** Keeps the traps that rows of a job step into. */
export interface Traps {
  /** All of them; a row that did not change, nor anything its traps look at, is not asked again. */
  readonly update: (answers: Answers, book: Book, settings: UnitSettings) => readonly Problem[];
}

interface Kept {
  readonly looked: readonly string[];
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

/** Keys of rows that came, went or say something else. */
function changed(before: Lists, now: Lists): ReadonlySet<string> {
  const keys = new Set<string>();
  for (const [table, fresh] of now) {
    const old = before.get(table) ?? [];
    if (old === fresh) continue;
    const kept = new Set(old);
    for (const row of fresh) if (!kept.delete(row)) keys.add(`${table}/${row.id}`);
    for (const row of kept) keys.add(`${table}/${row.id}`);
  }
  return keys;
}

function work(row: AnsweredRow, traps: readonly Trap[], around: Omit<TrapView, 'kind'>): Kept {
  if (row.broken) return { looked: [], problems: [] };
  const looked: string[] = [];
  const view: TrapView = {
    ...around,
    row: (table, id) => {
      looked.push(`${table}/${id}`);
      return around.row(table, id);
    },
    kind: (of) => around.book.kinds.get(of.kind),
  };
  return { problems: traps.flatMap((trap) => trap.find(row, view)), looked };
}

/** Opens the memory of a job's traps. */
export function openTraps(): Traps {
  let grounds: { readonly book: Book; readonly settings: string } | undefined;
  let lists: Lists = new Map();
  let kept = new Map<AnsweredRow, Kept>();
  let problems: readonly Problem[] = [];
  return {
    update: (answers, book, settings) => {
      const words = JSON.stringify(settings);
      if (grounds?.book !== book || grounds.settings !== words) {
        grounds = { book, settings: words };
        lists = new Map();
        kept = new Map();
      }
      const now: Lists = new Map(watched.map((table) => [table, answers.rows(table)]));
      const keys = changed(lists, now);
      if (keys.size === 0 && lists.size > 0) return problems;
      const around = { row: answers.row, book, settings };
      const next = new Map<AnsweredRow, Kept>();
      for (const [table, traps] of byTable) {
        for (const row of now.get(table) ?? []) {
          const before = kept.get(row);
          const stale = before === undefined || before.looked.some((key) => keys.has(key));
          next.set(row, stale ? work(row, traps, around) : before);
        }
      }
      [lists, kept] = [now, next];
      problems = [...next.values()].flatMap((one) => one.problems);
      return problems;
    },
  };
}

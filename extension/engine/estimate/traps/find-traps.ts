import type { Book } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
import { changedRows } from '../table-changes.ts';
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
  let kept: ReadonlyMap<string, readonly Kept[]> = new Map();
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
      const { keys, moved } = changedRows(lists, now);
      if (!moved && lists.size > 0) return problems;
      const around = { row: answers.row, book, settings };
      const hasMoved = (key: string): boolean => keys.has(key);
      const next = new Map<string, readonly Kept[]>();
      for (const [table, traps] of byTable) {
        const before = beforeOf(lists.get(table) ?? [], kept.get(table) ?? []);
        const worked = (now.get(table) ?? []).map((row, index) => {
          const old = before(row, index);
          const stale = old === undefined || old.looked.some(hasMoved);
          return stale ? work(row, traps, around) : old;
        });
        next.set(table, worked);
      }
      [lists, kept] = [now, next];
      problems = [...next.values()].flatMap(problemsOf);
      return problems;
    },
  };
}

function problemsOf(rows: readonly Kept[]): readonly Problem[] {
  const found: Problem[] = [];
  for (const { problems } of rows) if (problems.length > 0) found.push(...problems);
  return found;
}

/** What was kept of a row: at its place where it still stands there, else wherever it was. */
function beforeOf(
  rows: readonly AnsweredRow[],
  kept: readonly Kept[],
): (row: AnsweredRow, index: number) => Kept | undefined {
  let places: ReadonlyMap<AnsweredRow, number> | undefined;
  return (row, index) => {
    if (rows[index] === row) return kept[index];
    places ??= new Map(rows.map((one, place) => [one, place]));
    return kept[places.get(row) ?? -1];
  };
}

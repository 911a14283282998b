import type { Book } from '../book/book.ts';
import type { Catalogue, HeavyQuestion } from '../formula/catalogue.ts';
import { renewedList } from '../units/renewed-list.ts';
import { sameList } from '../units/same-list.ts';
import type { Brought } from './charts.ts';
import type { CellRef, Scope } from '../formula/scope.ts';
import type { ValueType } from '../formula/value.ts';
import { settingsOf } from '../job/settings.ts';
import type { FileReading } from '../job/source.ts';
import { atOnce, type Steps } from '../steps.ts';
import type { AnsweredRow, Answers, CellResult } from './answers.ts';
import { wantedType } from './column-types.ts';
import { settingsKey } from './paths.ts';
import { blankResult, newCell, newRow, refOf, rowKeyOf, type Cell, type Row } from './row.ts';
import { noFindings, scopeOf } from './scope.ts';
import { groundsOf } from './standing.ts';
import { tryCell } from './try-cell.ts';
import { openCore, sameGrounds, type Grounds, type WorkbookCore } from './workbook-core.ts';

/** What an update changed. */
export interface WorkbookChanges {
  /** Rows whose answers are others now, as `table/id#occurrence`. */
  readonly rows: ReadonlySet<string>;
  /** Rows came, went, moved, or changed kind or ground. */
  readonly structure: boolean;
  readonly problemsChanged: boolean;
}

/** A job at work: all its cells with their answers, brought from reading to reading. */
export interface Workbook extends Answers {
  /** Brings the workbook to a new reading and/or book; recalculates only what changed. */
  readonly update: (reading: FileReading, book: Book) => WorkbookChanges;
  /** Takes over answers that have come to heavy questions. */
  readonly settle: () => WorkbookChanges;
  /** Heavy questions of its cells that have no answer yet, each once. */
  readonly wants: () => readonly HeavyQuestion[];
  /** Names and types as a formula in this cell sees them. */
  readonly scopeAt: (place: CellRef) => Scope;
  /** What the cell's column wants of a formula. */
  readonly wantedAt: (place: CellRef) => ValueType | 'any';
  /** Answer of a formula or literal as if it stood in this cell; nothing changes. */
  readonly tryText: (place: CellRef, text: string) => CellResult;
  /** Cells that this one reads. */
  readonly readsOf: (place: CellRef) => readonly CellRef[];
  /** Cells that read this one. */
  readonly readBy: (place: CellRef) => readonly CellRef[];
}

function allRows(core: WorkbookCore): readonly Row[] {
  return [...core.store.tables()].flatMap((table) => core.store.rows(table));
}

/** The row at a place; one that stands alone where there is none. */
function rowAt(place: CellRef, core: WorkbookCore): Row {
  const { table, id, occurrence } = place;
  const key = table === 'job' ? settingsKey : rowKeyOf(table, id, occurrence);
  const known = core.store.byKey(key);
  if (known !== undefined) return known;
  const source = { identity: place, texts: new Map<string, string>(), broken: false };
  return newRow({ table, id, occurrence, source });
}

function cellAt(place: CellRef, core: WorkbookCore): Cell {
  const row = rowAt(place, core);
  return row.cells.get(place.column) ?? newCell(row, place.column, -1);
}

/** Opens a job; what its cells ask for from outside finds them in what is `brought`. */
export function openWorkbook(
  reading: FileReading,
  book: Book,
  catalogue: Catalogue,
  brought: Brought = {},
): Workbook {
  return atOnce(workbookSteps(reading, book, catalogue, brought));
}

/** The same in steps, for a long job. */
export function* workbookSteps(
  reading: FileReading,
  book: Book,
  catalogue: Catalogue,
  brought: Brought,
): Steps<Workbook> {
  const groundsFor = (now: FileReading, then: Book): Grounds => {
    return { reading: now, book: then, catalogue, brought, settings: settingsOf(now.head) };
  };
  let grounds = groundsFor(reading, book);
  let core = openCore(grounds);
  yield* core.updating(reading, book);
  let tables = new Map<string, readonly AnsweredRow[]>();
  let problems = core.problems();

  function reopened(next: Grounds): WorkbookChanges {
    const before = allRows(core).map((row) => row.key);
    core.evaluation.close();
    core = openCore(next);
    core.update(next.reading, next.book);
    const rows = new Set([...before, ...allRows(core).map((row) => row.key)]);
    return { rows, structure: true, problemsChanged: true };
  }

  /** Takes the problems as they are now; tells whether they are others. */
  function newProblems(): boolean {
    const found = core.problems();
    const changed = !sameList(problems, found);
    if (changed) problems = found;
    return changed;
  }

  /** Puts the new answers of these rows in the lists already given out, at the places they have. */
  function renew(keys: ReadonlySet<string>): void {
    const fresh = new Map<string, Map<number, AnsweredRow>>();
    for (const key of keys) {
      const row = core.store.byKey(key);
      if (row === undefined || !tables.has(row.table)) continue;
      const renewed = fresh.get(row.table) ?? new Map<number, AnsweredRow>();
      fresh.set(row.table, renewed.set(row.position, core.answered(row)));
    }
    for (const [table, rows] of fresh)
      tables.set(table, renewedList(tables.get(table) ?? [], rows));
  }

  return {
    rows: (table) => {
      const known = tables.get(table);
      if (known !== undefined) return known;
      const rows = core.store.rows(table).map(core.answered);
      tables.set(table, rows);
      return rows;
    },
    row: (table, id) => {
      const [found] = core.store.named(table, id);
      return found === undefined ? undefined : core.answered(found);
    },
    setting: (key) => core.store.byKey(settingsKey)?.cells.get(key)?.result ?? blankResult,
    under: ({ table, id, occurrence }) => {
      const row = core.store.byKey(rowKeyOf(table, id, occurrence));
      return row === undefined ? [] : groundsOf(row, core.store).map(core.answered);
    },
    get problems() {
      return problems;
    },
    update: (nextReading, nextBook) => {
      const next = groundsFor(nextReading, nextBook);
      const same = sameGrounds(grounds, next);
      grounds = next;
      const changes = same ? core.update(nextReading, nextBook) : reopened(next);
      if (!same || changes.structure) tables = new Map();
      else renew(changes.rows);
      return { ...changes, problemsChanged: newProblems() };
    },
    settle: () => {
      const changes = core.settle();
      renew(changes.rows);
      return { ...changes, problemsChanged: newProblems() };
    },
    wants: () => core.evaluation.wants(),
    scopeAt: (place) => scopeOf(rowAt(place, core), core.around, noFindings()),
    wantedAt: ({ table, column }) => wantedType(core.around.columns.declared(table, column)),
    tryText: (place, text) => tryCell(cellAt(place, core), text, core),
    readsOf: (place) => cellAt(place, core).reads.map(refOf),
    readBy: (place) => [...(cellAt(place, core).readers ?? [])].map(refOf),
  };
}

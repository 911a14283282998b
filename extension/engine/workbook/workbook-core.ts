import type { Book } from '../book/book.ts';
import type { Catalogue } from '../formula/catalogue.ts';
import type { FileReading } from '../job/source.ts';
import type { Problem } from '../problems.ts';
import { atOnce, type Steps } from '../steps.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { answeredRow } from './answered-row.ts';
import type { AnsweredRow, CellResult } from './answers.ts';
import { functionContext, type Brought } from './charts.ts';
import { columnTypes } from './column-types.ts';
import { openEvaluation, type Evaluation, type Outcome } from './evaluation.ts';
import { openLooping } from './looping.ts';
import { openUnderstanding } from './meaning.ts';
import type { Understood } from './understood.ts';
import { openNameGraph } from './name-graph.ts';
import { resultOfFormula, resultOfMeaning } from './results.ts';
import { rowInputs } from './row-inputs.ts';
import { problemsOfRow } from './row-problems.ts';
import { openRowStore, type RowStore } from './row-store.ts';
import type { Cell, Row } from './row.ts';
import { RowsAtWork } from './rows-at-work.ts';
import { sameData, sameResult } from './same-meaning.ts';
import type { Surroundings } from './scope.ts';
import { openSettling } from './settling.ts';

/** What the workbook is opened on; another of these means another core. */
export interface Grounds {
  readonly reading: FileReading;
  readonly book: Book;
  readonly catalogue: Catalogue;
  readonly settings: UnitSettings;
  readonly brought: Brought;
}

export interface CoreChanges {
  readonly rows: ReadonlySet<string>;
  readonly structure: boolean;
}

/** The workbook for one set of units, kinds and user columns. */
export interface WorkbookCore {
  readonly store: RowStore;
  readonly around: Surroundings;
  readonly understand: (cell: Cell) => Understood;
  readonly evaluation: Evaluation;
  readonly update: (reading: FileReading, book: Book) => CoreChanges;
  /** The same in steps, between which nothing may be asked of it. */
  readonly updating: (reading: FileReading, book: Book) => Steps<CoreChanges>;
  /** Asks all functions of rows again: answers to their heavy questions have come. */
  readonly settle: () => CoreChanges;
  readonly answered: (row: Row) => AnsweredRow;
  readonly problems: () => readonly Problem[];
  readonly result: (cell: Cell, outcome: Outcome) => CellResult;
}

export function openCore(grounds: Grounds): WorkbookCore {
  const { catalogue, settings, book, brought } = grounds;
  const store = openRowStore();
  const graph = openNameGraph();
  const looping = openLooping();
  const columns = columnTypes(grounds.reading, book);
  const evaluation = openEvaluation({ store, columns }, functionContext(settings, book, brought));
  const around: Surroundings = {
    settings,
    outlines: brought.outlines,
    catalogue,
    book,
    store,
    columns,
    typeOf: (cell) => settling.typeOf(cell),
  };
  const understand = openUnderstanding(around);
  const settling = openSettling(understand, graph);
  let touched = new Set<Row>();
  let gone = new Set<string>();
  const loosened = new Set<Cell>();
  const troubled = new Set<Row>();

  const atWork = new RowsAtWork({
    store,
    graph,
    disturb: settling.disturb,
    touch: (row) => {
      touched.add(row);
    },
    removed: (row) => {
      gone.add(row.key);
      touched.delete(row);
      troubled.delete(row);
      for (const cell of row.cells.values()) {
        settling.forget(cell);
        loosened.delete(cell);
        for (const mate of looping.forget(cell)) loosened.add(mate);
      }
      evaluation.release(row);
    },
  });

  const result = (cell: Cell, outcome: Outcome): CellResult =>
    resultOfFormula(cell, outcome, store.cellNumbered);

  function answer(cell: Cell, now: CellResult): void {
    if (sameResult(cell.result, now)) return;
    cell.result = now;
    cell.answered = undefined;
    touched.add(cell.row);
  }

  /** Looks again at the problems of all rows touched since `touched` was emptied. */
  function lookAgain(): void {
    for (const row of touched) {
      row.answered = undefined;
      row.problems = problemsOfRow(row, store, settings);
      if (row.problems.length > 0) troubled.add(row);
      else troubled.delete(row);
    }
  }

  function* calculating(): Steps<void> {
    const changed = new Set(settling.settle());
    const looked = loosened.size === 0 ? changed : new Set([...changed, ...loosened]);
    for (const cell of looping.look(looked)) changed.add(cell);
    loosened.clear();
    for (const cell of changed) {
      touched.add(cell.row);
      const now = resultOfMeaning(cell);
      if (now !== undefined) answer(cell, now);
    }
    yield;
    const answers = yield* evaluation.write(changed);
    yield;
    for (const [cell, outcome] of answers) answer(cell, result(cell, outcome));
  }

  function* updating(reading: FileReading, next: Book): Steps<CoreChanges> {
    touched = new Set();
    gone = new Set();
    const structure = atWork.lay(rowInputs(reading, next), next);
    yield;
    yield* calculating();
    yield;
    lookAgain();
    return { rows: new Set([...gone, ...[...touched].map((row) => row.key)]), structure };
  }

  return {
    store,
    around,
    understand,
    evaluation,
    result,
    update: (reading, next) => atOnce(updating(reading, next)),
    updating,
    settle: () => {
      touched = new Set();
      for (const [cell, outcome] of evaluation.settle()) answer(cell, result(cell, outcome));
      lookAgain();
      return { rows: new Set([...touched].map((row) => row.key)), structure: false };
    },
    answered: (row) => (row.answered ??= answeredRow(row)),
    problems: () => {
      const tables = [...store.tables()];
      const place = (row: Row): number => tables.indexOf(row.table);
      return [...troubled]
        .sort((a, b) => place(a) - place(b) || a.position - b.position)
        .flatMap((row) => row.problems ?? []);
    },
  };
}

/** True when a core opened on the one can be brought to the other; else all is opened anew. */
export function sameGrounds(a: Grounds, b: Grounds): boolean {
  if (a.catalogue !== b.catalogue || !sameData(a.settings, b.settings)) return false;
  if (a.reading.tables.get('column') !== b.reading.tables.get('column')) return false;
  if (a.book === b.book) return true;
  return sameData(a.book.kinds, b.book.kinds) && sameData(a.book.bands, b.book.bands);
}

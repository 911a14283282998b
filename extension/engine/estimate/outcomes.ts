import type { Book } from '../book/book.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { Answers, AnsweredRow } from '../workbook/answers.ts';
import { cutOpenings } from './cut-openings.ts';
import type { MaterialFacts } from './material.ts';
import { panelOf, type PanelWay } from './panels.ts';
import { rowOutcome, type RowOutcome } from './row-outcome.ts';

/** A part row with what it asks of the bill. */
export interface WorkedRow {
  readonly row: AnsweredRow;
  readonly outcome: RowOutcome;
}

export interface Outcomes {
  /** Part rows in display order; only rows that changed, or look at one that did, are worked out. */
  readonly update: (
    answers: Answers,
    materials: ReadonlyMap<string, MaterialFacts>,
    changed: ReadonlySet<string>,
  ) => readonly WorkedRow[];
}

interface Kept extends WorkedRow {
  readonly panel: AnsweredRow | undefined;
  /** Rows on the way to the panel, as `table/id`, whether they were there or not. */
  readonly walked: readonly string[];
  /** What falls out of it, as text, where its outline is cut. */
  readonly opened: string | undefined;
  /** Materials looked up, found or not. */
  readonly materials: readonly string[];
}

interface Around {
  readonly answers: Answers;
  readonly materials: ReadonlyMap<string, MaterialFacts>;
  readonly book: Book;
  readonly settings: UnitSettings;
  /** Whether a row, as `table/id`, is not as before. */
  readonly moved: (key: string) => boolean;
}

// A row whose block cannot be read, or of an unknown kind, has a problem of its own; the bill only
// says that it is not whole.
const unreadable: RowOutcome = { asked: [], missing: [], loose: 1, problems: [] };

/** Keeps what each part row asks for, for as long as the row and what it looks at stay the same. */
export function openOutcomes(book: Book, settings: UnitSettings): Outcomes {
  let kept: readonly Kept[] = [];
  return {
    update: (answers, materials, changed) => {
      const moved = (key: string): boolean => changed.has(key);
      const around = { answers, materials, book, settings, moved };
      const before = memoryOf(kept);
      kept = answers.rows('part').map((row, index) => workedRow(row, before(row, index), around));
      return kept;
    },
  };
}

// Most edits leave every row at its place, so the map is made only when one is not found there.
function memoryOf(kept: readonly Kept[]): (row: AnsweredRow, index: number) => Kept | undefined {
  let map: ReadonlyMap<AnsweredRow, Kept> | undefined;
  return (row, index) => {
    const there = kept[index];
    if (there?.row === row) return there;
    map ??= new Map(kept.map((worked) => [worked.row, worked]));
    return map.get(row);
  };
}

function workedRow(row: AnsweredRow, before: Kept | undefined, around: Around): Kept {
  const { moved } = around;
  if (before === undefined || before.materials.some(moved)) {
    return work(row, panelOf(row, around.answers), around);
  }
  const { opened } = before;
  if (opened !== undefined && opened !== openedText(row, around.answers)) {
    return work(row, panelOf(row, around.answers), around);
  }
  if (!before.walked.some(moved)) return before;
  // An edit of what the row stands on matters only if it leads to another panel.
  const way = panelOf(row, around.answers);
  return way.panel === before.panel ? { ...before, ...way } : work(row, way, around);
}

function work(row: AnsweredRow, way: PanelWay, around: Around): Kept {
  const { answers, book, materials, settings } = around;
  const kind = book.kinds.get(row.kind);
  const looked: string[] = [];
  if (row.broken || kind === undefined) {
    return { row, outcome: unreadable, ...way, materials: looked, opened: undefined };
  }
  const material = (id: string): MaterialFacts | undefined => {
    looked.push(`material/${id}`);
    return materials.get(id);
  };
  const openings = (one: AnsweredRow): ReturnType<typeof cutOpenings> => cutOpenings(one, answers);
  const outcome = rowOutcome({ row, kind, panel: way.panel, material, settings, openings });
  const isCut = outcome.asked.some(({ outline }) => outline !== undefined);
  const opened = isCut ? openedText(row, answers) : undefined;
  return { row, outcome, ...way, materials: looked, opened };
}

// A part's openings hang on drivers and holes that are rows of their own.
function openedText(row: AnsweredRow, answers: Answers): string {
  return JSON.stringify(cutOpenings(row, answers));
}

import type { Book } from '../book/book.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { Answers, AnsweredRow } from '../workbook/answers.ts';
import { nameOf } from './cells.ts';
import { cutOpenings } from './cut-openings.ts';
import { openRowKeeper, type KeptRow } from './kept-rows.ts';
import type { MaterialFacts } from './material.ts';
import { panelAsBefore, panelOf, type PanelWay } from './panels.ts';
import { rowOutcome, type PiecedOutcome, type RowOutcome } from './row-outcome.ts';

/** A part row with what it asks of the bill. */
export interface WorkedRow {
  readonly row: AnsweredRow;
  readonly outcome: RowOutcome;
}

/** An outcome that took the place of another. */
export interface OutcomeChange {
  readonly before: RowOutcome;
  readonly now: RowOutcome;
}

export interface WorkedRows {
  /** Part rows in display order. */
  readonly rows: readonly WorkedRow[];
  /** What rows come to now and came to before; undefined where rows came, went or moved. */
  readonly changes: readonly OutcomeChange[] | undefined;
}

export interface Outcomes {
  /** Only rows that changed, or look at one that did, are worked out. */
  readonly update: (
    answers: Answers,
    materials: ReadonlyMap<string, MaterialFacts>,
    changed: ReadonlySet<string>,
  ) => WorkedRows;
}

interface Kept extends WorkedRow, KeptRow, PanelWay {
  readonly pieces: PiecedOutcome['pieces'];
  /** What falls out of it, as text, where its outline is cut. */
  readonly opened: string | undefined;
  /** Materials looked up, found or not, as `material/id`. */
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

/** Stands for every row: what is looked at again with each change. */
const anything = '*';

/** Keeps what each part row asks for, for as long as the row and what it looks at stay the same. */
export function openOutcomes(book: Book, settings: UnitSettings): Outcomes {
  const keeper = openRowKeeper<Kept>();
  return {
    update: (answers, materials, changed) => {
      const keys = new Set([anything, ...changed]);
      const moved = (key: string): boolean => keys.has(key);
      const around = { answers, materials, book, settings, moved };
      const changes: OutcomeChange[] = [];
      const work = (row: AnsweredRow, before: Kept | undefined): Kept => {
        const now = workedRow(row, before, around);
        if (
          before !== undefined &&
          (before.outcome !== now.outcome || isNamedAnew(before.row, row))
        )
          changes.push({ before: before.outcome, now: now.outcome });
        return now;
      };
      const known = keeper.update(answers.rows('part'), keys, work);
      return { rows: known.kept, changes: known.changed && changes };
    },
  };
}

function workedRow(row: AnsweredRow, before: Kept | undefined, around: Around): Kept {
  const { moved, answers } = around;
  if (before === undefined || before.materials.some(moved)) return work(row, around);
  const { opened } = before;
  if (opened !== undefined && opened !== openedText(row, answers)) return work(row, around);
  const asBefore = row === before.row;
  if (asBefore && !before.walked.some(moved)) return before;
  // An edit of what the row stands on matters only if it leads to another panel.
  const way = panelAsBefore(row, before, around);
  if (asBefore && way.panel === before.panel) return { ...before, ...lookedAt(way, before) };
  const same = way.panel === before.panel && opened === undefined && isAlike(row, before.row);
  return work(row, around, { way, ...(same ? { before } : {}) });
}

// The bill names rows also where nothing is needed of them: in its cautions.
function isNamedAnew(before: AnsweredRow, row: AnsweredRow): boolean {
  return before !== row && (before.kind !== row.kind || nameOf(before) !== nameOf(row));
}

function isAlike(one: AnsweredRow, other: AnsweredRow): boolean {
  return one.kind === other.kind && one.broken === other.broken;
}

function lookedAt(
  way: PanelWay,
  { materials, opened }: Pick<Kept, 'materials' | 'opened'>,
): PanelWay & KeptRow {
  const always = opened === undefined ? [] : [anything];
  return { ...way, looked: [...way.walked, ...materials, ...always] };
}

function work(
  row: AnsweredRow,
  around: Around,
  known: { readonly way?: PanelWay; readonly before?: Kept } = {},
): Kept {
  const { answers, book, materials, settings } = around;
  const { way = panelOf(row, answers), before } = known;
  const kind = book.kinds.get(row.kind);
  if (row.broken || kind === undefined) {
    const none = { opened: undefined, materials: [] };
    return { row, outcome: unreadable, pieces: [], ...none, ...lookedAt(way, none) };
  }
  const material = (id: string): MaterialFacts | undefined => materials.get(id);
  const openings = (one: AnsweredRow): ReturnType<typeof cutOpenings> => cutOpenings(one, answers);
  const input = { row, kind, panel: way.panel, material, settings, openings };
  const { outcome, pieces } = rowOutcome(input, before);
  const isCut = outcome.asked.some(({ outline }) => outline !== undefined);
  const opened = isCut ? openedText(row, answers) : undefined;
  const looked = pieces.flatMap((piece) => piece.materials.map((id) => `material/${id}`));
  const seen = { opened, materials: looked };
  return { ...lookedAt(way, seen), row, outcome, pieces, ...seen };
}

// A part's openings hang on drivers and holes that are rows of their own.
function openedText(row: AnsweredRow, answers: Answers): string {
  return JSON.stringify(cutOpenings(row, answers));
}

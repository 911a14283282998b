import type { Book } from '../book/book.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { Answers, AnsweredRow } from '../workbook/answers.ts';
import { wordIn } from './cells.ts';
import type { MaterialFacts } from './material.ts';
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
  /** Rows it looked at besides itself, as `table/id`, whether they were there or not. */
  readonly looked: readonly string[];
}

// A row whose block cannot be read, or of an unknown kind, has a problem of its own; the bill only
// says that it is not whole.
const unreadable: RowOutcome = { asked: [], missing: [], loose: 1, problems: [] };

/** Keeps what each part row asks for, for as long as the row and what it looks at stay the same. */
export function openOutcomes(book: Book, settings: UnitSettings): Outcomes {
  let kept = new Map<AnsweredRow, Kept>();
  return {
    update: (answers, materials, changed) => {
      const next = new Map<AnsweredRow, Kept>();
      const list: Kept[] = [];
      for (const row of answers.rows('part')) {
        const before = kept.get(row);
        const usable = before !== undefined && !before.looked.some((key) => changed.has(key));
        const worked = usable ? before : work(row, { answers, materials, book, settings });
        next.set(row, worked);
        list.push(worked);
      }
      kept = next;
      return list;
    },
  };
}

interface Around {
  readonly answers: Answers;
  readonly materials: ReadonlyMap<string, MaterialFacts>;
  readonly book: Book;
  readonly settings: UnitSettings;
}

function work(row: AnsweredRow, around: Around): Kept {
  const { answers, book, materials, settings } = around;
  const kind = book.kinds.get(row.kind);
  if (row.broken || kind === undefined) return { row, outcome: unreadable, looked: [] };
  const looked: string[] = [];
  const panel = panelOf(row, answers, looked);
  const material = (id: string): MaterialFacts | undefined => {
    looked.push(`material/${id}`);
    return materials.get(id);
  };
  return { row, outcome: rowOutcome({ row, kind, panel, material, settings }), looked };
}

// A part belongs to the panel it names, else to that of the nearest row it stands on that names one.
function panelOf(row: AnsweredRow, answers: Answers, looked: string[]): AnsweredRow | undefined {
  const chain = [row, ...answers.under(row)];
  for (const link of chain) {
    const panel = wordIn(link, 'panel');
    if (panel !== '') {
      looked.push(`panel/${panel}`);
      return answers.row('panel', panel);
    }
    const on = wordIn(link, 'on');
    if (on !== '') looked.push(`part/${on}`);
  }
  return undefined;
}

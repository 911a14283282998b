import type { Book } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { sameSettings } from '../../units/same-settings.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
import { notedRow, readsTheSame, type CellsRead } from '../cells-read.ts';
import { openRowKeeper, openUnbroken, type KeptRow } from '../kept-rows.ts';
import { checkRow, type CheckedRow } from './check-row.ts';
import type { Check } from './check.ts';

/** The checks of a job, and what a person has to be told of them. */
export interface Checks {
  readonly all: readonly Check[];
  readonly problems: readonly Problem[];
}

/** Checks that are kept up with the answers: a row that did not change is not worked out again. */
export interface CheckKeeper {
  /** The same object comes back where no check changed. */
  readonly update: (answers: Answers, book: Book, settings: UnitSettings) => Checks;
}

interface Kept extends KeptRow {
  readonly row: AnsweredRow;
  readonly read: CellsRead;
  readonly checked: CheckedRow;
}

/** No check looks at another row than its own. */
const looked: KeptRow['looked'] = [];
const nowhere: ReadonlySet<string> = new Set();

/** No checks yet; `update` brings them. */
export function openChecks(): CheckKeeper {
  const unbroken = openUnbroken();
  let keeper = openRowKeeper<Kept>();
  let grounds: { readonly book: Book; readonly settings: UnitSettings } | undefined;
  let before: readonly AnsweredRow[] | undefined;
  let checks: Checks = { all: [], problems: [] };
  return {
    update: (answers, book, settings) => {
      const same = grounds?.book === book && sameSettings(grounds.settings, settings);
      if (!same) [grounds, keeper, before] = [{ book, settings }, openRowKeeper<Kept>(), undefined];
      const rows = answers.rows('check');
      if (rows === before) return checks;
      before = rows;
      let others = 0;
      const work = (row: AnsweredRow, old: Kept | undefined): Kept => {
        if (old?.row.kind === row.kind && readsTheSame(old.read, row)) return { ...old, row };
        const noted = notedRow(row);
        others += 1;
        const checked = checkRow(noted.row, { book, settings });
        return { row, read: noted.read(), looked, checked };
      };
      const { kept, changed } = keeper.update(unbroken(rows), nowhere, work);
      if (changed === undefined || others > 0) {
        checks = {
          all: kept.map(({ checked }) => checked.check),
          problems: kept.flatMap(({ checked }) => checked.problems),
        };
      }
      return checks;
    },
  };
}

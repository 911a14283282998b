import type { Book } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { sameSettings } from '../../units/same-settings.ts';
import type { Answers, AnsweredRow } from '../../workbook/answers.ts';
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

/** No checks yet; `update` brings them. */
export function openChecks(): CheckKeeper {
  let kept: ReadonlyMap<AnsweredRow, CheckedRow> = new Map();
  let grounds: { readonly book: Book; readonly settings: UnitSettings } | undefined;
  let checks: Checks = { all: [], problems: [] };
  return {
    update: (answers, book, settings) => {
      const same = grounds?.book === book && sameSettings(grounds.settings, settings);
      grounds = { book, settings };
      const before = same ? kept : new Map<AnsweredRow, CheckedRow>();
      const rows = answers.rows('check').filter(({ broken }) => !broken);
      const next = new Map(
        rows.map((row) => [row, before.get(row) ?? checkRow(row, { book, settings })]),
      );
      const unchanged =
        same && next.size === kept.size && rows.every((row) => kept.get(row) === next.get(row));
      kept = next;
      if (unchanged) return checks;
      const worked = [...next.values()];
      checks = {
        all: worked.map(({ check }) => check),
        problems: worked.flatMap(({ problems }) => problems),
      };
      return checks;
    },
  };
}

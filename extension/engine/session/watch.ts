import type { Book } from '../book/book.ts';
import type { Check } from '../estimate/checks/check.ts';
import { openChecks } from '../estimate/checks/checks.ts';
import { openTraps } from '../estimate/traps/find-traps.ts';
import type { Problem } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { Workbook } from '../workbook/workbook.ts';

/** What is told of a job beside its answers: checks, and the traps of the trade that it steps into. */
export interface Told {
  readonly checks: readonly Check[];
  readonly problems: readonly Problem[];
}

/** Keeps an eye on a job; what did not change is not looked at again. */
export interface Watch {
  readonly update: (workbook: Workbook, book: Book, settings: UnitSettings) => Told;
}

/** Opens a watch that has seen nothing yet. */
export function openWatch(): Watch {
  const traps = openTraps();
  const checker = openChecks();
  return {
    update: (workbook, book, settings) => {
      const stepped = traps.update(workbook, book, settings);
      const { all, problems } = checker.update(workbook, book, settings);
      return { checks: all, problems: [...stepped, ...problems] };
    },
  };
}

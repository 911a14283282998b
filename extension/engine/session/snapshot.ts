import type { Book } from '../book/book.ts';
import type { Bill } from '../estimate/bill.ts';
import type { Check } from '../estimate/checks/check.ts';
import type { Price } from '../estimate/price/price.ts';
import type { Work } from '../estimate/work/task.ts';
import type { HeavyQuestion } from '../formula/catalogue.ts';
import type { FileReading } from '../job/source.ts';
import type { Place, Problem } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { Needs } from './needs-index.ts';
import type { Workbook } from '../workbook/workbook.ts';

/** A problem with the place in the file where a person finds it. */
export interface LocatedProblem {
  readonly problem: Problem;
  readonly place: Place | undefined;
  /** Line in the file, from 1; 0 when it has none. */
  readonly line: number;
  /** Range in the file; empty at 0 when it has none. */
  readonly start: number;
  readonly end: number;
}

/**
 * Everything that is known of a job at one moment; nothing in it changes afterwards but the workbook.
 * Checks and problems are worked out when they are read first, the rest before.
 */
export interface Snapshot {
  /** Reading of the text as it is now; `state` tells whether it can be shown. */
  readonly reading: FileReading;
  /** The last reading that could be shown: what the answers below belong to. */
  readonly shown: FileReading;
  readonly book: Book;
  readonly workbook: Workbook;
  readonly bill: Bill;
  readonly work: Work;
  readonly price: Price;
  /** The checks sheet with its outcomes, in display order. */
  readonly checks: readonly Check[];
  /** Needs of each row by `table/id#occurrence`; kept up with the bill, so it tells of now only. */
  readonly needs: Needs;
  readonly settings: UnitSettings;
  readonly problems: readonly LocatedProblem[];
  /** Outline files that its cells ask for, as they are written; whoever opened the job brings their texts. */
  readonly wants: readonly string[];
  /** Questions that are too heavy for a keystroke; until they are answered some values are estimates. */
  readonly heavy: readonly HeavyQuestion[];
  /** What a heavy question was answered with; undefined where it has not been worked out. */
  readonly replied: (question: HeavyQuestion) => unknown;
}

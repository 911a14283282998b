import type { CutAnswer, CutInstance } from '../cutting/instance.ts';
import type { HeavyQuestion } from '../formula/catalogue.ts';
import type { Lock, Unheld } from './locks.ts';

/** What is cut of one material, and the question that its layout answers. */
export interface CutOrder {
  readonly instance: CutInstance;
  readonly question: HeavyQuestion;
  /** The same, to be answered soon with a layout that may be bettered. */
  readonly first?: HeavyQuestion;
  /** Rows that ask for each part, with how many; copies are handed out in this order. */
  readonly owners: ReadonlyMap<string, readonly Owner[]>;
  /** Parts that are cut as mirror images of a row's outline. */
  readonly mirrored: ReadonlySet<string>;
  /** Locks that hold, by their ids, with the rows whose pieces they hold. */
  readonly held: ReadonlyMap<string, Lock>;
  /** Locks of this material that do not. */
  readonly unheld: readonly Unheld[];
}

/** A row that asks for a part. */
export interface Owner {
  readonly table: string;
  readonly row: string;
  readonly occurrence: number;
  readonly count: number;
}

/** How the parts of a line are cut. */
export interface Laid {
  readonly order: CutOrder;
  readonly answer: CutAnswer;
  /** False while a better layout is being looked for. */
  readonly settled: boolean;
}

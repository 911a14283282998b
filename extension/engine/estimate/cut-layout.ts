import type { CutAnswer, CutInstance, Fixed } from '../cutting/instance.ts';
import type { Misfit } from '../cutting/locked/fitting.ts';
import type { TaperedPair } from '../cutting/strips/tapered-pair.ts';
import type { HeavyQuestion } from '../formula/catalogue.ts';
import type { AnsweredRow } from '../workbook/answers.ts';

/** What is cut of one material, and the question that its layout answers. */
export interface CutOrder {
  readonly instance: CutInstance;
  readonly question: HeavyQuestion;
  /** Rows that ask for each part, with how many; copies are handed out in this order. */
  readonly owners: ReadonlyMap<string, readonly Owner[]>;
  /** Parts that are cut as mirror images of a row's outline. */
  readonly mirrored: ReadonlySet<string>;
  /** Parts that are two tapered strips head to tail, to be cut apart along their curve. */
  readonly pairs: ReadonlyMap<string, TaperedPair>;
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

/** A row that holds a part where it lies on a sheet; sizes in mm, degrees. */
export interface Lock {
  readonly row: AnsweredRow;
  /** Row of the part, and the pack that the sheet comes out of. */
  readonly part: string;
  readonly stock: string;
  /** From 0. */
  readonly index: number;
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
  readonly mirrored: boolean;
}

/** Why a lock does not hold: as the layout finds, or because there is nothing to hold. */
export type LockFault = Misfit | 'unread' | 'no-sheets';

/** A lock that is left out of account. */
export interface Unheld {
  readonly row: AnsweredRow;
  readonly why: LockFault;
  /** It is held on a roll. */
  readonly roll?: boolean;
  readonly fixed?: Fixed;
  /** The lock of the part that it meets. */
  readonly other?: string;
  /** Size of the piece, and of its sheet, mm. */
  readonly size?: { readonly length: number; readonly width: number };
  readonly sheet?: { readonly length: number; readonly width: number };
}

import type { KindGroup } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import type { Step } from '../bill.ts';

/** One task with its time for the whole job; all times in minutes. */
export interface Task {
  readonly id: string;
  readonly occurrence: number;
  readonly name: string;
  /** Kind of work; empty where the row names none. */
  readonly kind: string;
  /** Phase of the work: the group of its kind. */
  readonly phase: KindGroup;
  /** Id of the row the work is done on; empty where it stands alone. */
  readonly on: string;
  /** Task that must be finished first, as its row says; empty: the one above it. */
  readonly after: string;
  /** Who does it; empty for anybody. */
  readonly who: string;
  /** Time passes, but nobody works. */
  readonly waits: boolean;
  /** Once a job, before the first. */
  readonly setup: number;
  /** The first of like panels, as expected. */
  readonly each: number;
  /** At best, most often and at worst, for the first panel, where a range is given. */
  readonly range?: { readonly low: number; readonly likely: number; readonly high: number };
  /** How often it is done, and that in words. */
  readonly times: number;
  readonly people: number;
  /** By the clock: set-up and all panels. */
  readonly elapsed: number;
  /** Hours to be paid: elapsed × people; 0 for a wait. */
  readonly working: number;
  /** Standard deviation of `working`, from the range; 0 without one. */
  readonly spread: number;
  /** Where the rate is from, where it is the default of its kind; empty where the shop typed it. */
  readonly source: string;
  readonly steps: readonly Step[];
  /** False where its time cannot be told: it is not in the totals. */
  readonly complete: boolean;
}

/** Times of the tasks of one phase, or of one person. */
export interface TimeTotal {
  /** Phase, or name of the person; empty for anybody. */
  readonly key: string;
  readonly working: number;
  readonly elapsed: number;
  readonly waiting: number;
}

/** All the work of a job, in minutes. */
export interface Work {
  readonly tasks: readonly Task[];
  readonly phases: readonly TimeTotal[];
  readonly people: readonly TimeTotal[];
  readonly totals: {
    /** Time to be paid. */
    readonly working: number;
    /** Clock time at work, one task after another. */
    readonly elapsed: number;
    readonly waiting: number;
    /** Standard deviation of `working`, tasks varying by themselves. */
    readonly spread: number;
    /** Tasks whose time cannot be told. */
    readonly incomplete: number;
    /** Tasks with a rate that the shop has not timed itself. */
    readonly uncalibrated: number;
  };
  readonly problems: readonly Problem[];
}

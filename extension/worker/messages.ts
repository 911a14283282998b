import type { HeavyQuestion } from '../engine/formula/catalogue.ts';

/** Work that would make typing wait, so a worker does it. */
export type HeavyJob =
  /** Says its text again after counting to `steps`: shows that workers start, report and end here. */
  | { readonly kind: 'echo'; readonly text: string; readonly steps: number }
  /** Works out whatever a job asks that is too heavy for a keystroke. */
  | { readonly kind: 'question'; readonly question: HeavyQuestion };

/** What a job answers, by its kind. */
export interface HeavyAnswers {
  readonly echo: { readonly text: string; readonly steps: number };
  readonly question: unknown;
}

export interface ToWorker {
  readonly job: HeavyJob;
}

export type FromWorker =
  /** `share` of the work done, 0 to 1. */
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'done'; readonly answer: HeavyAnswers[HeavyJob['kind']] }
  /** A fault in the program, in its own words. */
  | { readonly kind: 'fault'; readonly message: string };

import type { Dimension } from '../units/dimension.ts';

/** A cell that an answer is written into: of a row, or a setting of the job. */
export type AskTarget =
  | { readonly table: 'job'; readonly column: string }
  | { readonly table: string; readonly id: string; readonly column: string };

/** What may be answered. */
export type AskForm =
  | { readonly kind: 'quantity'; readonly dimension: Dimension }
  | { readonly kind: 'choice'; readonly choices: readonly string[] }
  | { readonly kind: 'link'; readonly tables: readonly string[] }
  | { readonly kind: 'yes-no' | 'shape' | 'date' | 'text' };

/** A question of a template: where its answer goes, what is offered, and within which limits. */
export interface Ask {
  readonly id: string;
  readonly name: string;
  readonly help: string;
  readonly sets: readonly AskTarget[];
  /** Rows that stay in the job where the answer is yes, and go where it is no. */
  readonly keeps: readonly string[];
  readonly form: AskForm;
  /** What is offered: what stands in its first cell, unless it says otherwise. */
  readonly start: string;
  /** Limits as texts; empty where there is none. */
  readonly least: string;
  readonly most: string;
}

/** Answers by the id of their question, as a person typed or chose them; one left out takes what is offered. */
export type AskAnswers = Readonly<Record<string, string>>;

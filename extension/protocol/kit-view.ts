import type { ChoiceOption } from './views.ts';

/** A question of a kit or of a template, as a form shows it. */
export interface KitQuestionView {
  readonly key: string;
  readonly label: string;
  readonly help: string;
  readonly type: 'text' | 'choice' | 'yes-no';
  readonly options: readonly ChoiceOption[];
  readonly start: string;
  readonly required: boolean;
}

export interface KitView {
  readonly id: string;
  readonly name: string;
  readonly help: string;
  readonly questions: readonly KitQuestionView[];
}

export interface KitPreview {
  /** Rows that would be written; none where a template asks, whose rows are there already. */
  readonly rows: readonly { readonly table: string; readonly id: string; readonly words: string }[];
  /** What the job would come to, figure by figure. */
  readonly totals: readonly { readonly label: string; readonly value: string }[];
  /** By question key. */
  readonly problems: Readonly<Record<string, string>>;
}

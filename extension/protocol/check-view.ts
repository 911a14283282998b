/** A check with its outcome. */
export interface CheckView {
  readonly id: string;
  readonly occurrence: number;
  readonly outcome: 'pass' | 'near' | 'fail' | 'decide' | 'no-answer';
  /** The outcome in a word or two, for those who do not see its picture. */
  readonly word: string;
  /** An error: it must hold and does not. */
  readonly tone: 'plain' | 'warning' | 'error';
  readonly message: string;
}

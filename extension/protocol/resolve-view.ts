/** How one conflict may be settled. */
export type ConflictChoice = 'ours' | 'theirs' | 'both';

/** One conflict of a file with markers; texts are what a person reads in a cell, or a row's lines. */
export interface ConflictView {
  readonly key: string;
  /** “Midbass ring (mid_ring): lean”. */
  readonly title: string;
  /** What happened, in a sentence. */
  readonly what: string;
  /** Undefined: there was nothing, or it is not known (see `baseKnown`). */
  readonly base: string | undefined;
  readonly baseKnown: boolean;
  readonly ours: string | undefined;
  readonly theirs: string | undefined;
  readonly choices: readonly ConflictChoice[];
}

/** What is open in a file with conflict markers. */
export interface ResolveView {
  readonly conflicts: readonly ConflictView[];
  /** A sentence about the file as a whole. */
  readonly message: string;
}

/** What the job comes to with one side of a conflict, ours being taken in all others. */
export interface ConflictTotal {
  readonly choice: ConflictChoice;
  readonly price: string;
  readonly materials: string;
}

/** A half-open range of UTF-16 offsets in the text that the context names (a cell, a formula, a file). */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/** Where in the job a fact stands: a cell, a row (no column) or a table (no row). */
export interface Place {
  readonly table: string;
  readonly row?: string;
  /** 0 for the first row of this id; more only where a merge left two rows with one id. */
  readonly occurrence?: number;
  readonly column?: string;
}

export type Severity = 'error' | 'warning' | 'note';

/** A way out that a program can take for the person. `edit` is applied to the cell at `place`. */
export interface Fix {
  readonly title: string;
  readonly place: Place;
  /** New text of the cell. */
  readonly text: string;
  /** Rows to write instead, with ids drawn by whoever takes it, each begun with the word given. */
  readonly rows?: readonly FixRow[];
}

export interface FixRow {
  readonly table: string;
  /** Word that the row's id ends with. */
  readonly word: string;
  readonly cells: Readonly<Record<string, string>>;
}

/**
 * Something in a job that needs a person: a sentence that names the thing, its value and the way out.
 * Codes are permanent; the sentence may improve.
 */
export interface Problem {
  readonly code: string;
  readonly message: string;
  readonly severity: Severity;
  readonly place?: Place;
  /** Range in the text of the cell (or in the formula given to a checker). */
  readonly span?: Span;
  /** Range in the file, filled in by the reader where the problem is about the text itself. */
  readonly fileSpan?: Span;
  readonly fixes?: readonly Fix[];
}

/**
 * The list as it was where each of its problems says the same, so that nothing is told anew for it;
 * else the list as it is now.
 */
export function keptProblems<Told>(
  before: readonly Told[] | undefined,
  now: readonly Told[],
  same: (old: Told, one: Told) => boolean,
): readonly Told[] {
  if (before?.length !== now.length) return now;
  const unchanged = now.every((one, index) => {
    const old = before[index];
    return old !== undefined && same(old, one);
  });
  return unchanged ? before : now;
}

type Details = Readonly<Record<string, string | number>>;

/**
 * Makes the problem-maker of one folder from its table of code → text, where `{name}` in a text is
 * filled from the details. A code without a text cannot be written.
 */
export function problemMaker<Code extends string>(
  texts: Readonly<Record<Code, string>>,
): (code: Code, details?: Details, more?: Partial<Problem>) => Problem {
  return (code, details = {}, more = {}) => ({
    code,
    severity: 'error',
    message: texts[code].replace(/\{(\w+)\}/g, (whole, name: string) => {
      const detail = details[name];
      return detail === undefined ? whole : String(detail);
    }),
    ...more,
  });
}

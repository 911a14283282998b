import { problemMaker } from '../problems.ts';

/** Makes the problems of the workbook. */
export const workbookProblem = problemMaker({
  'row-broken': '{id} could not be read, so {name} has no answer. Mend its text first.',
  'row-not-possible': '{say}',
  'kind-unknown': 'There is no kind of {table} called “{kind}”.{suggestion}',
  'kind-missing': '{id} has no kind yet: choose what it is.',
  'link-loop': '{path}: a row cannot stand on itself.',
  'link-unknown': '{column} names “{text}”, but there is no {tables} of that name.{suggestion}',
  'link-formula': '{column} names a row and cannot be a formula.',
  'link-repeated': '{column} names {text}, but two rows are called that. Rename one.',
  'choice-unknown': '{column} cannot be “{text}”. It may be: {choices}.',
  'yes-no-unknown': '{column} is yes or no, not “{text}”.',
  'link-empty': '{row} has no {link}: fill in its {link}.',
  'link-dangling': '{row} names “{text}” as its {link}, but there is no {tables} of that name.',
  'link-off': '{row} has “none” as its {link}, so {name} has no answer.',
  'path-unknown': 'Nothing here is called “{word}”.{suggestion}',
  'path-repeated': 'Two rows are called {id}, so {name} could mean either. Rename one.',
  'path-is-row': '“{word}” is a row: name one of its columns, such as {word}.{column}.',
  'path-short': '“{path}” names a row; say which of its columns.',
  'path-not-link': '“{word}” does not lead to another row, so nothing can follow it.',
  'path-too-long': '“{path}” goes through more than three links. Name the row it leads to instead.',
  'column-unknown': '{table} rows have no column “{word}”.{suggestion}',
  'column-late': '{word} is worked out after all formulas, so no formula can read it.',
  'setting-unknown': 'The job has no setting or measure “{word}”.{suggestion}',
  'constant-unknown': 'The book has no constant “{word}”.{suggestion}',
  'draw-unknown': '{row} draws nothing called “{word}”.{suggestion}',
  'draw-short': 'Say which draw and which of its columns: draw.NAME.use.',
  'list-kind-unknown': 'There is no kind or table called “{word}”.{suggestion}',
  'cell-blank': '{name} is blank: fill it in.',
  'cell-waits': 'Waits for {name}: {reason}',
  'cell-loop': '{path}. A value cannot depend on itself; change one of these formulas.',
  'cell-loop-of-defaults': '{path}. Each is worked out from the next: fill in one of {cells}.',
  'divides-by-zero': 'Divides by zero.',
  'no-number': 'The answer is not a number that can be worked with.',
  'not-calculated': 'This formula could not be calculated ({reason}).',
  'function-refuses': '{reason}',
});

export type WorkbookProblemCode = Parameters<typeof workbookProblem>[0];

/** Problems that only mean that something is not filled in yet. */
const missing: ReadonlySet<string> = new Set(['link-empty', 'cell-blank', 'kind-missing']);

export function isMissing(code: string): boolean {
  return missing.has(code);
}

import type { ValueType } from '../formula/value.ts';
import type { Problem } from '../problems.ts';
import { blankType, placeOfCell, type Cell, type Meaning } from './row.ts';

/** What a cell's text means, and what that hangs on. */
export interface Understood {
  readonly meaning: Meaning;
  readonly type: ValueType;
  readonly problems: readonly Problem[];
  readonly reads: readonly Cell[];
  readonly watches: readonly string[];
}

/** What a cell without text means. */
export const nothing: Understood = {
  meaning: { kind: 'blank' },
  type: blankType,
  problems: [],
  reads: [],
  watches: [],
};

/** What a cell means whose text is at fault. */
export function faulty(cell: Cell, problem: Problem, more: Partial<Understood> = {}): Understood {
  const placed: Problem = { ...problem, place: placeOfCell(cell) };
  const meaning: Meaning = { kind: 'fault', problem: placed, cause: undefined };
  return { ...nothing, meaning, problems: [placed], ...more };
}

/** What a text means that stands for itself. */
export function verbatim(text: string): Understood {
  const value = { kind: 'text', text } as const;
  return { ...nothing, meaning: { kind: 'literal', value }, type: { kind: 'text' } };
}

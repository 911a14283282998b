import type { Checked } from '../formula/checked.ts';
import { cellAtPath } from './paths.ts';
import type { Cell, Row } from './row.ts';
import { sameType } from './same-meaning.ts';
import { noFindings, type AskedPath, type Findings, type Surroundings } from './scope.ts';

/** A checked formula that holds in every row in which its paths find cells of the same types. */
export interface Pattern {
  readonly checked: Checked;
  readonly asked: readonly AskedPath[];
}

/** Formulas checked once for many rows: a kind's defaults are the same text in each of its rows. */
export interface Patterns {
  readonly known: (cell: Cell, text: string) => Pattern | undefined;
  readonly keep: (cell: Cell, text: string, pattern: Pattern) => void;
}

/** Formulas that people change are forgotten when there are too many. */
const mostPatterns = 5000;

export function openPatterns(): Patterns {
  // What a column wants of a formula is part of what the check says.
  const tables = new Map<string, Map<string, Map<string, Pattern>>>();
  let count = 0;
  return {
    known: ({ row, column }, text) => tables.get(row.table)?.get(column)?.get(text),
    keep: ({ row, column }, text, pattern) => {
      if (count > mostPatterns) {
        tables.clear();
        count = 0;
      }
      const columns = tables.get(row.table) ?? new Map<string, Map<string, Pattern>>();
      const texts = columns.get(column) ?? new Map<string, Pattern>();
      tables.set(row.table, columns.set(column, texts.set(text, pattern)));
      count += 1;
    },
  };
}

/** What the pattern's paths find in a row; undefined where it must be checked for itself. */
export function followed(row: Row, pattern: Pattern, around: Surroundings): Findings | undefined {
  const findings = noFindings();
  const walk = { store: around.store, columns: around.columns, ...findings };
  for (const { steps, ref, type } of pattern.asked) {
    const found = cellAtPath(row, steps, walk);
    if (!found.ok || !sameType(around.typeOf(found.value), type)) return undefined;
    findings.bound.set(ref, found.value);
  }
  return findings;
}

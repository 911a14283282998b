import { fileSpanOf, lineOf } from '../job/places.ts';
import type { FileReading, SourceRow } from '../job/source.ts';
import type { Place, Problem, Span } from '../problems.ts';
import type { LocatedProblem } from './snapshot.ts';

const nowhere: Span = { start: 0, end: 0 };

function sourceRow(reading: FileReading, place: Place): SourceRow | undefined {
  return reading.tables
    .get(place.table)
    ?.find((row) => row.id === place.row && row.occurrence === (place.occurrence ?? 0));
}

function spanOf(reading: FileReading, problem: Problem): Span {
  if (problem.fileSpan !== undefined) return problem.fileSpan;
  const { place } = problem;
  if (place === undefined) return nowhere;
  const row = sourceRow(reading, place);
  if (row === undefined) return nowhere;
  return fileSpanOf(reading, row, place.column) ?? nowhere;
}

/**
 * Finds each problem's place in the text. Of several problems that say the same of one cell, one is
 * kept.
 */
export function locateProblems(
  reading: FileReading,
  problems: readonly Problem[],
): readonly LocatedProblem[] {
  const seen = new Set<string>();
  const located: LocatedProblem[] = [];
  for (const problem of problems) {
    const { place } = problem;
    const key = [problem.message, place?.table, place?.row, place?.occurrence, place?.column].join('\n');
    if (seen.has(key)) continue;
    seen.add(key);
    const { start, end } = spanOf(reading, problem);
    const line = end === 0 ? 0 : lineOf(reading, start);
    located.push({ problem, place, line, start, end });
  }
  return located;
}

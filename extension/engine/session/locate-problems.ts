import { fileSpanOf } from '../job/places.ts';
import type { FileReading, SourceRow } from '../job/source.ts';
import type { Place, Problem, Span } from '../problems.ts';
import { rowKey, type LocatedProblem } from './snapshot.ts';

const nowhere: Span = { start: 0, end: 0 };

type RowFinder = (place: Place) => SourceRow | undefined;

/** Finds rows by name; a table is indexed when the first of its problems asks. */
function rowFinder(reading: FileReading): RowFinder {
  const tables = new Map<string, ReadonlyMap<string, SourceRow>>();
  return (place) => {
    let rows = tables.get(place.table);
    if (rows === undefined) {
      rows = new Map((reading.tables.get(place.table) ?? []).map((row) => [rowKey(row), row]));
      tables.set(place.table, rows);
    }
    return rows.get(
      rowKey({ table: place.table, id: place.row ?? '', occurrence: place.occurrence ?? 0 }),
    );
  };
}

function spanOf(reading: FileReading, problem: Problem, rowAt: RowFinder): Span {
  if (problem.fileSpan !== undefined) return problem.fileSpan;
  const { place } = problem;
  if (place === undefined) return nowhere;
  const row = rowAt(place);
  if (row === undefined) return nowhere;
  return fileSpanOf(reading, row, place.column) ?? nowhere;
}

/** Lines of offsets, counted from 1, in one pass over the text however many offsets there are. */
function linesOf(text: string, offsets: readonly number[]): ReadonlyMap<number, number> {
  const lines = new Map<number, number>();
  let line = 1;
  let next = text.indexOf('\n');
  for (const offset of [...offsets].sort((a, b) => a - b)) {
    while (next !== -1 && next < offset) {
      line += 1;
      next = text.indexOf('\n', next + 1);
    }
    lines.set(offset, line);
  }
  return lines;
}

/**
 * Finds each problem's place in the text. Of several problems that say the same of one cell, one is
 * kept.
 */
export function locateProblems(
  reading: FileReading,
  problems: readonly Problem[],
): readonly LocatedProblem[] {
  const distinct = new Map<string, Problem>();
  for (const problem of problems) {
    const { place } = problem;
    const key = [
      problem.message,
      place?.table,
      place?.row,
      place?.occurrence,
      place?.column,
      problem.fileSpan?.start,
    ].join('\n');
    if (!distinct.has(key)) distinct.set(key, problem);
  }
  const rowAt = rowFinder(reading);
  const found = [...distinct.values()].map((problem) => ({
    problem,
    span: spanOf(reading, problem, rowAt),
  }));
  const lines = linesOf(
    reading.text,
    found.map(({ span }) => span.start),
  );
  return found.map(({ problem, span: { start, end } }) => ({
    problem,
    place: problem.place,
    line: end === 0 ? 0 : (lines.get(start) ?? 0),
    start,
    end,
  }));
}

import { fileForm } from '../job/file-form.ts';
import { fileSpanOf } from '../job/places.ts';
import type { FileReading, SourceRow } from '../job/source.ts';
import type { Place, Problem, Span } from '../problems.ts';
import { rowKey } from './row-key.ts';
import type { LocatedProblem } from './snapshot.ts';

const nowhere: Span = { start: 0, end: 0 };

type RowFinder = (place: Place) => SourceRow | undefined;

/** Finds rows by name. Where a row stood last is tried first: edits seldom move rows. */
function openRowFinder(): (reading: FileReading) => RowFinder {
  const places = new Map<string, ReadonlyMap<string, number>>();
  return (reading) => (place) => {
    const rows = reading.tables.get(place.table) ?? [];
    const id = place.row ?? '';
    const occurrence = place.occurrence ?? 0;
    const key = rowKey({ table: place.table, id, occurrence });
    const last = rows[places.get(place.table)?.get(key) ?? -1];
    if (last?.id === id && last.occurrence === occurrence) return last;
    const fresh = new Map(rows.map((row, index) => [rowKey(row), index]));
    places.set(place.table, fresh);
    return rows[fresh.get(key) ?? -1];
  };
}

/** Range of a setting in `[job]`; the table's header where the setting is not written. */
function headSpanOf(reading: FileReading, key: string | undefined): Span {
  const form = fileForm(reading);
  const block = reading.blocks.find(({ header }) => header?.name === form && !header.array);
  if (block === undefined) return nowhere;
  const { start } = block;
  const span = reading.head.get(key ?? '')?.span ?? { start: 0, end: `[${form}]`.length };
  return { start: start + span.start, end: start + span.end };
}

function spanOf(reading: FileReading, problem: Problem, rowAt: RowFinder): Span {
  if (problem.fileSpan !== undefined) return problem.fileSpan;
  const { place } = problem;
  if (place === undefined) return nowhere;
  if (place.table === 'job' || place.table === 'book') return headSpanOf(reading, place.column);
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

/** Places problems in one text after another. */
export type Locator = (
  reading: FileReading,
  problems: readonly Problem[],
) => readonly LocatedProblem[];

/**
 * Opens a locator, which finds each problem's place in the text. Of several problems that say the
 * same of one cell, one is kept.
 */
export function openLocator(): Locator {
  const finder = openRowFinder();
  return (reading, problems) => located(reading, problems, finder(reading));
}

function located(
  reading: FileReading,
  problems: readonly Problem[],
  rowAt: RowFinder,
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
  const found = [...distinct.values()].map((problem) => ({
    problem,
    span: spanOf(reading, problem, rowAt),
  }));
  if (found.length === 0) return [];
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

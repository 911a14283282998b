import { failed, ok, type Result } from '../result.ts';
import { length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { Point } from './outline.ts';
import { traceProblem } from './trace-problems.ts';

/** How the lines of a list are meant. */
export type TraceMode =
  /** x and y of each point, round the outline. */
  | 'points'
  /** How far along a straight edge, and how far off it; with a third figure the outline's two sides. */
  | 'stations';

/** A measured point; the outline turns sharply at a corner, however it goes elsewhere. */
export interface TracePoint extends Point {
  readonly corner: boolean;
}

interface Line {
  readonly number: number;
  readonly figures: readonly number[];
  readonly corner: boolean;
}

const cornerWord = /^(corner|c|\*)$/i;

/** The fields of a line: between tabs, semicolons or commas; between spaces where there is none of these. */
function fieldsOf(line: string): readonly string[] {
  const separator = [/\t+/, /\s*;\s*/, /\s*,\s*/].find((one) => one.test(line)) ?? /\s+/;
  return line
    .split(separator)
    .map((field) => field.trim())
    .filter((field) => field !== '');
}

function readLine(text: string, number: number, settings: UnitSettings): Result<Line> {
  const fields = fieldsOf(text);
  const corner = cornerWord.test(fields.at(-1) ?? '');
  const figures: number[] = [];
  for (const field of corner ? fields.slice(0, -1) : fields) {
    const read = readQuantity(field, { settings, wanted: length });
    if (!read.ok) {
      return failed(traceProblem('trace-line', { number, message: read.problem.message }));
    }
    figures.push(read.value.value.base);
  }
  return ok({ number, figures, corner });
}

/** Lines with figures; a heading above them is passed over. */
function readLines(text: string, settings: UnitSettings): Result<readonly Line[]> {
  const lines: Line[] = [];
  for (const [index, line] of text.split(/\r\n|\n|\r/).entries()) {
    if (line.trim() === '') continue;
    const isHeading = lines.length === 0 && !/\d/.test(line);
    if (isHeading) continue;
    const read = readLine(line.trim(), index + 1, settings);
    if (!read.ok) return read;
    lines.push(read.value);
  }
  return ok(lines);
}

function pointsOf(lines: readonly Line[]): Result<readonly TracePoint[]> {
  const odd = lines.find(({ figures }) => figures.length !== 2);
  if (odd !== undefined) {
    const details = { number: odd.number, given: odd.figures.length };
    return failed(traceProblem('trace-not-two', details));
  }
  return ok(lines.map(({ figures: [x = 0, y = 0], corner }) => ({ x, y, corner })));
}

/** Round the outline: along the offsets, and back along the edge or the offsets of the other side. */
function stationsOf(lines: readonly Line[]): Result<readonly TracePoint[]> {
  const [first] = lines;
  const count = first?.figures.length ?? 0;
  const odd = lines.find(({ figures }) => figures.length !== count || count < 2 || count > 3);
  if (odd !== undefined) {
    const details = { number: odd.number, given: odd.figures.length };
    return failed(traceProblem('trace-not-stations', details));
  }
  const fallen = lines.find(
    ({ figures: [at = 0] }, index) => index > 0 && at <= (lines[index - 1]?.figures[0] ?? at),
  );
  if (fallen !== undefined) return failed(traceProblem('trace-falls', { number: fallen.number }));
  const side = (which: number): readonly TracePoint[] =>
    lines.map(({ figures, corner }, index) => ({
      x: figures[0] ?? 0,
      y: figures[which] ?? 0,
      // Where a side meets the ends the outline turns.
      corner: corner || index === 0 || index === lines.length - 1,
    }));
  const ends = [lines.at(-1), first].flatMap((line): readonly TracePoint[] =>
    line === undefined ? [] : [{ x: line.figures[0] ?? 0, y: 0, corner: true }],
  );
  const back = count === 3 ? [...side(1)].reverse() : ends;
  const upper = side(count === 3 ? 2 : 1);
  return ok([...upper, ...back]);
}

/** A point that is measured twice in a row, or where an offset is nothing, is one point. */
function withoutTwins(points: readonly TracePoint[]): readonly TracePoint[] {
  const kept: TracePoint[] = [];
  const isTwin = (a: TracePoint | undefined, b: TracePoint | undefined): boolean =>
    a !== undefined && b !== undefined && Math.hypot(a.x - b.x, a.y - b.y) < 1e-9;
  for (const point of points) {
    const last = kept.at(-1);
    if (isTwin(last, point)) kept.pop();
    kept.push({ ...point, corner: point.corner || (isTwin(last, point) && last?.corner === true) });
  }
  const [first] = kept;
  const last = kept.at(-1);
  if (kept.length < 2 || first === undefined || last === undefined || !isTwin(first, last))
    return kept;
  return [{ ...first, corner: first.corner || last.corner }, ...kept.slice(1, -1)];
}

/**
 * Reads measured points out of a list that was pasted, a line each; bare numbers are in the job's
 * unit, and a line that ends in “corner” is one.
 */
export function readTrace(
  text: string,
  mode: TraceMode,
  settings: UnitSettings,
): Result<readonly TracePoint[]> {
  const lines = readLines(text, settings);
  if (!lines.ok) return lines;
  const points = mode === 'points' ? pointsOf(lines.value) : stationsOf(lines.value);
  if (!points.ok) return points;
  const apart = withoutTwins(points.value);
  const given = apart.length;
  return given < 3 ? failed(traceProblem('trace-few', { given })) : ok(apart);
}

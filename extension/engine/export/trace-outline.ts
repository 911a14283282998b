import type { Drawing } from '../drawing/drawing.ts';
import { boxAround, loopLength, signedArea, type Point } from '../geometry/outline.ts';
import { readTrace, type TraceMode } from '../geometry/read-trace.ts';
import { tracedThrough } from '../geometry/trace.ts';
import { ok, type Result } from '../result.ts';
import { area, length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import { traceId, traceSvg } from './trace-svg.ts';

/** How a list of measured points is to be read and drawn. */
export interface TraceForm {
  readonly mode: TraceMode;
  /** A smooth line through the points, but for corners; else straight from point to point. */
  readonly smooth: boolean;
  readonly title: string;
  readonly settings: UnitSettings;
}

/** An outline made from measured points, ready to be looked at and written. */
export interface TracedFile {
  readonly svg: string;
  /** Name of the outline in the file. */
  readonly name: string;
  /** How large it is. */
  readonly sentence: string;
  readonly drawing: Drawing;
}

/** Makes an outline, its picture and its file from a list of measured points; or says what is wrong. */
export function traceOutline(list: string, form: TraceForm): Result<TracedFile> {
  const { mode, smooth, title, settings } = form;
  const points = readTrace(list, mode, settings);
  if (!points.ok) return points;
  const trace = tracedThrough(points.value, smooth, settings);
  if (!trace.ok) return trace;
  const { outline } = trace.value;
  const box = boxAround(outline.points);
  const shown = (base: number): string => showQuantity({ base, dimension: length }, settings).text;
  const inside = showQuantity({ base: signedArea(outline.points), dimension: area }, settings).text;
  const sentence = `${shown(box.right - box.left)} × ${shown(box.top - box.bottom)}, ${inside} inside, ${shown(loopLength(outline.points))} round, from ${String(points.value.length)} points.`;
  const drawing: Drawing = {
    id: 'trace',
    title,
    words: [sentence],
    box,
    marks: [
      { kind: 'line', role: 'outline', points: outline.points, closed: true, filled: true },
      ...points.value.map(({ x, y }) => ({
        kind: 'line' as const,
        role: 'axis' as const,
        points: crossArms({ x, y }, Math.max(box.right - box.left, box.top - box.bottom) / 100),
        closed: false,
      })),
    ],
  };
  return ok({ svg: traceSvg(trace.value, title), name: traceId, sentence, drawing });
}

/** A mark at a measured point, drawn in one go: across, back, and up and down. */
function crossArms({ x, y }: Point, arm: number): readonly Point[] {
  return [
    { x: x - arm, y },
    { x: x + arm, y },
    { x, y },
    { x, y: y + arm },
    { x, y: y - arm },
  ];
}

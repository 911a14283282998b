import { curvePoints, type Curve } from './curve-points.ts';
import type { Point } from './outline.ts';

/** A line of a drawing file: from its first point along straight pieces and curves; y up. */
export interface DrawnLine {
  /** What it may be asked for by: ids and labels of an SVG, the layer of a DXF. */
  readonly names: readonly string[];
  readonly start: Point;
  /** Where straight pieces end, and curves. */
  readonly parts: readonly (Point | Curve)[];
  /** Its last point is joined to its first. */
  readonly closed: boolean;
}

/** What a drawing file holds of lines, in its own unit. */
export interface DrawnFile {
  /** Size of its unit in mm; undefined where the file does not say. */
  readonly unit: number | undefined;
  readonly lines: readonly DrawnLine[];
  /** Kinds of things in it that were passed over, in the words of the file. */
  readonly unread: readonly string[];
  /** What its names are called: an id, a layer. */
  readonly nameWord: string;
}

function isCurve(part: Point | Curve): part is Curve {
  return 'at' in part;
}

/** Points of a line in the drawing's unit, its first and last among them; curves stray at most `tolerance`. */
export function linePoints({ start, parts }: DrawnLine, tolerance: number): readonly Point[] {
  return [
    start,
    ...parts.flatMap((part) => (isCurve(part) ? curvePoints(part, tolerance) : [part])),
  ];
}

/** Largest extent of lines along an axis, looked at roughly. */
export function roughSize(lines: readonly DrawnLine[]): number {
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const line of lines) {
    for (const { x, y } of linePoints(line, Infinity)) {
      [left, right] = [Math.min(left, x), Math.max(right, x)];
      [bottom, top] = [Math.min(bottom, y), Math.max(top, y)];
    }
  }
  return Math.max(right - left, top - bottom, 0);
}

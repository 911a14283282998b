import type { DrawnRow, LineMark, Mark, Role, TextMark } from '../drawing/drawing.ts';
import type { Point } from '../geometry/outline.ts';
import { angle, length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import type { AnsweredRow } from '../workbook/answers.ts';

/** A length in mm as people read it. */
export function lengthText(base: number, settings: UnitSettings): string {
  return showQuantity({ base, dimension: length }, settings).text;
}

/** An angle in radians as people read it. */
export function angleText(base: number, settings: UnitSettings): string {
  return showQuantity({ base, dimension: angle }, settings).text;
}

export function drawnRow({ table, id, occurrence }: AnsweredRow): DrawnRow {
  return occurrence === 0 ? { table, id } : { table, id: `${id}#${String(occurrence)}` };
}

export function line(role: Role, points: readonly Point[], more: Partial<LineMark> = {}): LineMark {
  return { kind: 'line', role, points, closed: false, ...more };
}

export function loop(role: Role, points: readonly Point[], more: Partial<LineMark> = {}): LineMark {
  return { kind: 'line', role, points, closed: true, ...more };
}

/** Words about a point, in the middle unless told otherwise. */
export function words(role: Role, at: Point, text: string, more: Partial<TextMark> = {}): TextMark {
  return { kind: 'text', role, at, text, height: 0, anchor: 'middle', ...more };
}

/** Sizes of a drawing's lettering, from its longest side. */
export interface Lettering {
  /** Height of a capital letter, in mm. */
  readonly height: number;
  /** From an edge to the first dimension line and from one to the next, in mm. */
  readonly step: number;
}

export function letteringOf(span: number): Lettering {
  return { height: span * 0.018, step: span * 0.065 };
}

/** A measured distance along x or y. */
export interface Measured {
  readonly from: Point;
  readonly to: Point;
  /** Where the dimension line runs: its y for one along x, its x for one along y. */
  readonly at: number;
  readonly along: 'x' | 'y';
  readonly text: string;
  /** The figure of a distance that is too short for it stands beyond its line, unless told. */
  readonly tight?: 'beyond' | 'before';
}

/** A dimension line with its witness lines, slanting ticks and figure. */
export function dimension(measured: Measured, { height, step }: Lettering): readonly Mark[] {
  const { from, to, at, along, text } = measured;
  const before = measured.tight === 'before';
  const upright = along === 'y';
  const ends = [from, to].map(({ x, y }) => (upright ? { x: at, y } : { x, y: at }));
  const [start, end] = ends;
  if (start === undefined || end === undefined) return [];
  const past = (upright ? at - from.x : at - from.y) < 0 ? -1 : 1;
  const witnesses = [from, to].map(({ x, y }) => {
    const gap = past * step * 0.15;
    return upright
      ? [
          { x: x + gap, y },
          { x: at + gap, y },
        ]
      : [
          { x, y: y + gap },
          { x, y: at + gap },
        ];
  });
  const tick = step * 0.12;
  const ticks = ends.map(({ x, y }) => [
    { x: x - tick, y: y - tick },
    { x: x + tick, y: y + tick },
  ]);
  const middle = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 };
  const lift = height * 0.5;
  const tight = upright && Math.abs(end.y - start.y) < text.length * height * 0.8;
  const side = before ? -past : past;
  const figure = tight
    ? words('dimension', { x: middle.x + side * lift, y: middle.y - lift }, text, {
        height,
        anchor: side < 0 ? 'end' : 'start',
      })
    : words(
        'dimension',
        upright ? { x: middle.x - lift, y: middle.y } : { x: middle.x, y: middle.y + lift },
        text,
        { height, ...(upright ? { angle: Math.PI / 2 } : {}) },
      );
  return [...[ends, ...witnesses, ...ticks].map((points) => line('dimension', points)), figure];
}

/** A cross at a centre. */
export function cross({ x, y }: Point, arm: number, more: Partial<LineMark> = {}): readonly Mark[] {
  return [
    line(
      'axis',
      [
        { x: x - arm, y },
        { x: x + arm, y },
      ],
      more,
    ),
    line(
      'axis',
      [
        { x, y: y - arm },
        { x, y: y + arm },
      ],
      more,
    ),
  ];
}

/** Every point that marks reach to, for the box around them. */
export function reached(marks: readonly Mark[]): readonly Point[] {
  return marks.flatMap((mark) => (mark.kind === 'line' ? mark.points : [mark.at]));
}

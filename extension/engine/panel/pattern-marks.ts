import type { Drawing, Mark } from '../drawing/drawing.ts';
import { boxAround, type Box, type Outline, type Point } from '../geometry/outline.ts';
import { shapeOutline } from '../geometry/shape-outline.ts';
import { shapeLength, shapeWidth, type Shape } from '../geometry/shape.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { isMirrored, type Hand } from './hands.ts';
import { drawnRow, line, loop, reached, words } from './marks.ts';

/** A part to cut, drawn at full size. */
export interface Pattern {
  /** Row it is the pattern of. */
  readonly part: string;
  readonly drawing: Drawing;
}

/** Height of a pattern's lettering, in mm. */
const letterMm = 5;

/** From one line of lettering to the next, in mm. */
const lineMm = 8;

/** Straight pieces of a pattern stray this share of its size at most, so that areas hold. */
const strayShare = 1e-5;

/** Outline of a shape, true enough to cut by: its area is right to some hundred thousandths. */
export function cutOutline(shape: Shape): Outline {
  const size = Math.max(shapeLength(shape), shapeWidth(shape));
  return shapeOutline(shape, Math.min(0.01, size * strayShare));
}

/** Points as they are seen on a hand, still counter-clockwise. */
export function onHand(points: readonly Point[], hand: Hand): readonly Point[] {
  return isMirrored(hand) ? points.map(({ x, y }) => ({ x: -x, y })).reverse() : points;
}

/** What is written on a pattern and drawn beside it: its name, facts, and a line of 100 mm. */
function legend(box: Box, texts: readonly string[]): readonly Mark[] {
  const start = { x: box.left, y: box.bottom - lineMm * 1.5 };
  const lettered = texts.map((text, index) =>
    words('note', { x: start.x, y: start.y - index * lineMm }, text, {
      height: index === 0 ? letterMm : letterMm * 0.7,
      anchor: 'start',
    }),
  );
  const y = start.y - texts.length * lineMm;
  const end = start.x + 100;
  const tick = (x: number): Mark =>
    line('scale', [
      { x, y: y - 2 },
      { x, y: y + 2 },
    ]);
  return [
    ...lettered,
    line('scale', [
      { x: start.x, y },
      { x: end, y },
    ]),
    tick(start.x),
    tick(end),
    words('scale', { x: end + 3, y: y - 1.5 }, '100 mm', { height: 3, anchor: 'start' }),
  ];
}

export interface PatternForm {
  readonly row: AnsweredRow;
  readonly id: string;
  readonly title: string;
  /** Sentences for the overview and for who cannot see it. */
  readonly sentences: readonly string[];
  readonly marks: readonly Mark[];
}

/** A pattern of marks, with its legend below. */
export function patternOf({ row, id, title, sentences, marks }: PatternForm): Pattern {
  const box = boxAround(reached(marks));
  const all = [...marks, ...legend(box, [title, ...sentences])];
  const drawing = { id, title, words: sentences, box: boxAround(reached(all)), marks: all };
  return { part: row.id, drawing };
}

/** A loop to cut that belongs to a row. */
export function cutLoop(
  role: 'outline' | 'hole',
  points: readonly Point[],
  row: AnsweredRow,
): Mark {
  return loop(role, points, { row: drawnRow(row) });
}

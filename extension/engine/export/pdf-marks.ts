import type { LineMark, Mark, TextMark } from '../drawing/drawing.ts';
import type { Point } from '../geometry/outline.ts';
import { letterHeight, paperStyles } from './drawing-styles.ts';
import { pdfText } from './pdf-letters.ts';
import { pdfNumber, pointsPerMm } from './pdf-objects.ts';

/** Height of a capital of Helvetica as a share of its size. */
const capitalShare = 0.718;

/** Mean width of a letter as a share of its size: near enough to put words in the middle. */
const letterShare = 0.52;

/** Length of an arrow's head, in mm. */
const headMm = 3;

/** Where a drawing lies on a page. */
export interface PagePlace {
  /** Where the drawing's own zero falls, in mm from the page's lower left corner. */
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** A place of the drawing as a page's points. */
function at({ x, y }: Point, place: PagePlace): string {
  const on = (value: number, start: number): string =>
    pdfNumber((start + value * place.scale) * pointsPerMm);
  return `${on(x, place.x)} ${on(y, place.y)}`;
}

function pathOf(points: readonly Point[], closed: boolean, place: PagePlace): string {
  const steps = points.map((point, index) => `${at(point, place)} ${index === 0 ? 'm' : 'l'}`);
  return `${steps.join('\n')}\n${closed ? 'h ' : ''}S`;
}

function headOf(points: readonly Point[], place: PagePlace): readonly string[] {
  const [from, to] = [points.at(-2), points.at(-1)];
  if (from === undefined || to === undefined) return [];
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const reach = headMm / place.scale;
  const side = (turn: number): Point => ({
    x: to.x - reach * Math.cos(angle + turn),
    y: to.y - reach * Math.sin(angle + turn),
  });
  return [pathOf([side(0.35), to, side(-0.35)], false, place)];
}

function lineCode(mark: LineMark, place: PagePlace): string {
  const { width, dashes, grey } = paperStyles[mark.role];
  const pattern = dashes.map((length) => pdfNumber(length * pointsPerMm)).join(' ');
  return [
    `${pdfNumber(width * pointsPerMm)} w [${pattern}] 0 d ${pdfNumber(grey)} G`,
    pathOf(mark.points, mark.closed, place),
    ...(mark.holes ?? []).map((hole) => pathOf(hole, true, place)),
    ...(mark.arrow === true ? headOf(mark.points, place) : []),
  ].join('\n');
}

function textCode(mark: TextMark, place: PagePlace): string {
  const height = mark.height === 0 ? letterHeight / place.scale : mark.height;
  const size = (height * place.scale) / capitalShare;
  const angle = mark.angle ?? 0;
  const back = { start: 0, middle: 0.5, end: 1 }[mark.anchor] * mark.text.length;
  const shift = (back * letterShare * size) / place.scale;
  const start = {
    x: mark.at.x - shift * Math.cos(angle),
    y: mark.at.y - shift * Math.sin(angle),
  };
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)].map(pdfNumber);
  const turned = `${cos ?? ''} ${sin ?? ''} ${pdfNumber(-Math.sin(angle))} ${cos ?? ''}`;
  return `BT /F1 ${pdfNumber(size * pointsPerMm)} Tf ${turned} ${at(start, place)} Tm ${pdfText(mark.text)} Tj ET`;
}

/** A mark as a page's content draws it. */
export function markCode(mark: Mark, place: PagePlace): string {
  return mark.kind === 'line' ? lineCode(mark, place) : textCode(mark, place);
}

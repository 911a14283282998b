import type { Drawing, LineMark, Mark, Role, TextMark } from '../drawing/drawing.ts';
import type { Box, Point } from '../geometry/outline.ts';
import { markCode, type PagePlace } from './pdf-marks.ts';
import { pdfFile, pdfNumber, pointsPerMm, type PdfPage } from './pdf-objects.ts';
import { footMm, isMet, marginMm, overlapMm, tilePlan } from './tile-plan.ts';
import type { Paper, Tile, TilePlan } from './tile-plan.ts';

/** Where the page itself is drawn on: its own mm. */
const onPage: PagePlace = { x: 0, y: 0, scale: 1 };

/** Arm of a register mark, in mm. */
const armMm = 4;

function line(role: Role, ...points: readonly Point[]): LineMark {
  return { kind: 'line', role, points, closed: false };
}

function words(at: Point, text: string, height = 2.5): TextMark {
  return { kind: 'text', role: 'note', at, text, height, anchor: 'start' };
}

function boxLine(role: Role, { left, bottom, right, top }: Box): LineMark {
  const points = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  return { kind: 'line', role, points, closed: true };
}

/** A line of a known length with ticks at its ends, to lay a rule along. */
function checkLine(at: Point, length: number, text: string): readonly Mark[] {
  const end = { x: at.x + length, y: at.y };
  const tick = ({ x, y }: Point): LineMark => line('scale', { x, y: y - 1 }, { x, y: y + 1 });
  return [
    line('scale', at, end),
    tick(at),
    tick(end),
    words({ x: end.x + 2, y: at.y - 0.9 }, text, 2),
  ];
}

/** The strip at the foot of a page: what it is, and the lines that tell whether it was printed at size. */
function foot(title: string, label: string): readonly Mark[] {
  const start = { x: marginMm, y: marginMm };
  return [
    words({ x: start.x, y: start.y + 14 }, title, 3),
    words({ x: start.x, y: start.y + 9.5 }, label),
    ...checkLine({ x: start.x, y: start.y + 5.5 }, 100, 'must measure 100 mm'),
    ...checkLine({ x: start.x, y: start.y + 1.5 }, 4 * 25.4, 'must measure 4 in: print at 100 %'),
  ];
}

function cross({ x, y }: Point): readonly LineMark[] {
  return [
    line('register', { x: x - armMm, y }, { x: x + armMm, y }),
    line('register', { x, y: y - armMm }, { x, y: y + armMm }),
  ];
}

/** Where tiles are joined: lines to cut or lay along, and crosses that must fall on each other. */
function joints({ window }: Tile, { seamsX, seamsY }: TilePlan): readonly Mark[] {
  const { left, bottom, right, top } = window;
  const inset = overlapMm * 2;
  const upright = seamsX.filter((x) => x > left && x < right);
  const level = seamsY.filter((y) => y > bottom && y < top);
  return [
    ...upright.flatMap((x) => [
      line('seam', { x, y: bottom }, { x, y: top }),
      ...[bottom + inset, (bottom + top) / 2, top - inset].flatMap((y) => cross({ x, y })),
    ]),
    ...level.flatMap((y) => [
      line('seam', { x: left, y }, { x: right, y }),
      ...[left + inset, (left + right) / 2, right - inset].flatMap((x) => cross({ x, y })),
    ]),
  ];
}

function clip({ left, bottom, right, top }: Box): string {
  const numbers = [left, bottom, right - left, top - bottom].map((mm) =>
    pdfNumber(mm * pointsPerMm),
  );
  return `${numbers.join(' ')} re W n`;
}

function pageOf({ page }: TilePlan, content: readonly string[]): PdfPage {
  const [width, height] = [page.width * pointsPerMm, page.height * pointsPerMm];
  return { width, height, content: content.join('\n') };
}

/** The part of a page above its foot. */
function fieldOf({ page }: TilePlan): Box {
  return {
    left: marginMm,
    bottom: marginMm + footMm,
    right: page.width - marginMm,
    top: page.height - marginMm,
  };
}

function tilePage(drawing: Drawing, tile: Tile, plan: TilePlan): PdfPage {
  const { window, row, column } = tile;
  const field = fieldOf(plan);
  const place = { x: field.left - window.left, y: field.bottom - window.bottom, scale: 1 };
  const seen = drawing.marks.filter((mark) => mark.kind === 'text' || isMet(mark, window));
  const of = (number: number, all: number): string => `${String(number)} of ${String(all)}`;
  const label = `Row ${of(row, plan.rows)} from the top, column ${of(column, plan.columns)} from the left. Join where the crosses fall on each other.`;
  return pageOf(plan, [
    'q',
    clip(field),
    ...[...seen, ...joints(tile, plan)].map((mark) => markCode(mark, place)),
    'Q',
    ...[boxLine('register', field), ...foot(drawing.title, label)].map((mark) =>
      markCode(mark, onPage),
    ),
  ]);
}

/** Longest line of notes, in letters. */
const mostLetters = 95;

function wrapped(text: string): readonly string[] {
  const lines = [''];
  for (const word of text.split(' ')) {
    const last = lines.at(-1) ?? '';
    if (last !== '' && last.length + 1 + word.length > mostLetters) lines.push(word);
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return lines;
}

/** The first page: the whole drawing small, with its tiles and all that is to be known of it. */
function overviewPage(drawing: Drawing, plan: TilePlan): PdfPage {
  const field = fieldOf(plan);
  const notes = drawing.words.flatMap(wrapped);
  const { left, bottom, right, top } = drawing.box;
  const room = {
    width: field.right - field.left,
    height: field.top - field.bottom - 12 - notes.length * 4.5,
  };
  const scale = Math.min(1, room.width / (right - left), room.height / (top - bottom)) * 0.92;
  const place = {
    x: (field.left + field.right) / 2 - ((left + right) / 2) * scale,
    y: field.bottom + room.height / 2 - ((bottom + top) / 2) * scale,
    scale,
  };
  const tiles = plan.tiles.flatMap(({ window, row, column }): readonly Mark[] => [
    boxLine('seam', window),
    {
      ...words(
        { x: (window.left + window.right) / 2, y: (window.bottom + window.top) / 2 },
        `${String(row)}/${String(column)}`,
      ),
      height: 5 / scale,
      anchor: 'middle',
    },
  ]);
  const shown = drawing.marks.filter((mark) => mark.kind === 'line');
  const count = plan.tiles.length;
  const label = `Overview, not at full size. ${String(count)} ${count === 1 ? 'page follows' : 'pages follow'}, numbered row/column.`;
  return pageOf(plan, [
    'q',
    clip(field),
    ...[...shown, ...tiles].map((mark) => markCode(mark, place)),
    'Q',
    ...[
      words({ x: field.left, y: field.top - 6 }, drawing.title, 4),
      ...notes.map((text, index) =>
        words({ x: field.left, y: field.top - 12 - index * 4.5 }, text),
      ),
      ...foot(drawing.title, label),
    ].map((mark) => markCode(mark, onPage)),
  ]);
}

/**
 * A drawing as a PDF at full size on sheets of paper: an overview, then its tiles, which overlap and
 * bear register marks, their place, and lines to check the printer's scale by.
 */
export function drawingPdf(drawing: Drawing, paper: Paper): Uint8Array {
  const plan = tilePlan(drawing, paper);
  const pages = plan.tiles.map((tile) => tilePage(drawing, tile, plan));
  return pdfFile(drawing.title, [overviewPage(drawing, plan), ...pages]);
}

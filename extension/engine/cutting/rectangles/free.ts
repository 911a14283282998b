import type { Chance } from '../chance.ts';
import { bestFit, first } from './best-fit.ts';
import type { Cutting, Lying, Piece, Ruined, Sheet, SheetStock, Spot } from './sheet.ts';

/** A rectangle of a sheet on which nothing lies; such rectangles overlap each other. */
interface Gap {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

interface FreeSheet extends Sheet {
  readonly lying: readonly Lying[];
  readonly gaps: readonly Gap[];
}

interface FreeSpot extends Spot {
  readonly x: number;
  readonly y: number;
}

function open(stock: SheetStock): FreeSheet {
  const whole = { x: 0, y: 0, length: stock.length, width: stock.width };
  return { stock, used: 0, count: 0, lying: [], gaps: [whole] };
}

function scored(gap: Gap, length: number, width: number, rule: number): number {
  const along = gap.length - length;
  const across = gap.width - width;
  switch (rule) {
    case 0:
      return Math.min(along, across) * first + Math.max(along, across);
    case 1:
      return Math.max(along, across) * first + Math.min(along, across);
    case 2:
      return gap.length * gap.width - length * width + Math.min(along, across) / first;
    case 3:
      return (gap.x + length) * first + gap.y;
    default:
      return (gap.y + width) * first + gap.x;
  }
}

function find(
  { gaps }: FreeSheet,
  piece: Piece,
  rule: number,
  under: number,
): FreeSpot | undefined {
  const best = bestFit(gaps, piece, { scored, rule, under });
  return best && { score: best.score, turned: best.turned, x: best.gap.x, y: best.gap.y };
}

function put(sheet: FreeSheet, piece: Piece, { x, y, turned }: FreeSpot): FreeSheet {
  const length = turned ? piece.width : piece.length;
  const width = turned ? piece.length : piece.width;
  return {
    stock: sheet.stock,
    used: sheet.used + piece.area,
    count: sheet.count + 1,
    lying: [...sheet.lying, { piece, x, y, turned }],
    gaps: gapsAround(sheet.gaps, { x, y, length, width }),
  };
}

/** The gaps that are left when a rectangle is laid: the largest ones, none inside another. */
function gapsAround(gaps: readonly Gap[], laid: Gap): Gap[] {
  const kept: Gap[] = [];
  const cut: Gap[] = [];
  const right = laid.x + laid.length;
  const top = laid.y + laid.width;
  for (const gap of gaps) {
    const isClear =
      laid.x >= gap.x + gap.length || right <= gap.x || laid.y >= gap.y + gap.width || top <= gap.y;
    if (isClear) kept.push(gap);
    else cutInto(gap, laid, cut);
  }
  // A gap that was kept lies in none of the others, so only the new ones are looked at.
  const untouched = kept.length;
  for (let index = 0; index < cut.length; index++) {
    const gap = cut[index];
    if (gap !== undefined && !isInside(gap, kept, untouched) && !isCovered(gap, cut, index)) {
      kept.push(gap);
    }
  }
  return kept;
}

function cutInto({ x, y, length, width }: Gap, laid: Gap, cut: Gap[]): void {
  const right = laid.x + laid.length;
  const top = laid.y + laid.width;
  if (laid.x > x) cut.push({ x, y, length: laid.x - x, width });
  if (right < x + length) cut.push({ x: right, y, length: x + length - right, width });
  if (laid.y > y) cut.push({ x, y, length, width: laid.y - y });
  if (top < y + width) cut.push({ x, y: top, length, width: y + width - top });
}

function isInside(gap: Gap, others: readonly Gap[], end: number): boolean {
  for (let at = 0; at < end; at++) if (holds(others[at], gap)) return true;
  return false;
}

/** Of two equal gaps the first stays. */
function isCovered(gap: Gap, cut: readonly Gap[], index: number): boolean {
  for (let at = 0; at < cut.length; at++) {
    if (at === index || !holds(cut[at], gap)) continue;
    if (at < index || !holds(gap, cut[at])) return true;
  }
  return false;
}

function holds(outer: Gap | undefined, inner: Gap | undefined): boolean {
  return (
    outer !== undefined &&
    inner !== undefined &&
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.length <= outer.x + outer.length &&
    inner.y + inner.width <= outer.y + outer.width
  );
}

function ruin(sheet: FreeSheet, chance: Chance): Ruined<FreeSheet> {
  const goes = ruinRule(sheet, chance);
  const off: Piece[] = [];
  const staying: Lying[] = [];
  for (const one of sheet.lying) {
    if (goes(one)) off.push(one.piece);
    else staying.push(one);
  }
  let gaps = open(sheet.stock).gaps;
  let used = 0;
  let work = sheet.count;
  for (const { piece, x, y, turned } of staying) {
    const length = turned ? piece.width : piece.length;
    const width = turned ? piece.length : piece.width;
    work += gaps.length;
    gaps = gapsAround(gaps, { x, y, length, width });
    used += piece.area;
  }
  const kept = { stock: sheet.stock, used, count: staying.length, lying: staying, gaps };
  return { sheet: kept, off, work };
}

function ruinRule({ stock }: FreeSheet, chance: Chance): (one: Lying) => boolean {
  const way = chance();
  if (way < 0.25) return () => true;
  if (way < 0.6) {
    // What touches a window of the sheet.
    const length = stock.length * (0.2 + 0.6 * chance());
    const width = stock.width * (0.2 + 0.6 * chance());
    const left = (stock.length - length) * chance();
    const low = (stock.width - width) * chance();
    return ({ piece, x, y, turned }) => {
      const along = turned ? piece.width : piece.length;
      const across = turned ? piece.length : piece.width;
      return x < left + length && x + along > left && y < low + width && y + across > low;
    };
  }
  const share = 0.7 * chance();
  return () => chance() < share;
}

/** Pieces may lie anywhere they fit: cut with a jigsaw or a router. */
export const freeCutting: Cutting<FreeSheet, FreeSpot> = {
  rules: 5,
  open,
  find,
  put,
  ruin,
  lying: (sheet) => sheet.lying,
  places: (sheet) => sheet.gaps.length,
};

import { below, type Chance } from '../chance.ts';
import { bestFit, first } from './best-fit.ts';
import type { Cutting, Lying, Piece, Ruined, Sheet, SheetStock, Spot } from './sheet.ts';
import { freeCut, joined, pieceCut, withCut, type Cut, type FreeCut } from './tree.ts';

/** A sheet cut apart by straight cuts from edge to edge. */
export interface SawnSheet extends Sheet {
  readonly cut: Cut;
  /** The free rectangles of the tree. */
  readonly free: readonly FreeCut[];
}

interface SawnSpot extends Spot {
  readonly free: FreeCut;
  /** The first of the two cuts that free the piece runs across the length. */
  readonly across: boolean;
}

function sheetOf(stock: SheetStock, cut: Cut): SawnSheet {
  const free: FreeCut[] = [];
  let used = 0;
  let count = 0;
  const look = (node: Cut): void => {
    if (node.way === 'free') free.push(node);
    else if (node.way === 'piece') {
      used += node.piece.area;
      count += 1;
    } else node.parts.forEach(look);
  };
  look(cut);
  return { stock, used, count, cut, free };
}

// Rules 0 to 2 tell how snugly the piece fits; 3 to 5 are the same with the other cut made first.
function scored(gap: FreeCut, length: number, width: number, rule: number): number {
  const along = gap.length - length;
  const across = gap.width - width;
  switch (rule % 3) {
    case 0:
      return Math.min(along, across) * first + Math.max(along, across);
    case 1:
      return gap.length * gap.width - length * width + Math.min(along, across) / first;
    default:
      return Math.max(along, across) * first + Math.min(along, across);
  }
}

function find(
  { free }: SawnSheet,
  piece: Piece,
  rule: number,
  under: number,
): SawnSpot | undefined {
  const best = bestFit(free, piece, { scored, rule, under });
  if (best === undefined) return undefined;
  const { gap, score, turned } = best;
  const along = gap.length - (turned ? piece.width : piece.length);
  const deep = gap.width - (turned ? piece.length : piece.width);
  return { score, turned, free: gap, across: along > deep === rule < 3 };
}

function put(sheet: SawnSheet, piece: Piece, { free, turned, across }: SawnSpot): SawnSheet {
  const fresh = pieceCut(free, { piece, turned }, across);
  const rest: FreeCut[] = [];
  for (const one of sheet.free) {
    if (one === free) freeIn(fresh, rest);
    else rest.push(one);
  }
  return {
    stock: sheet.stock,
    used: sheet.used + piece.area,
    count: sheet.count + 1,
    cut: withCut(sheet.cut, free, fresh),
    free: rest,
  };
}

function freeIn(node: Cut, found: FreeCut[]): void {
  if (node.way === 'free') found.push(node);
  else if (node.way !== 'piece') for (const part of node.parts) freeIn(part, found);
}

function ruin(sheet: SawnSheet, chance: Chance): Ruined<SawnSheet> {
  const { stock, cut } = sheet;
  const off: Piece[] = [];
  if (chance() < 0.2 || cut.way === 'piece' || cut.way === 'free') {
    takeOff(cut, off);
    return { sheet: sheetOf(stock, freeCut(stock.length, stock.width)), off, work: sheet.count };
  }
  const branches: Cut[] = [];
  const look = (node: Cut): void => {
    if (node.way === 'free') return;
    branches.push(node);
    if (node.way !== 'piece') node.parts.forEach(look);
  };
  cut.parts.forEach(look);
  const doomed = new Set<Cut>();
  for (let times = 1 + below(chance, 4); times > 0; times--) {
    const branch = branches[below(chance, branches.length)];
    if (branch !== undefined) doomed.add(branch);
  }
  return { sheet: sheetOf(stock, without(cut, doomed, off)), off, work: sheet.count };
}

function takeOff(node: Cut, off: Piece[]): void {
  if (node.way === 'piece') off.push(node.piece);
  else if (node.way !== 'free') for (const part of node.parts) takeOff(part, off);
}

function without(node: Cut, doomed: ReadonlySet<Cut>, off: Piece[]): Cut {
  if (doomed.has(node)) {
    takeOff(node, off);
    return freeCut(node.length, node.width);
  }
  if (node.way === 'free' || node.way === 'piece') return node;
  const parts: Cut[] = [];
  let same = true;
  for (const part of node.parts) {
    const rest = without(part, doomed, off);
    if (rest !== part) same = false;
    parts.push(rest);
  }
  return same ? node : joined(node.way, node.length, node.width, parts);
}

function lying(sheet: SawnSheet): readonly Lying[] {
  const found: Lying[] = [];
  const look = (node: Cut, x: number, y: number): void => {
    if (node.way === 'piece') found.push({ piece: node.piece, x, y, turned: node.turned });
    if (node.way === 'piece' || node.way === 'free') return;
    let at = node.way === 'across' ? x : y;
    for (const part of node.parts) {
      if (node.way === 'across') look(part, at, y);
      else look(part, x, at);
      at += node.way === 'across' ? part.length : part.width;
    }
  };
  look(sheet.cut, 0, 0);
  return found;
}

/** Every cut runs straight from edge to edge of what is left: a table or panel saw. */
export const guillotineCutting: Cutting<SawnSheet, SawnSpot> = {
  rules: 6,
  open: (stock) => sheetOf(stock, freeCut(stock.length, stock.width)),
  find,
  put,
  ruin,
  lying,
  places: (sheet) => sheet.free.length,
};

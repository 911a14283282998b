import type { Chance } from '../chance.ts';
import type { Cutting, Piece, Sheet, SheetStock, Spot } from './sheet.ts';

/** A table of sheets in the making. */
export interface Table<Own extends Sheet> {
  readonly sheets: readonly Own[];
  /** Pieces that found no place. */
  readonly left: readonly Piece[];
  readonly price: number;
}

/** Counts places looked at: the one measure of work, for a clock would differ between machines. */
export interface Work {
  done: number;
}

type Key = (piece: Piece) => number;

/** Orders in which pieces are laid, the largest first by each measure. */
const orders: readonly Key[] = [
  ({ area }) => area,
  ({ length, width }) => Math.max(length, width) * 2 ** 22 + Math.min(length, width),
  ({ length, width }) => Math.min(length, width) * 2 ** 22 + Math.max(length, width),
  ({ length, width }) => length + width,
  ({ width, length }) => width * 2 ** 22 + length,
  ({ width, length }) => length * 2 ** 22 + width,
];

// Up to so many pieces, each is slid into its place among those before it.
const few = 24;

/** Pieces in one of six orders; with `noise`, each measure is off by up to that share by chance. */
export function ordered(
  pieces: readonly Piece[],
  order: number,
  noise?: { readonly chance: Chance; readonly share: number },
): readonly Piece[] {
  const key = orders[order % orders.length] ?? (({ area }: Piece) => area);
  const keyed = pieces.map((piece) => ({
    piece,
    key: key(piece) * (noise === undefined ? 1 : 1 + noise.share * (noise.chance() - 0.5)),
  }));
  if (keyed.length > few) keyed.sort((a, b) => b.key - a.key || a.piece.index - b.piece.index);
  else slidIn(keyed);
  return keyed.map(({ piece }) => piece);
}

interface Keyed {
  readonly piece: Piece;
  readonly key: number;
}

function slidIn(keyed: Keyed[]): void {
  for (let at = 1; at < keyed.length; at++) {
    const own = keyed[at];
    if (own === undefined) continue;
    let to = at;
    for (; to > 0; to--) {
      const before = keyed[to - 1];
      if (before === undefined || !isAfter(before, own)) break;
      keyed[to] = before;
    }
    keyed[to] = own;
  }
}

function isAfter(a: Keyed, b: Keyed): boolean {
  return a.key < b.key || (a.key === b.key && a.piece.index > b.piece.index);
}

export const orderCount = orders.length;

/** Lays pieces one after another on the sheets given, each where it fits best; the rest is left. */
export function laidOn<Own extends Sheet, Place extends Spot>(
  cutting: Cutting<Own, Place>,
  start: readonly Own[],
  pieces: readonly Piece[],
  how: { readonly rule: number; readonly work: Work; readonly skips?: Chance },
): { readonly sheets: Own[]; readonly left: Piece[] } {
  const sheets = [...start];
  const left: Piece[] = [];
  for (const piece of pieces) {
    let best: Place | undefined;
    let at = -1;
    for (let index = 0; index < sheets.length; index++) {
      const sheet = sheets[index];
      if (sheet === undefined || sheet.used + piece.area > sheet.stock.area) continue;
      how.work.done += cutting.places(sheet) + 1;
      if (how.skips !== undefined && how.skips() < 0.02) continue;
      const spot = cutting.find(sheet, piece, how.rule, best === undefined ? Infinity : best.score);
      if (spot === undefined) continue;
      best = spot;
      at = index;
    }
    const sheet = sheets[at];
    if (best === undefined || sheet === undefined) left.push(piece);
    else {
      sheets[at] = cutting.put(sheet, piece, best);
      how.work.done += cutting.places(sheet);
    }
  }
  return { sheets, left };
}

/**
 * Opens sheet after sheet, each time of the stock on which the pieces left cost least for their area,
 * until every piece lies or no stock takes what is left.
 */
export function filled<Own extends Sheet, Place extends Spot>(
  cutting: Cutting<Own, Place>,
  stocks: readonly SheetStock[],
  pieces: readonly Piece[],
  how: { readonly rule: number; readonly work: Work },
): Table<Own> {
  const sheets: Own[] = [];
  const opened = stocks.map(() => 0);
  let left: readonly Piece[] = pieces;
  let price = 0;
  while (left.length > 0) {
    let best: { sheet: Own; left: Piece[]; worth: number } | undefined;
    for (const stock of stocks) {
      if ((opened[stock.index] ?? 0) >= stock.limit) continue;
      const laid = laidOn(cutting, [cutting.open(stock)], left, how);
      const [sheet] = laid.sheets;
      if (sheet === undefined || sheet.count === 0) continue;
      const worth = worthOf(sheet);
      if (best === undefined || worth > best.worth) best = { sheet, left: laid.left, worth };
    }
    if (best === undefined) break;
    sheets.push(best.sheet);
    opened[best.sheet.stock.index] = (opened[best.sheet.stock.index] ?? 0) + 1;
    price += best.sheet.stock.price;
    left = best.left;
  }
  return { sheets, left, price };
}

// Sheets that cost nothing go first, the fuller the better.
function worthOf({ used, stock }: Sheet): number {
  const full = used / stock.area;
  return stock.price > 0 ? used / stock.price : 1e15 * (1 + full);
}

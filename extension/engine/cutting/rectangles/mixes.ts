import { sheetBound } from './bound.ts';
import type { Piece, SheetStock } from './sheet.ts';

/** Sheets that together may hold all pieces, and what they cost. */
export interface Mix {
  readonly sheets: readonly SheetStock[];
  readonly price: number;
  /** What they are reckoned to take: the more, the easier all pieces come to lie on them. */
  readonly room: number;
}

/** Mixes that may do. */
export interface Possible {
  /** The roomiest first. */
  readonly found: readonly Mix[];
  /** Whether no other mix can do. */
  readonly all: boolean;
}

/** Mixes of stocks for one set of pieces. */
export interface Mixes {
  /** Those cheaper than a price that are not known to be impossible. */
  readonly below: (price: number) => Possible;
  /** The price that no layout is cheaper than, where one of `price` is known. */
  readonly leastPrice: (price: number) => number;
}

/** With many sheets there are too many mixes: after so many steps, those found must do. */
const mostLooked = 20_000;

// At the edges of a sheet this much of a piece's side is lost.
const lost = 0.2;

// Beyond so many sheets, the sheet around them all says nothing about them any more.
const mostDoubted = 3;

/** Mixes of these stocks that have the area for all pieces. */
export function openMixes(pieces: readonly Piece[], stocks: readonly SheetStock[]): Mixes {
  const area = pieces.reduce((sum, piece) => sum + piece.area, 0);
  const edge = lost * Math.sqrt(area / Math.max(1, pieces.length));
  const rooms = stocks.map((one) => Math.max(0, one.length - edge) * Math.max(0, one.width - edge));
  const isImpossible = openDoubts(pieces);
  const looked = (below: number): Look => {
    const counts = stocks.map(() => 0);
    const most = pieces.length;
    const look: Look = { stocks, rooms, below, area, most, counts, found: [], looked: 0 };
    addStock(look, 0, { price: 0, area: 0, room: 0 });
    return look;
  };
  return {
    below: (price) => {
      const look = looked(price);
      const found = look.found.filter((mix) => !isImpossible(mix.sheets));
      return { found: found.sort((a, b) => b.room - a.room), all: look.looked < mostLooked };
    },
    leastPrice: (price) => {
      const look = looked(price);
      if (look.looked >= mostLooked) return 0;
      const byPrice = look.found.sort((a, b) => a.price - b.price);
      return byPrice.find((mix) => !isImpossible(mix.sheets))?.price ?? price;
    },
  };
}

interface Look {
  readonly stocks: readonly SheetStock[];
  readonly rooms: readonly number[];
  readonly below: number;
  readonly area: number;
  /** Sheets beyond one for each piece are of no use. */
  readonly most: number;
  readonly counts: number[];
  readonly found: Mix[];
  looked: number;
}

interface Sum {
  readonly price: number;
  readonly area: number;
  readonly room: number;
}

function addStock(look: Look, at: number, sum: Sum): void {
  if (look.looked >= mostLooked) return;
  look.looked += 1;
  const stock = look.stocks[at];
  if (stock === undefined) {
    if (sum.area < look.area) return;
    const sheets = look.stocks.flatMap((one, index) =>
      Array<SheetStock>(look.counts[index] ?? 0).fill(one),
    );
    look.found.push({ sheets, price: sum.price, room: sum.room });
    return;
  }
  for (let count = 0; count <= Math.min(stock.limit, look.most); count++) {
    const price = sum.price + count * stock.price;
    if (price >= look.below) break;
    look.counts[at] = count;
    addStock(look, at + 1, {
      price,
      area: sum.area + count * stock.area,
      room: sum.room + count * (look.rooms[at] ?? 0),
    });
  }
  look.counts[at] = 0;
}

/**
 * Whether pieces can not lie on a few sheets: one of them fits on none, or even sheets as long as the
 * longest and as wide as the widest would have to be more.
 */
function openDoubts(pieces: readonly Piece[]): (sheets: readonly SheetStock[]) => boolean {
  const known = new Map<string, number>();
  return (sheets) => {
    const lies = ({ length, width, turns }: Piece): boolean =>
      sheets.some(
        (sheet) =>
          (length <= sheet.length && width <= sheet.width) ||
          (turns && width <= sheet.length && length <= sheet.width),
      );
    if (!pieces.every(lies)) return true;
    if (sheets.length > mostDoubted) return false;
    const length = Math.max(...sheets.map((sheet) => sheet.length));
    const width = Math.max(...sheets.map((sheet) => sheet.width));
    const key = `${length}×${width}`;
    const least = known.get(key) ?? sheetBound(pieces, { length, width });
    known.set(key, least);
    return least > sheets.length;
  };
}

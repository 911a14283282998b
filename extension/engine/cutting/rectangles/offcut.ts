import { laidOn, ordered, orderCount, type Table, type Work } from './greedy.ts';
import type { Cutting, Lying, Piece, Sheet, Spot } from './sheet.ts';

/** The largest rectangle of a sheet that no piece touches, in square thousandths of a millimetre. */
export function largestOffcut(sheet: Sheet, lying: readonly Lying[]): number {
  const { length, width } = sheet.stock;
  const boxes = lying.map(({ piece, x, y, turned }) => ({
    left: x,
    low: y,
    right: x + (turned ? piece.width : piece.length),
    high: y + (turned ? piece.length : piece.width),
  }));
  const lefts = [0, ...boxes.map(({ right }) => right)];
  let best = 0;
  for (const left of new Set(lefts)) best = Math.max(best, beyond(left, { length, width }, boxes));
  return best;
}

interface Edges {
  readonly left: number;
  readonly low: number;
  readonly right: number;
  readonly high: number;
}

// From a left edge the free band is narrowed by one box after another, in the order they begin.
function beyond(
  left: number,
  size: { readonly length: number; readonly width: number },
  boxes: readonly Edges[],
): number {
  const ahead = boxes.filter(({ right }) => right > left).sort((a, b) => a.left - b.left);
  const lows = [0, ...ahead.map(({ high }) => high)];
  let best = 0;
  for (const low of new Set(lows)) {
    let high = size.width;
    for (const box of ahead) {
      if (box.high <= low || box.low >= high) continue;
      const reach = Math.max(left, box.left);
      best = Math.max(best, (reach - left) * (high - low));
      if (reach === left || box.low <= low) {
        high = low;
        break;
      }
      high = box.low;
    }
    if (high > low) best = Math.max(best, (size.length - left) * (high - low));
  }
  return best;
}

/**
 * The same sheets with the least used of them laid anew, so that the offcut that can be kept is as
 * large as it gets. What fits on fuller sheets moves there first.
 */
export function gathered<Own extends Sheet, Place extends Spot>(
  cutting: Cutting<Own, Place>,
  table: Table<Own>,
  work: Work,
): Table<Own> {
  const sheets = [...table.sheets].sort((a, b) => b.used / b.stock.area - a.used / a.stock.area);
  const last = sheets.pop();
  if (last === undefined || last.count > mostPieces) return table;
  const pieces = cutting.lying(last).map(({ piece }) => piece);
  const moved = laidOn(cutting, sheets, ordered(pieces, 0), { rule: 0, work });
  return {
    ...table,
    sheets: [...moved.sheets, emptiest(cutting, last, { pieces: moved.left, work })],
  };
}

// A sheet of very many pieces is left as it is: what it leaves is small.
const mostPieces = 60;

function emptiest<Own extends Sheet, Place extends Spot>(
  cutting: Cutting<Own, Place>,
  sheet: Own,
  { pieces, work }: { readonly pieces: readonly Piece[]; readonly work: Work },
): Own {
  let best = pieces.length === sheet.count ? sheet : undefined;
  let most = best === undefined ? -1 : largestOffcut(best, cutting.lying(best));
  for (let rule = 0; rule < cutting.rules; rule++) {
    for (let order = 0; order < orderCount; order++) {
      const laid = laidOn(cutting, [cutting.open(sheet.stock)], ordered(pieces, order), {
        rule,
        work,
      });
      const [own] = laid.sheets;
      if (own === undefined || laid.left.length > 0) continue;
      const offcut = largestOffcut(own, cutting.lying(own));
      if (offcut > most) [best, most] = [own, offcut];
    }
  }
  return best ?? sheet;
}

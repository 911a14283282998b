import { budgetOf } from '../budgets.ts';
import { chanceFrom } from '../chance.ts';
import type {
  CutAnswer,
  Part,
  Placement,
  RectanglesInstance,
  Report,
  SawCut,
  Stock,
} from '../instance.ts';
import { fewestMoney } from '../packs/cheapest-packs.ts';
import { unplacedParts } from '../unplaced.ts';
import { plainSheetBound, sheetBound } from './bound.ts';
import { freeCutting } from './free.ts';
import type { Table, Work } from './greedy.ts';
import { guillotineCutting, type SawnSheet } from './guillotine.ts';
import { gathered } from './offcut.ts';
import { sawCuts } from './saw-cuts.ts';
import { openMixes } from './mixes.ts';
import { bestGreedy, improved, type SearchInput } from './search.ts';
import type { Cutting, Piece, Sheet, SheetStock, Spot } from './sheet.ts';

/** Rectangles are reckoned in whole thousandths of a millimetre, so that sums are exact. */
const fine = 1000;

function whole(mm: number): number {
  return Math.round(mm * fine);
}

/** The ways a part may lie: along the stock, across it, with the turn that is told for each. */
function waysOf({ rotations = [0, 90, 180, 270] }: Part): {
  readonly straight: number | undefined;
  readonly turned: number | undefined;
} {
  return {
    straight: rotations.find((turn) => turn % 180 === 0),
    turned: rotations.find((turn) => Math.abs(turn % 180) === 90),
  };
}

interface Own {
  readonly part: Part;
  readonly ways: ReturnType<typeof waysOf>;
}

interface Pieces {
  readonly list: readonly Piece[];
  readonly owners: readonly Own[];
  readonly unfit: readonly Part[];
}

function piecesOf({ parts, kerf = 0 }: RectanglesInstance, stocks: readonly SheetStock[]): Pieces {
  const list: Piece[] = [];
  const owners: Own[] = [];
  const unfit: Part[] = [];
  for (const part of parts) {
    const ways = waysOf(part);
    // A part that may only lie turned is taken as if its sides were exchanged.
    const onlyTurned = ways.straight === undefined;
    const length = whole((onlyTurned ? part.width : part.length) + kerf);
    const width = whole((onlyTurned ? part.length : part.width) + kerf);
    const turns = !onlyTurned && ways.turned !== undefined && length !== width;
    const fits = stocks.some(
      (stock) =>
        stock.limit > 0 &&
        ((length <= stock.length && width <= stock.width) ||
          (turns && width <= stock.length && length <= stock.width)),
    );
    for (let count = 0; count < part.count; count++) {
      if (!fits) unfit.push(part);
      else {
        list.push({ index: list.length, length, width, area: length * width, turns });
        owners.push({ part, ways });
      }
    }
  }
  return { list, owners, unfit };
}

function stocksOf({ stocks, kerf = 0, trim = 0 }: RectanglesInstance): readonly SheetStock[] {
  // Without any price the fewest sheets are wanted, and of those the least area.
  const unpriced = stocks.every(({ price }) => price === 0);
  return stocks.map((stock, index) => {
    const length = whole(stock.length - 2 * trim + kerf);
    const width = whole(stock.width - 2 * trim + kerf);
    const price = unpriced ? 1 : stock.price;
    return { index, length, width, area: length * width, price, limit: stock.limit ?? Infinity };
  });
}

// Which sheets to open is a question of its own, and takes as much work again.
const perMixes = 2;

interface Bounds {
  readonly count: number;
  readonly price: number;
}

function boundsOf(
  pieces: readonly Piece[],
  stocks: readonly SheetStock[],
  bound = sheetBound,
): Bounds {
  const [only] = stocks;
  if (pieces.length === 0 || only === undefined) return { count: 0, price: 0 };
  if (stocks.length === 1) {
    const count = bound(pieces, only);
    return { count, price: count * only.price };
  }
  const area = pieces.reduce((sum, piece) => sum + piece.area, 0);
  const offers = stocks.map(({ index, area: holds, price, limit }) => ({
    id: String(index),
    holds,
    price,
    ...(limit === Infinity ? {} : { limit }),
  }));
  const largest = Math.max(...stocks.map((stock) => stock.area));
  const cheapest = fewestMoney(area, offers, 0);
  return { count: Math.ceil(area / largest - 1e-9), price: cheapest?.cost ?? 0 };
}

/** What no layout is below, as far as areas and dual feasible functions tell. */
export function leastSheets(instance: RectanglesInstance): Bounds {
  const stocks = stocksOf(instance).filter(({ length, width }) => length > 0 && width > 0);
  return boundsOf(piecesOf(instance, stocks).list, stocks);
}

/**
 * Lays rectangles on sheets at least price, then with fewest sheets, then with the largest offcut
 * left on one of them. Every answer is a layout that can be cut; with the saw, by straight cuts from
 * edge to edge.
 */
export function layRectangles(instance: RectanglesInstance, report?: Report): CutAnswer {
  return instance.method === 'free'
    ? laid(instance, freeCutting, report)
    : laid(instance, guillotineCutting, report);
}

function laid<Own extends Sheet, Place extends Spot>(
  instance: RectanglesInstance,
  cutting: Cutting<Own, Place>,
  report?: Report,
): CutAnswer {
  const stocks = stocksOf(instance).filter(({ length, width }) => length > 0 && width > 0);
  const pieces = piecesOf(instance, stocks);
  const several = stocks.length > 1 && instance.effort !== 'quick';
  const input = {
    cutting,
    stocks,
    pieces: pieces.list,
    budget: budgetOf(instance.effort, pieces.list.length) * (several ? perMixes : 1),
    chance: chanceFrom(instance.seed ?? 1),
    ...(report === undefined ? {} : { report }),
  };
  const { bounds, start, work } = started(input);
  const mixes = several && start.left.length === 0 ? openMixes(pieces.list, stocks) : undefined;
  const price = Math.max(bounds.price, mixes?.leastPrice(start.price) ?? 0);
  const better = improved({ ...input, bound: price, ...(mixes && { mixes }) }, start, work);
  const table = gathered(cutting, better, work);
  return answerOf(instance, { cutting, table, pieces, bounds: { ...bounds, price } });
}

/**
 * The best layout of many found at once, with the bounds it is measured against. The better bound is a
 * longer reckoning: it is not asked where the plain one is reached, which it then equals.
 */
function started<Own extends Sheet, Place extends Spot>(
  input: Omit<SearchInput<Own, Place>, 'bound'>,
): { readonly bounds: Bounds; readonly start: Table<Own>; readonly work: Work } {
  const { pieces, stocks } = input;
  const against = (bounds: Bounds) => {
    const work: Work = { done: 0 };
    return { bounds, start: bestGreedy({ ...input, bound: bounds.price }, work), work };
  };
  const plainly = against(boundsOf(pieces, stocks, plainSheetBound));
  const { start, bounds } = plainly;
  if (stocks.length !== 1 || (start.left.length === 0 && start.price <= bounds.price))
    return plainly;
  const better = boundsOf(pieces, stocks);
  return better.count === bounds.count ? plainly : against(better);
}

interface Found<Own extends Sheet, Place extends Spot> {
  readonly cutting: Cutting<Own, Place>;
  readonly table: Table<Own>;
  readonly pieces: Pieces;
  readonly bounds: Bounds;
}

function answerOf<Own extends Sheet, Place extends Spot>(
  instance: RectanglesInstance,
  { cutting, table, pieces, bounds }: Found<Own, Place>,
): CutAnswer {
  const { kerf = 0, trim = 0 } = instance;
  const placements: Placement[] = [];
  const cuts: SawCut[] = [];
  const sheets = table.sheets.map((sheet, index) => {
    const stock = instance.stocks[sheet.stock.index];
    let used = 0;
    for (const { piece, x, y, turned } of cutting.lying(sheet)) {
      const own = pieces.owners[piece.index];
      if (own === undefined || stock === undefined) continue;
      const placed = placementOf(own, { index, stock, turned });
      used += placed.length * placed.width;
      placements.push({ ...placed, x: x / fine + trim, y: y / fine + trim });
    }
    if (isSawn(sheet)) cuts.push(...sawCuts(sheet.cut, { index, kerf: whole(kerf), trim }));
    const area = (stock?.length ?? 0) * (stock?.width ?? 0);
    return { stock: stock?.id ?? '', utilisation: used / area, area, used };
  });
  const price = sheets.reduce((sum, _, index) => sum + priceAt(instance, table, index), 0);
  const area = sheets.reduce((sum, sheet) => sum + sheet.area, 0);
  const left = table.left.flatMap(({ index }) => pieces.owners[index]?.part ?? []);
  const unplaced = unplacedParts([...pieces.unfit, ...left]);
  const unpriced = instance.stocks.every((stock) => stock.price === 0);
  const priceBound = unpriced ? 0 : bounds.price;
  return {
    kind: 'rectangles',
    count: sheets.length,
    price,
    bound: bounds.count,
    priceBound,
    proven:
      unplaced.length === 0 && (unpriced ? sheets.length <= bounds.count : price <= priceBound),
    utilisation: area === 0 ? 0 : sheets.reduce((sum, { used }) => sum + used, 0) / area,
    sheets: sheets.map(({ stock, utilisation }) => ({ stock, utilisation })),
    placements,
    patterns: [],
    cuts,
    unplaced,
  };
}

function isSawn(sheet: Sheet): sheet is SawnSheet {
  return 'cut' in sheet;
}

function priceAt(instance: RectanglesInstance, table: Table<Sheet>, index: number): number {
  return instance.stocks[table.sheets[index]?.stock.index ?? -1]?.price ?? 0;
}

function placementOf(
  { part, ways }: Own,
  lying: { readonly index: number; readonly stock: Stock; readonly turned: boolean },
): Omit<Placement, 'x' | 'y'> {
  const across = lying.turned || ways.straight === undefined;
  return {
    part: part.id,
    stock: lying.stock.id,
    index: lying.index,
    rotation: (across ? ways.turned : ways.straight) ?? 0,
    mirrored: false,
    length: across ? part.width : part.length,
    width: across ? part.length : part.width,
  };
}

import type { CutAnswer, Fixed, Part, Placement, SawCut, Stock } from '../instance.ts';
import { loopsArea, partLoops } from '../outlines/part-loops.ts';
import { blockOf, heldPlacement, sheetBlock, type SheetsInstance } from './fixed-box.ts';
import { fittingFixed } from './fitting.ts';
import { roomsAround, type Block, type Rooms } from './rooms.ts';

/** A sheet on which parts are held, with the room around them. */
interface HeldSheet {
  readonly stock: Stock;
  readonly index: number;
  readonly fixed: readonly Fixed[];
  readonly around: Rooms;
}

/** A room by the name that it has as a stock of its own. */
interface Room {
  readonly sheet: number;
  readonly block: Block;
}

const fine = 1000;

/**
 * A layout in which parts stay where they are held: the rooms around them are stocks that cost nothing
 * and are laid together with fresh sheets. What can not stay is laid like any other part.
 *
 * @param least what no layout of the same parts is below, held or not
 */
export function layHeld(
  instance: SheetsInstance,
  how: {
    readonly lay: (instance: SheetsInstance) => CutAnswer;
    readonly least: { readonly count: number; readonly price: number };
  },
): CutAnswer {
  const { kept } = fittingFixed(instance, instance.fixed ?? []);
  const bare = withoutFixed(instance);
  if (kept.length === 0) return how.lay(bare);
  const held = heldSheets(instance, kept);
  const rooms = new Map<string, Room>();
  held.forEach(({ around }, sheet) => {
    for (const block of around.rooms)
      rooms.set(`held ${String(sheet)} ${String(rooms.size)}`, { sheet, block });
  });
  const answer = how.lay(withRooms(bare, held, rooms));
  return joinedAnswer(instance, { held, rooms, answer, least: how.least });
}

function withoutFixed(instance: SheetsInstance): SheetsInstance {
  const { fixed, ...bare } = instance;
  return fixed === undefined ? instance : bare;
}

function heldSheets(instance: SheetsInstance, kept: readonly Fixed[]): readonly HeldSheet[] {
  const indices = [...new Set(kept.map(({ index }) => index))].sort((a, b) => a - b);
  return indices.flatMap((index) => {
    const fixed = kept.filter((one) => one.index === index);
    const stock = instance.stocks.find(({ id }) => id === fixed[0]?.stock);
    if (stock === undefined) return [];
    const blocks = fixed.flatMap((one) => {
      const part = instance.parts.find(({ id }) => id === one.part);
      return part === undefined ? [] : [blockOf(one, part, instance)];
    });
    return [{ stock, index, fixed, around: roomsAround(sheetBlock(stock, instance), blocks) }];
  });
}

/** The instance without what is held, and with the rooms as stocks that cost nothing. */
function withRooms(
  bare: SheetsInstance,
  held: readonly HeldSheet[],
  rooms: ReadonlyMap<string, Room>,
): SheetsInstance {
  const { kerf = 0, trim = 0 } = bare;
  const unpriced = isUnpriced(bare);
  const stocks = bare.stocks.map((stock): Stock => {
    const used = held.filter((one) => one.stock === stock).length;
    const left = stock.limit === undefined ? {} : { limit: stock.limit - used };
    return { ...stock, ...(unpriced ? { price: 1 } : {}), ...left };
  });
  const fixed = held.flatMap((one) => one.fixed);
  const parts = bare.parts
    .map((part): Part => {
      const own = fixed.filter((one) => one.part === part.id).length;
      return own === 0 ? part : { ...part, count: part.count - own };
    })
    .filter(({ count }) => count > 0);
  const least = Math.min(...parts.map(({ length, width }) => Math.min(length, width)));
  const sized = [...rooms].map(([id, { block }]): Stock => {
    const length = block.length / fine - kerf + 2 * trim;
    const width = block.width / fine - kerf + 2 * trim;
    return { id, length, width, price: 0, limit: 1 };
  });
  // Strips that take no part at all would only slow the search down.
  const useful = sized.filter(
    ({ length, width }) => Math.min(length, width) - 2 * trim >= least - 1e-6,
  );
  return { ...bare, stocks: [...stocks, ...useful], parts };
}

function isUnpriced({ stocks }: SheetsInstance): boolean {
  return stocks.every(({ price }) => price === 0);
}

interface Joining {
  readonly held: readonly HeldSheet[];
  readonly rooms: ReadonlyMap<string, Room>;
  readonly answer: CutAnswer;
  readonly least: { readonly count: number; readonly price: number };
}

function joinedAnswer(instance: SheetsInstance, joining: Joining): CutAnswer {
  const { held, answer, least } = joining;
  const order = sheetOrder(instance, joining);
  const placements = placedAgain(instance, joining, order);
  const sheets = order.map(({ stock }, index) => {
    const own = placements.filter((one) => one.index === index);
    const area = stock.length * stock.width;
    return { stock: stock.id, used: usedBy(instance, own), area };
  });
  const area = sheets.reduce((sum, one) => sum + one.area, 0);
  const used = sheets.reduce((sum, one) => sum + one.used, 0);
  const unpriced = isUnpriced(instance);
  const sunk = held.reduce((sum, { stock }) => sum + stock.price, 0);
  const price = unpriced ? 0 : sunk + answer.price;
  const met = unpriced ? sheets.length <= least.count : price <= least.price;
  return {
    ...answer,
    count: sheets.length,
    price,
    bound: least.count,
    priceBound: unpriced ? 0 : least.price,
    proven: answer.unplaced.length === 0 && met,
    utilisation: used / Math.max(1, area),
    sheets: sheets.map((one) => ({ stock: one.stock, utilisation: one.used / one.area })),
    placements,
    cuts: cutsAgain(instance, joining, order),
  };
}

/** A sheet of the whole layout: one on which parts are held, or the answer's own by its index. */
type Ordered =
  | { readonly stock: Stock; readonly held: number }
  | { readonly stock: Stock; readonly fresh: number };

/** Held sheets at the place that they are held at, as far as there are so many sheets. */
function sheetOrder(
  { stocks }: SheetsInstance,
  { held, rooms, answer }: Joining,
): readonly Ordered[] {
  const fresh = answer.sheets.flatMap(({ stock }, index) => (rooms.has(stock) ? [] : [index]));
  const found: Ordered[] = [];
  const waiting = held.map(({ index, stock }, at) => ({ index, stock, held: at }));
  while (waiting.length > 0 || fresh.length > 0) {
    const [next] = waiting;
    if (next !== undefined && (next.index <= found.length || fresh.length === 0)) {
      found.push({ stock: next.stock, held: next.held });
      waiting.shift();
      continue;
    }
    const index = fresh.shift() ?? 0;
    const stock = stocks.find(({ id }) => id === answer.sheets[index]?.stock);
    if (stock !== undefined) found.push({ stock, fresh: index });
  }
  return found;
}

/** Where a sheet of the answer, or the room that it is, lies in the whole layout. */
function placeOf(
  index: number,
  { rooms, answer }: Joining,
  order: readonly Ordered[],
): { readonly index: number; readonly x: number; readonly y: number } {
  const room = rooms.get(answer.sheets[index]?.stock ?? '');
  const at = order.findIndex((one) =>
    'fresh' in one ? one.fresh === index : one.held === room?.sheet,
  );
  return { index: at, x: (room?.block.x ?? 0) / fine, y: (room?.block.y ?? 0) / fine };
}

function placedAgain(
  instance: SheetsInstance,
  joining: Joining,
  order: readonly Ordered[],
): readonly Placement[] {
  const laid = joining.answer.placements.map((one): Placement => {
    const { index, x, y } = placeOf(one.index, joining, order);
    return { ...one, index, stock: order[index]?.stock.id ?? '', x: one.x + x, y: one.y + y };
  });
  const held = order.flatMap((one, index) =>
    'fresh' in one
      ? []
      : (joining.held[one.held]?.fixed ?? []).flatMap((fixed) => {
          const part = instance.parts.find(({ id }) => id === fixed.part);
          return part === undefined ? [] : [heldPlacement(fixed, part, index)];
        }),
  );
  return [...held, ...laid].sort((a, b) => a.index - b.index);
}

function usedBy({ parts }: SheetsInstance, placements: readonly Placement[]): number {
  const areas = new Map(parts.map((part) => [part.id, loopsArea(partLoops(part))]));
  return placements.reduce((sum, { part }) => sum + (areas.get(part) ?? 0), 0);
}

/** The cuts that open the rooms, then those of each room; the saw's only. */
function cutsAgain(
  instance: SheetsInstance,
  joining: Joining,
  order: readonly Ordered[],
): readonly SawCut[] {
  if (instance.kind !== 'rectangles' || instance.method === 'free') return [];
  const { kerf = 0, trim = 0 } = instance;
  const opening = order.flatMap((one, index) =>
    'fresh' in one
      ? []
      : (joining.held[one.held]?.around.cuts ?? []).map(({ way, at, from, to }) => ({
          index,
          way,
          at: at / fine - kerf + trim,
          from: from / fine + trim,
          to: to / fine - kerf + trim,
        })),
  );
  const laid = joining.answer.cuts.map((cut): SawCut => {
    const { index, x, y } = placeOf(cut.index, joining, order);
    const [along, across] = cut.way === 'across' ? [x, y] : [y, x];
    return { ...cut, index, at: cut.at + along, from: cut.from + across, to: cut.to + across };
  });
  return [...opening, ...laid].sort((a, b) => a.index - b.index);
}

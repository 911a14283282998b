import type { Fixed, Part, Stock } from '../instance.ts';
import { turnedLoops } from '../outlines/forms.ts';
import { loopsMeet } from '../outlines/loops-meet.ts';
import { grownLoops, partLoops } from '../outlines/part-loops.ts';
import type { Loops } from '../outlines/shape-rows.ts';
import { blockOf, sheetBlock, thousandths, type HeldInstance } from './fixed-box.ts';
import { roomsAround, type Block } from './rooms.ts';

/** Why a part can not stay where it is held. */
export type Misfit = 'part' | 'stock' | 'turn' | 'edge' | 'other' | 'sheet' | 'saw' | 'repeat';

export interface Fitting {
  readonly kept: readonly Fixed[];
  readonly refused: readonly {
    readonly fixed: Fixed;
    readonly why: Misfit;
    /** The held part that it meets. */
    readonly other?: string;
  }[];
}

interface Kept {
  readonly fixed: Fixed;
  readonly part: Part;
  readonly block: Block;
}

/**
 * Which held parts can stay, looked at one after another: each must be a part that is asked for, lie
 * on a stock as it may be turned, between the edges, clear of those before it, and come free by straight
 * cuts where a saw cuts.
 */
export function fittingFixed(instance: HeldInstance, wanted: readonly Fixed[]): Fitting {
  const kept: Kept[] = [];
  const refused: Fitting['refused'][number][] = [];
  for (const fixed of wanted) {
    const part = instance.parts.find(({ id }) => id === fixed.part);
    const stock = instance.stocks.find(({ id }) => id === fixed.stock);
    const found = misfit(instance, fixed, { part, stock, kept });
    if (found === undefined && part !== undefined)
      kept.push({ fixed, part, block: blockOf(fixed, part, instance) });
    else refused.push({ fixed, why: 'part', ...found });
  }
  return { kept: kept.map(({ fixed }) => fixed), refused };
}

interface Around {
  readonly part: Part | undefined;
  readonly stock: Stock | undefined;
  readonly kept: readonly Kept[];
}

type Found = { readonly why: Misfit; readonly other?: string } | undefined;

function misfit(instance: HeldInstance, fixed: Fixed, { part, stock, kept }: Around): Found {
  const held = kept.filter((one) => one.fixed.part === fixed.part).length;
  if (part === undefined || held >= part.count) return { why: 'part' };
  if (stock === undefined || !hasSheet(fixed, stock, kept)) return { why: 'stock' };
  if (instance.kind === 'bolt' && fixed.index > 0) return { why: 'stock' };
  if (!(part.rotations ?? [0, 90, 180, 270]).includes(fixed.rotation)) return { why: 'turn' };
  const block = blockOf(fixed, part, instance);
  if (!isOnRepeat(block, instance)) return { why: 'repeat' };
  const sheet = sheetBlock(stock, instance);
  return isWithin(block, sheet)
    ? misfitBeside(instance, { fixed, part, block }, { kept, sheet })
    : { why: 'edge' };
}

function misfitBeside(
  instance: HeldInstance,
  own: Kept,
  { kept, sheet }: { readonly kept: readonly Kept[]; readonly sheet: Block },
): Found {
  const { fixed, block } = own;
  const beside = kept.filter((one) => one.fixed.index === fixed.index);
  if (beside.some((one) => one.fixed.stock !== fixed.stock)) return { why: 'sheet' };
  const met = beside.find((one) => meet(instance, one, own));
  if (met !== undefined) return { why: 'other', other: met.fixed.id };
  const sawn = instance.kind === 'rectangles' && instance.method !== 'free';
  const blocks = [...beside.map((one) => one.block), block];
  return sawn && !roomsAround(sheet, blocks).sawn ? { why: 'saw' } : undefined;
}

/** Whether a piece of patterned cloth begins at a whole repeat. */
function isOnRepeat({ x, y }: Block, instance: HeldInstance): boolean {
  if (instance.kind !== 'bolt') return true;
  const isWhole = (at: number, mm = 0): boolean => {
    const step = thousandths(mm);
    // What was written is rounded.
    return step <= 1 || Math.min(at % step, step - (at % step)) <= 1;
  };
  return isWhole(x, instance.repeat?.along) && isWhole(y, instance.repeat?.across);
}

/** Whether the sheet is one of those opened by others, or one more that there is. */
function hasSheet(fixed: Fixed, stock: Stock, kept: readonly Kept[]): boolean {
  const own = kept.filter((one) => one.fixed.stock === stock.id).map((one) => one.fixed.index);
  return new Set([...own, fixed.index]).size <= (stock.limit ?? Infinity);
}

function isWithin(block: Block, sheet: Block): boolean {
  return (
    block.x >= 0 &&
    block.y >= 0 &&
    block.x + block.length <= sheet.length + 1 &&
    block.y + block.width <= sheet.width + 1
  );
}

function meet(instance: HeldInstance, a: Kept, b: Kept): boolean {
  const apart =
    a.block.x + a.block.length <= b.block.x + 1 ||
    b.block.x + b.block.length <= a.block.x + 1 ||
    a.block.y + a.block.width <= b.block.y + 1 ||
    b.block.y + b.block.width <= a.block.y + 1;
  if (apart) return false;
  if (instance.kind !== 'outlines') return true;
  return loopsMeet(lying(a, instance), lying(b, instance));
}

// What slid together by its exact outline may be off by the rounding of what was written.
const rounding = 0.02;

/** A held outline where it lies, grown by half a kerf. */
function lying({ fixed, part }: Kept, { kerf = 0 }: HeldInstance): Loops {
  const drawn = turnedLoops(partLoops(part), fixed.rotation);
  const grown = grownLoops(drawn, Math.max(0, kerf - rounding));
  const move = (loop: Loops['outer']): Loops['outer'] =>
    loop.map(([x, y]) => [x + fixed.x, y + fixed.y]);
  return { outer: move(grown.outer), holes: grown.holes.map(move) };
}

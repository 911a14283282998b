import type { BoltInstance, Fixed, Part, Placement } from '../instance.ts';
import { blockOf, heldPlacement } from '../locked/fixed-box.ts';
import { fittingFixed } from '../locked/fitting.ts';
import { roomsAround, type Block } from '../locked/rooms.ts';
import type { HeldOnRoll, Ledge } from './skyline.ts';

/** A roll on which parts are held in place. */
export interface HeldBolt {
  /** Of the parts that are still to be laid. */
  readonly instance: BoltInstance;
  readonly held: HeldOnRoll;
  readonly placements: readonly Placement[];
}

/**
 * The parts of an instance that stay where they are held, and what the roll has left around them;
 * undefined where none does.
 *
 * @param width of the roll between its trimmed edges, in whole thousandths of a millimetre
 */
export function heldPanels(instance: BoltInstance, width: number): HeldBolt | undefined {
  if (instance.fixed === undefined) return undefined;
  const { kept } = fittingFixed(instance, instance.fixed);
  if (kept.length === 0) return undefined;
  const own = kept.flatMap((fixed): readonly (readonly [Fixed, Part])[] => {
    const part = instance.parts.find(({ id }) => id === fixed.part);
    return part === undefined ? [] : [[fixed, part]];
  });
  const blocks = own.map(([fixed, part]) => blockOf(fixed, part, instance));
  const parts = instance.parts.map((part): Part => {
    const count = part.count - own.filter(([, one]) => one === part).length;
    return count === part.count ? part : { ...part, count };
  });
  return {
    instance: { ...instance, parts: parts.filter(({ count }) => count > 0) },
    held: leftOf(blocks, width),
    placements: own.map(([fixed, part]) => heldPlacement(fixed, part, 0)),
  };
}

/** Rooms before and between blocks, and the edge behind them. */
function leftOf(blocks: readonly Block[], width: number): HeldOnRoll {
  const end = Math.max(...blocks.map(({ x, length }) => x + length));
  const edge = edgeBehind(blocks, width);
  // What lies behind the edge is not before it.
  const behind = edge
    .filter(({ x }) => x < end)
    .map((ledge): Block => ({ ...ledge, length: end - ledge.x }));
  const { rooms } = roomsAround({ x: 0, y: 0, length: end, width }, [...blocks, ...behind]);
  return { rooms: [...rooms].sort((a, b) => a.x - b.x || a.y - b.y), edge };
}

function edgeBehind(blocks: readonly Block[], width: number): readonly Ledge[] {
  const starts = [0, ...blocks.flatMap(({ y, width: wide }) => [y, y + wide])];
  const ys = [...new Set(starts)].filter((y) => y < width).sort((a, b) => a - b);
  const edge: Ledge[] = [];
  ys.forEach((y, at) => {
    const over = blocks.filter((block) => block.y <= y && block.y + block.width > y);
    const x = over.reduce((most, block) => Math.max(most, block.x + block.length), 0);
    const wide = (ys[at + 1] ?? width) - y;
    const last = edge.at(-1);
    if (last?.x === x) last.width += wide;
    else edge.push({ x, y, width: wide });
  });
  return edge;
}

/** A rectangle of a sheet, in whole thousandths of a millimetre. */
export interface Block {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/** A straight cut from edge to edge of the rectangle in hand. */
export interface RoomCut {
  readonly way: 'across' | 'along';
  /** Where the part beyond it begins. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

/** What a sheet is cut into around blocks that stay where they are. */
export interface Rooms {
  readonly rooms: readonly Block[];
  /** In the order of sawing. */
  readonly cuts: readonly RoomCut[];
  /** Every cut passes by every block: the blocks come free by straight cuts. */
  readonly sawn: boolean;
}

interface Way {
  readonly way: 'across' | 'along';
  readonly at: number;
  /** Blocks that the cut runs through. */
  readonly through: number;
  /** Area of what it parts off with no block in it. */
  readonly clear: number;
}

/**
 * Cuts a sheet into blocks and rooms around them: first what parts off the largest room. Where no cut
 * passes by every block, one is led through as few as possible, and the blocks are no longer sawn free.
 */
export function roomsAround(sheet: Block, blocks: readonly Block[]): Rooms {
  const rooms: Block[] = [];
  const cuts: RoomCut[] = [];
  let sawn = true;
  const split = (room: Block, inside: readonly Block[]): void => {
    const [first] = inside;
    if (first === undefined) {
      rooms.push(room);
      return;
    }
    const way = bestWay(room, inside);
    if (way === undefined) return;
    sawn &&= way.through === 0;
    const [low, high] = parted(room, way);
    cuts.push({
      way: way.way,
      at: way.at,
      from: way.way === 'across' ? room.y : room.x,
      to: way.way === 'across' ? room.y + room.width : room.x + room.length,
    });
    for (const half of [low, high])
      split(
        half,
        inside.flatMap((block) => clipped(block, half)),
      );
  };
  split(
    sheet,
    blocks.flatMap((block) => clipped(block, sheet)),
  );
  return { rooms, cuts, sawn };
}

/** The cut that goes on; undefined where the one block fills the room. */
function bestWay(room: Block, blocks: readonly Block[]): Way | undefined {
  let best: Way | undefined;
  for (const { x, y, length, width } of blocks) {
    for (const [way, at] of [
      ['across', x],
      ['across', x + length],
      ['along', y],
      ['along', y + width],
    ] as const) {
      const tried = triedWay(room, blocks, { way, at });
      if (tried === undefined) continue;
      const better =
        best === undefined ||
        tried.through < best.through ||
        (tried.through === best.through && tried.clear > best.clear);
      if (better) best = tried;
    }
  }
  return best;
}

function triedWay(
  room: Block,
  blocks: readonly Block[],
  { way, at }: Pick<Way, 'way' | 'at'>,
): Way | undefined {
  const across = way === 'across';
  const [start, size] = across ? [room.x, room.length] : [room.y, room.width];
  const other = across ? room.width : room.length;
  if (at <= start || at >= start + size) return undefined;
  const spans = blocks.map((block) =>
    across ? [block.x, block.x + block.length] : [block.y, block.y + block.width],
  );
  const isBefore = ([low = 0]: readonly number[]): boolean => low < at;
  const isAfter = ([, high = 0]: readonly number[]): boolean => high > at;
  const clear = Math.max(
    spans.some(isBefore) ? 0 : (at - start) * other,
    spans.some(isAfter) ? 0 : (start + size - at) * other,
  );
  const through = spans.filter((span) => isBefore(span) && isAfter(span)).length;
  return { way, at, through, clear };
}

function parted(room: Block, { way, at }: Way): readonly [Block, Block] {
  const { x, y, length, width } = room;
  return way === 'across'
    ? [
        { x, y, length: at - x, width },
        { x: at, y, length: x + length - at, width },
      ]
    : [
        { x, y, length, width: at - y },
        { x, y: at, length, width: y + width - at },
      ];
}

function clipped(block: Block, to: Block): readonly Block[] {
  const x = Math.max(block.x, to.x);
  const y = Math.max(block.y, to.y);
  const length = Math.min(block.x + block.length, to.x + to.length) - x;
  const width = Math.min(block.y + block.width, to.y + to.width) - y;
  return length > 0 && width > 0 ? [{ x, y, length, width }] : [];
}

import type { Curve } from './curve-points.ts';
import type { DrawnFile, DrawnLine } from './drawn-file.ts';
import { drawnEntity, entityVertices } from './dxf-entities.ts';
import { groupNumber, groupText, readDxfParts, type DxfParts, type Entity } from './dxf-groups.ts';
import type { Point } from './outline.ts';

/** Size in mm of the units that $INSUNITS names. */
const units: Readonly<Record<string, number>> = {
  '1': 25.4,
  '2': 304.8,
  '4': 1,
  '5': 10,
  '6': 1000,
  '9': 0.0254,
  '10': 914.4,
  '14': 100,
};

/** Entities that are notes beside the drawing, not lines of it. */
const remarks: ReadonlySet<string> = new Set([
  ...['TEXT', 'MTEXT', 'DIMENSION', 'POINT', 'ATTDEF', 'ATTRIB', 'LEADER', 'MLEADER', 'VIEWPORT'],
  ...['HATCH', 'IMAGE', 'WIPEOUT', 'TOLERANCE', 'VERTEX', 'SEQEND'],
]);

/** Blocks within blocks are followed so deep. */
const mostNesting = 8;

type Move = (point: Point) => Point;

function movedLine(
  { names, start, parts, closed }: DrawnLine,
  move: Move,
  layer: string,
): DrawnLine {
  const moved = (part: Point | Curve): Point | Curve =>
    'at' in part ? { ...part, at: (at) => move(part.at(at)) } : move(part);
  return { names: [...names, layer], start: move(start), parts: parts.map(moved), closed };
}

/** Where an insertion puts the points of its block. */
function insertion(entity: Entity, base: Point): Move {
  const number = (code: number, otherwise: number): number => groupNumber(entity, code, otherwise);
  const [scaleX, scaleY] = [number(41, 1), number(42, 1)];
  const turn = (number(50, 0) * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const side = number(230, 1) < 0 ? -1 : 1;
  return (point) => {
    const [x, y] = [(point.x - base.x) * scaleX, (point.y - base.y) * scaleY];
    return { x: side * (number(10, 0) + x * cos - y * sin), y: number(20, 0) + x * sin + y * cos };
  };
}

interface Gathered {
  readonly lines: DrawnLine[];
  readonly unread: Set<string>;
}

/** Paper space holds the title block; what is invisible is not drawn; a vertex is read with its line. */
function isPassedOver(entity: Entity): boolean {
  const isUnseen = groupText(entity, 67) === '1' || groupText(entity, 60) === '1';
  return isUnseen || remarks.has(entity.type);
}

/** What a block draws where it is inserted. */
function inserted(entity: Entity, parts: DxfParts, depth: number): Gathered {
  const block = parts.blocks.get(groupText(entity, 2) ?? '');
  if (block === undefined || depth === 0) return { lines: [], unread: new Set() };
  const base = { x: groupNumber(block, 10, 0), y: groupNumber(block, 20, 0) };
  const { lines, unread } = gather(block.entities, parts, depth - 1);
  const move = insertion(entity, base);
  const layer = groupText(entity, 8) ?? '0';
  return { lines: lines.map((line) => movedLine(line, move, layer)), unread };
}

function gather(entities: readonly Entity[], parts: DxfParts, depth: number): Gathered {
  const lines: DrawnLine[] = [];
  const unread = new Set<string>();
  for (const [index, entity] of entities.entries()) {
    const { type } = entity;
    if (isPassedOver(entity)) continue;
    const layer = groupText(entity, 8) ?? '0';
    if (type === 'INSERT') {
      const inner = inserted(entity, parts, depth);
      lines.push(...inner.lines);
      for (const one of inner.unread) unread.add(one);
      continue;
    }
    const drawn = drawnEntity(entity, entityVertices(entities, index));
    if (drawn === undefined) unread.add(type);
    else lines.push({ names: [layer], ...drawn });
  }
  return { lines, unread };
}

/**
 * Reads the lines of an ASCII DXF drawing: lines, arcs, circles, ellipses, polylines with bulges,
 * splines and inserted blocks; y is up.
 *
 * @returns the reason in words where the text is no DXF
 */
export function readDxf(text: string): DrawnFile | string {
  const parts = readDxfParts(text);
  if (typeof parts === 'string') return parts;
  const unit = units[parts.header.get('$INSUNITS') ?? ''];
  const { lines, unread } = gather(parts.entities, parts, mostNesting);
  return { unit, lines, unread: [...unread], nameWord: 'layer' };
}

import type {
  BoltInstance,
  CutInstance,
  Fixed,
  OutlinesInstance,
  Part,
  Placement,
  RectanglesInstance,
} from '../instance.ts';
import { turnedLoops } from '../outlines/forms.ts';
import { partLoops } from '../outlines/part-loops.ts';
import type { Block } from './rooms.ts';

/** Sheets on which parts may be held in place. */
export type SheetsInstance = RectanglesInstance | OutlinesInstance;

/** Instances whose parts may be held in place. */
export type HeldInstance = SheetsInstance | BoltInstance;

/** Whether parts can be held in place: on sheets, and rectangles on a roll. */
export function canHold(instance: CutInstance): instance is HeldInstance {
  if (instance.kind === 'bolt') return instance.parts.every(({ points }) => points === undefined);
  return instance.kind === 'rectangles' || instance.kind === 'outlines';
}

const fine = 1000;

/** Whole thousandths of a millimetre, in which sums are exact. */
export function thousandths(mm: number): number {
  return Math.round(mm * fine);
}

/** The box of a part turned by so many degrees, mm. */
export function turnedBox(
  part: Part,
  rotation: number,
): { readonly length: number; readonly width: number } {
  const { length, width } = part;
  if (part.points === undefined && rotation % 90 === 0)
    return rotation % 180 === 0 ? { length, width } : { length: width, width: length };
  const { outer } = turnedLoops(partLoops(part), rotation);
  return {
    length: Math.max(...outer.map(([x]) => x)),
    width: Math.max(...outer.map(([, y]) => y)),
  };
}

/** A held part where it lies, on a sheet of this index. */
export function heldPlacement(fixed: Fixed, part: Part, index: number): Placement {
  const { id, stock, x, y, rotation } = fixed;
  const size = turnedBox(part, rotation);
  return { part: part.id, stock, index, x, y, rotation, mirrored: false, fixed: id, ...size };
}

/** What a held part takes of its sheet, kerf included, seen from the sheet's trimmed corner. */
export function blockOf(fixed: Fixed, part: Part, instance: HeldInstance): Block {
  const { kerf = 0, trim = 0 } = instance;
  const { length, width } = turnedBox(part, fixed.rotation);
  // Rounded outwards, so that nothing comes nearer than the kerf.
  const up = (mm: number): number => Math.ceil(mm * fine - 1e-3);
  return {
    // The start of a roll has nothing trimmed off.
    x: thousandths(fixed.x - (instance.kind === 'bolt' ? 0 : trim)),
    y: thousandths(fixed.y - trim),
    length: up(length + kerf),
    width: up(width + kerf),
  };
}

/** The room of a sheet between its trimmed edges, with the kerf that its last part needs not leave. */
export function sheetBlock(
  stock: { readonly length: number; readonly width: number },
  { kind, kerf = 0, trim = 0 }: HeldInstance,
): Block {
  return {
    x: 0,
    y: 0,
    length: kind === 'bolt' ? Infinity : thousandths(stock.length - 2 * trim + kerf),
    width: thousandths(stock.width - 2 * trim + kerf),
  };
}

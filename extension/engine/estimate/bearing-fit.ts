import type { Book } from '../book/book.ts';
import { shapeLength, shapeWidth, type Shape } from '../geometry/shape.ts';
import { bearingOffset, bearingSize, usualBearing } from '../trade/router.ts';
import { length } from '../units/dimension.ts';
import type { AnsweredRow, Answers } from '../workbook/answers.ts';
import { baseIn, shapeIn, wordIn } from './cells.ts';

/** How a board is routed with a bearing; lengths in mm. */
export interface BearingFit {
  readonly row: AnsweredRow;
  /** What the bearing runs along; undefined for a template of the board's own outline. */
  readonly follows: AnsweredRow | undefined;
  readonly bit: number;
  /** Diameter of the bearing that leaves the gap. */
  readonly bearing: number;
  /** What is left free on each side. */
  readonly gap: number;
  /** The bearing of a usual set that comes next where there is none of this size, and what it leaves. */
  readonly near?: { readonly bearing: number; readonly gap: number };
}

export interface BearingGround {
  readonly workbook: Answers;
  readonly book: Pick<Book, 'kinds'>;
}

/** Gaps that differ by less are one, in mm: what a layout of a 64th of an inch does not tell apart. */
const sameMm = 25.4 / 64;

/** What is left free between an opening and a board in it, where that is the same on each side. */
function evenGap(opening: Shape, board: Shape): number | undefined {
  const along = (shapeLength(opening) - shapeLength(board)) / 2;
  const across = (shapeWidth(opening) - shapeWidth(board)) / 2;
  return Math.abs(along - across) < sameMm ? Math.min(along, across) : undefined;
}

function constantOf({ workbook }: BearingGround, id: string): number | undefined {
  const constant = workbook.row('constant', id);
  return constant === undefined ? undefined : baseIn(constant, 'value', length);
}

/** Boards are those kinds that tell how far they are routed, or are routed as a task of theirs says. */
function isRouted({ book }: BearingGround, { kind, broken }: AnsweredRow): boolean {
  const known = book.kinds.get(kind);
  if (broken || known?.takes !== 'blank') return false;
  return known.results.has('cut') || known.tasks.some((task) => task.split('/').includes('rout'));
}

function nearOf(bearing: number, bit: number): Pick<BearingFit, 'near'> {
  const near = usualBearing(bearing);
  if (near === undefined || Math.abs(near - bearing) < sameMm) return {};
  return { near: { bearing: near, gap: bearingOffset(bit, near) } };
}

function fitOf(row: AnsweredRow, ground: BearingGround): readonly BearingFit[] {
  const shape = shapeIn(row, 'shape');
  if (shape === undefined) return [];
  const below = ground.workbook.row('part', wordIn(row, 'on'));
  const opening = below && (shapeIn(below, 'mouth') ?? shapeIn(below, 'shape'));
  const gap = opening && evenGap(opening, shape);
  const bit = constantOf(ground, 'rebate_bit');
  if (gap !== undefined && bit !== undefined && gap >= sameMm && 2 * gap < bit - sameMm) {
    const bearing = bearingSize(bit, gap);
    return [{ row, follows: below, bit, bearing, gap, ...nearOf(bearing, bit) }];
  }
  // What is round is cut with the jig; everything else follows a template of its own outline.
  const flush = constantOf(ground, 'flush_bit');
  if (shape.kind === 'circle' || flush === undefined) return [];
  return [{ row, follows: undefined, bit: flush, bearing: flush, gap: 0 }];
}

/**
 * Which bearing and which bit cut each board: one that goes into an opening with the same gap all round
 * (a removable grille or baffle) runs along what it goes into, with a bearing by as much smaller than
 * the shop's rebating bit; other outlines but round ones follow a template with the flush bit.
 *
 * @source bearing = cutter − 2 × width: “Cut perfect rabbets”, WOOD magazine; that a grille is cut so:
 * common practice, no source
 */
export function bearingFits(ground: BearingGround): readonly BearingFit[] {
  return ground.workbook
    .rows('part')
    .filter((row) => isRouted(ground, row))
    .flatMap((row) => fitOf(row, ground));
}

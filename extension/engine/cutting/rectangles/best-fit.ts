import type { Piece } from './sheet.ts';

/** One figure is worth so much more than the next that the next only settles ties. */
export const first = 2 ** 24;

/** Room of this size on a sheet. */
interface Room {
  readonly length: number;
  readonly width: number;
}

/** Where a piece fits best, and whether it is turned there; a lower score is better. */
export interface BestFit<Gap> {
  readonly gap: Gap;
  readonly score: number;
  readonly turned: boolean;
}

/** The gap in which a piece fits with the lowest score, as it lies or turned; the first of equals. */
export function bestFit<Gap extends Room>(
  gaps: readonly Gap[],
  piece: Piece,
  scored: (gap: Gap, length: number, width: number) => number,
): BestFit<Gap> | undefined {
  let best: Gap | undefined;
  let score = Infinity;
  let turned = false;
  for (const gap of gaps) {
    if (piece.length <= gap.length && piece.width <= gap.width) {
      const own = scored(gap, piece.length, piece.width);
      if (own < score) [best, score, turned] = [gap, own, false];
    }
    if (piece.turns && piece.width <= gap.length && piece.length <= gap.width) {
      const own = scored(gap, piece.width, piece.length);
      if (own < score) [best, score, turned] = [gap, own, true];
    }
  }
  return best && { gap: best, score, turned };
}

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

/** How well a size fits into a gap by one of several rules. */
export type Scored<Gap> = (gap: Gap, length: number, width: number, rule: number) => number;

/**
 * The gap in which a piece fits with the lowest score below `under`, as it lies or turned; the first of
 * equals.
 */
export function bestFit<Gap extends Room>(
  gaps: readonly Gap[],
  piece: Piece,
  { scored, rule, under }: { scored: Scored<Gap>; rule: number; under: number },
): BestFit<Gap> | undefined {
  const { length, width, turns } = piece;
  let best: Gap | undefined;
  let score = under;
  let turned = false;
  for (const gap of gaps) {
    if (length <= gap.length && width <= gap.width) {
      const own = scored(gap, length, width, rule);
      if (own < score) {
        best = gap;
        score = own;
        turned = false;
      }
    }
    if (turns && width <= gap.length && length <= gap.width) {
      const own = scored(gap, width, length, rule);
      if (own < score) {
        best = gap;
        score = own;
        turned = true;
      }
    }
  }
  return best && { gap: best, score, turned };
}

import { shapeOutline } from '../geometry/shape-outline.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { wordIn } from './cells.ts';
import { panelCount } from './panels.ts';

/** What a blank is cut to, where parts are nested by their outlines. */
export interface CutOutline {
  readonly points: readonly (readonly [number, number])[];
  /** Pieces that are cut as its mirror image, for the other hand. */
  readonly mirrored: number;
}

/** Curves are cut from straight pieces that stray at most this far, mm. */
const tolerance = 0.1;

/**
 * The outline in a row's shape. Of a pair's parts that are no mirror images of themselves, those for
 * the right hand are mirrored; undefined where the row has no shape.
 */
export function cutOutline(
  row: AnsweredRow,
  panel: AnsweredRow | undefined,
  pieces: number,
): CutOutline | undefined {
  const { result } = row.cell('shape');
  if (result.state !== 'value' || result.value.kind !== 'shape') return undefined;
  const { shape } = result.value;
  const { points } = shapeOutline(shape, tolerance);
  const plain = ['circle', 'oval', 'rect', 'roundrect'].includes(shape.kind);
  const hand = wordIn(row, 'hand');
  const both =
    panel !== undefined && wordIn(row, 'per') !== 'job' && hand !== 'left' && hand !== 'right';
  const mirrored = both && !plain ? Math.round(pieces * panelCount(panel).right) : 0;
  return { points: points.map(({ x, y }): readonly [number, number] => [x, y]), mirrored };
}

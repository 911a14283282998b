import { shapeOutline } from '../geometry/shape-outline.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { wordIn } from './cells.ts';
import { cutTolerance } from './cut-openings.ts';
import { panelCount } from './panels.ts';

/** What a blank is cut to, where parts are nested by their outlines. */
export interface CutOutline {
  readonly points: readonly (readonly [number, number])[];
  /** What falls out of it, where smaller parts may be cut from that. */
  readonly holes: readonly (readonly (readonly [number, number])[])[];
  /** Pieces that are cut as its mirror image, for the other hand. */
  readonly mirrored: number;
}

/**
 * The outline in a row's shape. Of a pair's parts that are no mirror images of themselves, those for
 * the right hand are mirrored; undefined where the row has no shape.
 */
export function cutOutline(
  row: AnsweredRow,
  panel: AnsweredRow | undefined,
  { pieces, holes }: { readonly pieces: number; readonly holes: CutOutline['holes'] },
): CutOutline | undefined {
  const { result } = row.cell('shape');
  if (result.state !== 'value' || result.value.kind !== 'shape') return undefined;
  const { shape } = result.value;
  const { points } = shapeOutline(shape, cutTolerance);
  const plain = ['circle', 'oval', 'rect', 'roundrect'].includes(shape.kind);
  const hand = wordIn(row, 'hand');
  const both =
    panel !== undefined && wordIn(row, 'per') !== 'job' && hand !== 'left' && hand !== 'right';
  const mirrored = both && !plain ? Math.round(pieces * panelCount(panel).right) : 0;
  return { points: points.map(({ x, y }): readonly [number, number] => [x, y]), holes, mirrored };
}

import { shapeInsideRadius } from '../../geometry/inside-radius.ts';
import { placeWords } from '../../geometry/outline-words.ts';
import type { Problem } from '../../problems.ts';
import { length } from '../../units/dimension.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { baseIn, nameOf, placeOf } from '../cells.ts';
import { shown } from './trap-cells.ts';
import { trapProblem } from './trap-problems.ts';
import type { Trap, TrapView } from './trap.ts';

/** Below this an inside radius is a sharp corner, in mm. */
const sharpMm = 0.05;

/** A bit as wide as the hollow goes into it: less than this is no difference, in mm. */
const fitMm = 0.05;

/** A part that is routed to a template whose hollows the bit and its bearing do not reach into. */
function tightHollow(row: AnsweredRow, view: TrapView): readonly Problem[] {
  if (view.kind(row)?.tasks.some((task) => task.split('/').includes('rout')) !== true) return [];
  const { result } = row.cell('shape');
  if (result.state !== 'value' || result.value.kind !== 'shape') return [];
  const tight = shapeInsideRadius(result.value.shape, 'outside');
  const constant = view.row('constant', 'flush_bit');
  const bit = constant && baseIn(constant, 'value', length);
  if (tight === undefined || bit === undefined) return [];
  if (tight.radius + fitMm >= bit / 2) return [];
  const { settings } = view;
  const radius =
    tight.radius < sharpMm
      ? 'a sharp corner'
      : `a radius of ${shown(tight.radius, length, { settings })}`;
  const details = {
    row: nameOf(row),
    radius,
    at: placeWords(tight.at, settings),
    bit: shown(bit, length, { settings }),
    left: shown(bit / 2, length, { settings }),
  };
  const place = placeOf(row, 'shape');
  return [trapProblem('hollow-too-tight', details, { severity: 'note', place })];
}

/** Outlines that the shop's bits cannot follow. */
export const outlineTraps: readonly Trap[] = [{ tables: ['part'], find: tightHollow }];

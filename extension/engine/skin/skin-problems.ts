import { problemMaker, type Problem } from '../problems.ts';
import { angle, length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import { leastGap, steepestTilt, type PanelFault } from './panel-problems.ts';

/** Why no skin can be stretched over a panel. */
export const skinProblem = problemMaker({
  'skin-no-outline':
    '{function}: {row} has no outline that cloth could be stretched over; give a base or a panel in the car.',
  'skin-outline-blank': 'The skin over {row} waits for its outline: fill in {row}.shape.',
  'skin-outline-crosses':
    'The outline of {row} crosses itself or has no area, so no skin can be stretched over it. Look at it in the Panel pane and mend its points.',
  'skin-lip-outside':
    'The lip of {row} comes {value} outside the outline of its base. Move the ring inwards, make it smaller or lean it less.',
  'skin-overhang':
    'The wall of {row} stands up to {value} outside the outline of its base on its high side. Move the ring inwards, lean it less or build it with an upright wall.',
  'skin-lips-overlap':
    '{row} and {other} overlap by about {value}. Move them apart or make one smaller.',
  'skin-gap-small':
    'Only {value} of room is left beside {row}; cloth needs at least {least} between two edges. Move the ring.',
  'skin-low-side':
    'The low side of {row} lies {value} under the base. Make it deeper, or lean it less.',
  'skin-tilt-steep': '{row} leans {value}; a ring is built with at most {least}. Lean it less.',
  'skin-no-limit':
    '{function}: no limit stands on {row}; insert a row of kind limit with its outline and height.',
});

/** The sentence for a fault of a panel, at the row it is about. */
export function faultProblem(fault: PanelFault, settings: UnitSettings): Problem {
  const { code, row, other = '', value } = fault;
  const isAngle = code === 'skin-tilt-steep';
  const show = (base: number): string =>
    showQuantity({ base, dimension: isAngle ? angle : length }, settings).text;
  const least = show(isAngle ? steepestTilt : leastGap);
  const place = { place: { table: 'part', row } };
  return skinProblem(code, { row, other, value: show(value), least }, place);
}

import type { FunctionContext, FunctionEntry, Parameter } from '../../formula/catalogue.ts';
import type { Problem } from '../../problems.ts';
import { failed, ok } from '../../result.ts';
import { length } from '../../units/dimension.ts';
import { comparedValues } from '../../units/same-value.ts';
import { numberIn, shownWith } from '../arguments.ts';
import { ranged, rangeProblem } from '../range.ts';
import {
  buildParameter,
  ringForm,
  shapeNamed,
  sizeParameter,
  tiltParameter,
} from '../ring-arguments.ts';
import { ringStripLength, ringTightestRadius, type RingForm } from '../rings.ts';
import { tradeProblem } from '../trade-problems.ts';

const name = 'RING.STRIP';

const thicknessParameter: Parameter = {
  name: 'thickness',
  help: 'Thickness of the strip; none when left out.',
  type: { kind: 'quantity', dimensions: [length] },
  ...ranged('not-negative'),
  optional: true,
};

const lapParameter: Parameter = {
  name: 'lap',
  help: 'Overlap where the ends meet; none when left out.',
  type: { kind: 'quantity', dimensions: [length] },
  ...ranged('not-negative'),
  optional: true,
};

function stripProblem(
  ring: RingForm,
  strip: { readonly thickness: number; readonly lap: number },
  context: FunctionContext,
): Problem | undefined {
  const show = shownWith(context);
  for (const [key, value] of Object.entries(strip)) {
    const of = { functionName: name, name: key, value, dimension: length, show };
    const problem = rangeProblem(of, 'not-negative');
    if (problem !== undefined) return problem;
  }
  const radius = ringTightestRadius(ring);
  if (radius === 0) {
    const shape = shapeNamed(ring.shape, context);
    return tradeProblem('ring-strip-square-corner', { function: name, shape });
  }
  if (comparedValues(strip.thickness, radius) < 0) return undefined;
  return tradeProblem('ring-strip-too-thick', {
    function: name,
    thickness: show(strip.thickness, length),
    radius: show(radius, length),
  });
}

/** RING.STRIP. */
export const ringStrip: FunctionEntry = {
  name,
  group: 'rings',
  help: 'Length of strip to bend a ring from, on its neutral axis; the size is the outside.',
  parameters: [sizeParameter, tiltParameter, buildParameter, thicknessParameter, lapParameter],
  result: { kind: 'quantity', dimension: length },
  example: { formula: '=RING.STRIP(8in, 0deg, round_baffle, 1/8in)', shows: '≈ 24 3/4 in' },
  source: 'geometry',
  run: (args, context) => {
    const [size, tilt, build, thicknessGiven, lapGiven] = args;
    const ring = ringForm(name, { size, tilt, build }, context);
    if (!ring.ok) return ring;
    const strip = { thickness: numberIn(thicknessGiven) ?? 0, lap: numberIn(lapGiven) ?? 0 };
    const problem = stripProblem(ring.value, strip, context);
    if (problem !== undefined) return failed(problem);
    return ok({ kind: 'quantity', base: ringStripLength(ring.value, strip), dimension: length });
  },
};

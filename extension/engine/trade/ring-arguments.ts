import type { Argument, FunctionContext, Parameter } from '../formula/catalogue.ts';
import { showShape, validShape } from '../geometry/shape-text.ts';
import { isPlain, type PlainShape, type Shape } from '../geometry/shape.ts';
import { failed, ok, type Result } from '../result.ts';
import { angle, length } from '../units/dimension.ts';
import { comparedValues } from '../units/same-value.ts';
import { missing, numberIn, shownWith, wordIn } from './arguments.ts';
import { ranged, rangeProblem } from './range.ts';
import { ringBuilds, ringLeastDepth, ringLow, type RingBuild, type RingForm } from './rings.ts';
import { tradeProblem } from './trade-problems.ts';

/** Outside size of a ring, or its shape. */
export const sizeParameter: Parameter = {
  name: 'size',
  help: 'Outside diameter, or a shape; one that is not round leans along its length.',
  type: { kind: 'shape-or-length' },
  ...ranged('positive'),
};

/** How far a ring leans; none when left out. */
export const tiltParameter: Parameter = {
  name: 'tilt',
  help: 'How far the ring leans from flat; none when left out.',
  type: { kind: 'quantity', dimensions: [angle] },
  ...ranged('tilt'),
  optional: true,
};

/** How a ring stands under its lip. */
export const buildParameter: Parameter = {
  name: 'build',
  help: 'round_baffle (round lip over an upright oval wall, taken when left out), round_tube (round upright wall, cut on the slope) or square_wall (wall square to the lip).',
  type: { kind: 'choice', choices: ringBuilds },
  optional: true,
};

/** The shape in an argument; undefined where there is none. */
export function shapeIn(argument: Argument): Shape | undefined {
  if (argument === undefined || !('kind' in argument)) return undefined;
  return argument.kind === 'shape' ? argument.shape : undefined;
}

function buildIn(argument: Argument): RingBuild {
  const word = wordIn(argument);
  return ringBuilds.find((build) => build === word) ?? 'round_baffle';
}

/** The shape of a size argument: a length is a circle's diameter. */
function sizeShape(
  functionName: string,
  argument: Argument,
  context: FunctionContext,
): Result<PlainShape> {
  const shape = shapeIn(argument);
  if (shape !== undefined && !isPlain(shape)) {
    const details = { function: functionName, shape: shapeNamed(shape, context) };
    return failed(tradeProblem('ring-not-plain', details));
  }
  if (shape !== undefined) return validShape(shape, context.settings);
  const value = numberIn(argument);
  if (value === undefined) return failed(missing(functionName, sizeParameter));
  const problem = rangeProblem(
    { functionName, name: 'size', value, dimension: length, show: shownWith(context) },
    'positive',
  );
  return problem === undefined ? ok({ kind: 'circle', diameter: value }) : failed(problem);
}

/** The ring that a call describes with size, tilt and build. */
export function ringForm(
  functionName: string,
  args: { readonly size: Argument; readonly tilt: Argument; readonly build: Argument },
  context: FunctionContext,
): Result<RingForm> {
  const shape = sizeShape(functionName, args.size, context);
  if (!shape.ok) return shape;
  const tilt = numberIn(args.tilt) ?? 0;
  const problem = rangeProblem(
    { functionName, name: 'tilt', value: tilt, dimension: angle, show: shownWith(context) },
    'tilt',
  );
  if (problem !== undefined) return failed(problem);
  return ok({ shape: shape.value, tilt, build: buildIn(args.build) });
}

/** Refuses a ring whose low side would be under the base: such a wall has no outline. */
export function standingRing(
  functionName: string,
  depth: number,
  place: { readonly form: RingForm; readonly context: FunctionContext },
): Result<RingForm> {
  const { form, context } = place;
  const low = ringLow(depth, form);
  if (comparedValues(low, 0) >= 0) return ok(form);
  const show = shownWith(context);
  return failed(
    tradeProblem('ring-low-side-under-base', {
      function: functionName,
      tilt: show(form.tilt, angle),
      low: show(low, length),
      depth: show(depth, length),
      least: show(ringLeastDepth(0, form), length),
    }),
  );
}

/** A shape in the words of a refusal. */
export function shapeNamed(shape: Shape, context: FunctionContext): string {
  return showShape(shape, context.settings);
}

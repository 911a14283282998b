import type { FunctionContext, FunctionEntry, Parameter } from '../../formula/catalogue.ts';
import type { CellValue } from '../../formula/value.ts';
import { failed, ok, type Result } from '../../result.ts';
import { area, length, volume, type Dimension } from '../../units/dimension.ts';
import { missing, numberIn, shownWith } from '../arguments.ts';
import { ranged, rangeProblem, type Range } from '../range.ts';
import {
  buildParameter,
  ringForm,
  sizeParameter,
  standingRing,
  tiltParameter,
} from '../ring-arguments.ts';
import {
  ringHigh,
  ringLeastDepth,
  ringLow,
  ringShadowArea,
  ringTightestRadius,
  ringVolume,
  ringWallArea,
  type RingForm,
} from '../rings.ts';
import { ringStrip } from './ring-strip.ts';

const depthParameter: Parameter = {
  name: 'depth',
  help: 'From the base plane to the seat of the driver, at the centre.',
  type: { kind: 'quantity', dimensions: [length] },
  ...ranged('not-negative'),
};

const lowParameter: Parameter = {
  name: 'low',
  help: 'Height to keep at the low side.',
  type: { kind: 'quantity', dimensions: [length] },
  ...ranged('not-negative'),
};

const source = 'geometry';

interface RingFunction {
  readonly name: string;
  readonly help: string;
  readonly dimension: Dimension;
  readonly formula: string;
  readonly shows: string;
}

function entry(
  form: RingFunction,
  parameters: readonly Parameter[],
  run: NonNullable<FunctionEntry['run']>,
): FunctionEntry {
  const { name, help, dimension, formula, shows } = form;
  return {
    name,
    group: 'rings',
    help,
    parameters,
    result: { kind: 'quantity', dimension },
    example: { formula, shows },
    source,
    run,
  };
}

function lengthIn(
  functionName: string,
  given: {
    readonly parameter: Parameter;
    readonly value: number | undefined;
    readonly range: Range;
  },
  context: FunctionContext,
): Result<number> {
  const { parameter, value, range } = given;
  if (value === undefined) return failed(missing(functionName, parameter));
  const { name } = parameter;
  const show = shownWith(context);
  const problem = rangeProblem({ functionName, name, value, dimension: length, show }, range);
  return problem === undefined ? ok(value) : failed(problem);
}

function answer(base: number, dimension: Dimension): Result<CellValue> {
  return ok({ kind: 'quantity', base, dimension });
}

/** Functions of (size, [tilt], [build]). */
function ofForm(form: RingFunction, of: (ring: RingForm) => number): FunctionEntry {
  return entry(form, [sizeParameter, tiltParameter, buildParameter], (args, context) => {
    const [size, tilt, build] = args;
    const ring = ringForm(form.name, { size, tilt, build }, context);
    return ring.ok ? answer(of(ring.value), form.dimension) : ring;
  });
}

/** Functions of (depth, size, [tilt], [build]); those of a wall need one that stands. */
function ofDepth(
  form: RingFunction & { readonly stands: boolean },
  of: (depth: number, ring: RingForm) => number,
): FunctionEntry {
  const parameters = [depthParameter, sizeParameter, tiltParameter, buildParameter];
  return entry(form, parameters, (args, context) => {
    const [depthGiven, size, tilt, build] = args;
    const given = { parameter: depthParameter, value: numberIn(depthGiven) };
    const depth = lengthIn(form.name, { ...given, range: 'not-negative' }, context);
    if (!depth.ok) return depth;
    const ring = ringForm(form.name, { size, tilt, build }, context);
    if (!ring.ok) return ring;
    const standing = form.stands
      ? standingRing(form.name, depth.value, { form: ring.value, context })
      : ring;
    return standing.ok ? answer(of(depth.value, standing.value), form.dimension) : standing;
  });
}

const ringLeast = entry(
  {
    name: 'RING.LEAST',
    help: 'Smallest centre depth that keeps a height at the low side of a leaning ring.',
    dimension: length,
    formula: '=RING.LEAST(8in, 15deg, 5/8in)',
    shows: '≈ 1 11/16 in',
  },
  [sizeParameter, { ...tiltParameter, optional: false }, lowParameter, buildParameter],
  (args, context) => {
    const [size, tilt, lowGiven, build] = args;
    const ring = ringForm('RING.LEAST', { size, tilt, build }, context);
    if (!ring.ok) return ring;
    const given = { parameter: lowParameter, value: numberIn(lowGiven) };
    const low = lengthIn('RING.LEAST', { ...given, range: 'not-negative' }, context);
    return low.ok ? answer(ringLeastDepth(low.value, ring.value), length) : low;
  },
);

/** Rings that carry a driver, by size or shape, lean and build. */
export const ringFunctions: readonly FunctionEntry[] = [
  ringLeast,
  ofDepth(
    {
      name: 'RING.LOW',
      help: 'Height of a ring’s wall at its low side; below nothing where it would be under the base.',
      dimension: length,
      formula: '=RING.LOW(2in, 7 1/2in, 15deg)',
      shows: '≈ 1 in',
      stands: false,
    },
    ringLow,
  ),
  ofDepth(
    {
      name: 'RING.HIGH',
      help: 'Height of a ring’s wall at its high side: the width of strip to cut it from.',
      dimension: length,
      formula: '=RING.HIGH(2in, 7 1/2in, 15deg)',
      shows: '≈ 3 in',
      stands: false,
    },
    ringHigh,
  ),
  ringStrip,
  ofDepth(
    {
      name: 'RING.WALL',
      help: 'Area of a ring’s wall, on its outside.',
      dimension: area,
      formula: '=RING.WALL(2in, 7 1/2in, 15deg)',
      shows: '46.32 sqin',
      stands: true,
    },
    ringWallArea,
  ),
  ofForm(
    {
      name: 'RING.SHADOW',
      help: 'Area of base that the lip of a ring covers, seen straight on.',
      dimension: area,
      formula: '=RING.SHADOW(7 1/2in, 15deg)',
      shows: '42.67 sqin',
    },
    ringShadowArea,
  ),
  ofForm(
    {
      name: 'RING.RADIUS',
      help: 'Tightest radius that the strip of a ring is bent to, on its outside.',
      dimension: length,
      formula: '=RING.RADIUS(7 1/2in, 15deg)',
      shows: '3 1/2 in',
    },
    ringTightestRadius,
  ),
  ofDepth(
    {
      name: 'RING.VOLUME',
      help: 'Volume between the base plane and the lip inside a ring’s outline.',
      dimension: volume,
      formula: '=RING.VOLUME(2in, 7 1/2in, 15deg)',
      shows: '1.478 qt',
      stands: true,
    },
    ringVolume,
  ),
];

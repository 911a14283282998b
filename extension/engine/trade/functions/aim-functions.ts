import type { FunctionEntry } from '../../formula/catalogue.ts';
import type { Problem } from '../../problems.ts';
import { angle, frequency, length, plain, type Dimension } from '../../units/dimension.ts';
import {
  aimBetween,
  aimDistance,
  aimOffAxis,
  aimTilt,
  aimTurn,
  offAxisLevel,
  wavesAcross,
  type Vector,
} from '../aim.ts';
import { comparedValues } from '../../units/same-value.ts';
import { needed, optional } from '../arguments.ts';
import { quantityFunction } from '../quantity-function.ts';
import { tradeProblem } from '../trade-problems.ts';

/** A cone so many wavelengths wide breaks up long before; no flat piston is like it. */
const mostWaves = 100;

type Show = (base: number, dimension: Dimension, unit?: string) => string;

const x = needed('x', length, 'From the driver to the ear, to the rear.');
const y = needed('y', length, 'From the driver up to the ear.');
const z = needed('z', length, 'From the panel out to the ear.');

function second<const Name extends string>(name: Name, help: string) {
  return optional({ name, dimension: length, help }, NaN);
}

const twoEars = [
  x,
  y,
  z,
  second('x2', 'To the rear, for a second ear.'),
  second('y2', 'Up, for a second ear.'),
  second('z2', 'Out, for a second ear.'),
] as const;

const anywhere = { x: 'any', y: 'any', z: 'any' } as const;
// A second ear that is left out is not a number; it is looked at in `aimed`.
const anyEar = { ...anywhere, x2: 'unchecked', y2: 'unchecked', z2: 'unchecked' } as const;

type Ears = Readonly<Record<'x' | 'y' | 'z' | 'x2' | 'y2' | 'z2', number>>;

function inFront(name: string, ear: Vector, show: Show): Problem | undefined {
  if (ear.z > 0) return undefined;
  return tradeProblem('ear-not-in-front', { function: name, value: show(ear.z, length) });
}

/** The direction to aim in, for one ear or between two. */
function aimed(name: string, ears: Ears, show: Show): Vector | Problem {
  const near = { x: ears.x, y: ears.y, z: ears.z };
  const problem = inFront(name, near, show);
  if (problem !== undefined) return problem;
  const given = (['x2', 'y2', 'z2'] as const).filter((key) => !Number.isNaN(ears[key]));
  if (given.length === 0) return near;
  const absent = (['x2', 'y2', 'z2'] as const).find((key) => !given.includes(key));
  if (absent !== undefined) return tradeProblem('ear-half-given', { function: name, name: absent });
  const far = { x: ears.x2, y: ears.y2, z: ears.z2 };
  return inFront(name, far, show) ?? aimBetween(near, far);
}

function ofAim(
  name: string,
  ears: Ears,
  how: { readonly show: Show; readonly of: (direction: Vector) => number },
): number | Problem {
  const direction = aimed(name, ears, how.show);
  return 'code' in direction ? direction : how.of(direction);
}

/** Aiming a driver at ears, and what is lost off its axis. */
export const aimFunctions: readonly FunctionEntry[] = [
  quantityFunction({
    name: 'AIM.TILT',
    group: 'aim',
    help: 'Lean from flat that aims a driver at an ear, or evenly between two.',
    parameters: twoEars,
    dimension: angle,
    example: { formula: '=AIM.TILT(30in, 28in, 24in)', shows: '59.68 deg' },
    source: 'geometry',
    ranges: anyEar,
    answer: (ears, _, show) => ofAim('AIM.TILT', ears, { show, of: aimTilt }),
  }),
  quantityFunction({
    name: 'AIM.TURN',
    group: 'aim',
    help: 'Which way a driver leans to aim at an ear, or evenly between two: from straight up towards the rear, as the turn of a ring.',
    parameters: twoEars,
    dimension: angle,
    example: { formula: '=AIM.TURN(30in, 28in, 24in)', shows: '46.97 deg' },
    source: 'geometry',
    ranges: anyEar,
    answer: (ears, _, show) => ofAim('AIM.TURN', ears, { show, of: aimTurn }),
  }),
  quantityFunction({
    name: 'AIM.OFFAXIS',
    group: 'aim',
    help: 'Angle between an ear and the axis of a driver that leans by tilt towards turn.',
    parameters: [
      x,
      y,
      z,
      needed('tilt', angle, 'How far the driver leans from flat.'),
      needed(
        'turn',
        angle,
        'Which way it leans: from straight up towards the rear, as the turn of a ring.',
      ),
    ],
    dimension: angle,
    example: { formula: '=AIM.OFFAXIS(30in, 28in, 24in, 15deg, 46.97deg)', shows: '44.68 deg' },
    source: 'geometry',
    ranges: { ...anywhere, tilt: 'tilt', turn: 'any' },
    answer: ({ tilt, turn, ...ear }, _, show) =>
      inFront('AIM.OFFAXIS', ear, show) ?? aimOffAxis(ear, tilt, turn),
  }),
  quantityFunction({
    name: 'AIM.DISTANCE',
    group: 'aim',
    help: 'Distance from the driver to an ear.',
    parameters: [x, y, z],
    dimension: length,
    example: { formula: '=AIM.DISTANCE(30in, 28in, 24in)', shows: '≈ 47 9/16 in' },
    source: 'geometry',
    ranges: anywhere,
    answer: (ear) => aimDistance(ear),
  }),
  quantityFunction({
    name: 'DRIVER.OFFAXISLOSS',
    group: 'aim',
    help: 'Level off the axis against the level on it, in dB, for a flat round piston; a real cone follows it while its width is below about one wavelength, and breaks up above.',
    parameters: [
      needed('cone', length, 'Diameter of the moving cone.'),
      needed('frequency', frequency, 'Frequency.'),
      needed('angle', angle, 'Angle off the axis.'),
    ],
    dimension: plain,
    example: { formula: '=DRIVER.OFFAXISLOSS(130mm, 2kHz, 30deg)', shows: '-1.58574' },
    source: 'J. Eargle, “Electroacoustical Reference Data”: 2·J1(x)/x',
    ranges: { cone: 'positive', frequency: 'positive', angle: 'tilt' },
    refuse: ({ cone, frequency: pitch }, show) => {
      const waves = wavesAcross(cone, pitch);
      if (comparedValues(waves, mostWaves) <= 0) return undefined;
      return tradeProblem('cone-too-many-waves', {
        function: 'DRIVER.OFFAXISLOSS',
        cone: show(cone, length),
        frequency: show(pitch, frequency),
        waves: show(waves, plain),
        most: show(mostWaves, plain),
      });
    },
    answer: ({ cone, frequency: pitch, angle: off }, _, show) => {
      const level = offAxisLevel(cone, pitch, off);
      if (Number.isFinite(level)) return level;
      return tradeProblem('sound-in-a-null', {
        function: 'DRIVER.OFFAXISLOSS',
        angle: show(off, angle),
        cone: show(cone, length),
        frequency: show(pitch, frequency),
      });
    },
  }),
];

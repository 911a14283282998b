/**
 * A place or direction in the panel's frame: x to the rear, y up, z out of the panel; in mm where it is
 * a place.
 */
export interface Vector {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Distance of a place from the driver's centre, in mm. */
export function aimDistance({ x, y, z }: Vector): number {
  return Math.hypot(x, y, z);
}

/**
 * Direction halfway between two ears: both are then equally far off the axis, and the larger of the two
 * angles is as small as it can be.
 *
 * @source geometry
 */
export function aimBetween(a: Vector, b: Vector): Vector {
  const [far, near] = [aimDistance(a), aimDistance(b)];
  return { x: a.x / far + b.x / near, y: a.y / far + b.y / near, z: a.z / far + b.z / near };
}

/** Lean from flat that points the axis of a driver in a direction, in radians. */
export function aimTilt({ x, y, z }: Vector): number {
  return Math.atan2(Math.hypot(x, y), z);
}

/**
 * Which way a driver leans to point in a direction, as a ring's `turn` says it: turned from straight up
 * towards the rear; in radians.
 */
export function aimTurn({ x, y }: Vector): number {
  return Math.atan2(x, y);
}

/**
 * Angle between a place and the axis of a driver that leans by `tilt` towards `turn`, in radians.
 *
 * @source geometry
 * @example an ear 30 in to the rear, 28 in up and 24 in out of a flat panel: 59.68°
 */
export function aimOffAxis(place: Vector, tilt: number, turn: number): number {
  const { x, y, z } = place;
  const along =
    x * Math.sin(tilt) * Math.sin(turn) + y * Math.sin(tilt) * Math.cos(turn) + z * Math.cos(tilt);
  return Math.acos(Math.min(1, Math.max(-1, along / aimDistance(place))));
}

/** Speed of sound at 20 °C, in mm a minute. */
const soundSpeed = 343.2 * 1000 * 60;

/** How many wavelengths a cone is wide; cone in mm, frequency in 1/min. */
export function wavesAcross(cone: number, frequency: number): number {
  return (cone * frequency) / soundSpeed;
}

/** From here on the first terms of the series for large arguments are exact to 13 digits. */
const large = 100;

/**
 * Bessel function of the first kind, order 1, for arguments from `large` on, however large.
 *
 * @source NIST Digital Library of Mathematical Functions, 10.17.3
 */
function besselOneOfLarge(x: number): number {
  const even = 1 + 15 / 128 / x ** 2 - 4725 / 32768 / x ** 4;
  const odd = 3 / 8 / x - 105 / 1024 / x ** 3;
  const phase = x - (3 * Math.PI) / 4;
  return Math.sqrt(2 / (Math.PI * x)) * (even * Math.cos(phase) - odd * Math.sin(phase));
}

/** The same for any from nothing up: its integral by equal steps, exact for a periodic curve. */
function besselOne(x: number): number {
  if (x >= large) return besselOneOfLarge(x);
  const steps = 64 + 2 * Math.ceil(x);
  let sum = 0;
  for (let step = 0; step < steps; step++) {
    const angle = (2 * Math.PI * step) / steps;
    sum += Math.cos(angle - x * Math.sin(angle));
  }
  return sum / steps;
}

/**
 * Level of a flat round piston at an angle off its axis against the level on it, in dB (0 or below);
 * cone in mm, frequency in 1/min, angle in radians. Minus infinity in a null.
 *
 * @source J. Eargle, "Electroacoustical Reference Data": 2·J1(x)/x with x = π·d/λ·sin θ
 * @example a 130 mm cone at 2 kHz, 30°: −1.586 dB
 */
export function offAxisLevel(cone: number, frequency: number, angle: number): number {
  const x = Math.abs(Math.PI * wavesAcross(cone, frequency) * Math.sin(angle));
  if (x < 1e-9) return 0;
  // Where not even the number of waves can be told, nothing is left of the level.
  if (!Number.isFinite(x)) return -Infinity;
  return 20 * Math.log10(Math.abs((2 * besselOne(x)) / x));
}

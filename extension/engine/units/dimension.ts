/**
 * Dimension of a value: exponents over length, mass, time, temperature difference and money.
 * Halves are allowed (a square root of an area). Base units: mm, g, min, °C, the job's currency;
 * so areas are mm² and volumes mm³.
 */
export interface Dimension {
  readonly length: number;
  readonly mass: number;
  readonly time: number;
  readonly temperature: number;
  readonly money: number;
  /**
   * `angle` marks a plain number in radians; `point` marks a temperature on a scale (in °C), as
   * against a temperature difference.
   */
  readonly tag?: 'angle' | 'point';
}

function dimension(part: Partial<Dimension>): Dimension {
  return { length: 0, mass: 0, time: 0, temperature: 0, money: 0, ...part };
}

export const plain = dimension({});
export const angle = dimension({ tag: 'angle' });
export const length = dimension({ length: 1 });
export const area = dimension({ length: 2 });
export const volume = dimension({ length: 3 });
export const mass = dimension({ mass: 1 });
export const time = dimension({ time: 1 });
export const frequency = dimension({ time: -1 });
export const temperature = dimension({ temperature: 1, tag: 'point' });
export const temperatureDifference = dimension({ temperature: 1 });
export const money = dimension({ money: 1 });
export const density = dimension({ mass: 1, length: -3 });
export const arealWeight = dimension({ mass: 1, length: -2 });

// Written out exponent by exponent: values are compared and multiplied thousands of times an edit.
function combined(a: Dimension, b: Dimension, sign: 1 | -1): Dimension {
  return {
    length: a.length + sign * b.length,
    mass: a.mass + sign * b.mass,
    time: a.time + sign * b.time,
    temperature: a.temperature + sign * b.temperature,
    money: a.money + sign * b.money,
  };
}

/** True where both measure the same thing: equal exponents and the same tag. */
export function sameDimension(a: Dimension, b: Dimension): boolean {
  if (a === b) return true;
  const inSpace = a.length === b.length && a.mass === b.mass && a.time === b.time;
  return inSpace && a.temperature === b.temperature && a.money === b.money && a.tag === b.tag;
}

/** A stable text that is equal exactly for equal dimensions: a map key. */
export function dimensionKey(of: Dimension): string {
  const { length, mass, time, temperature, money, tag = '' } = of;
  return `${String(length)},${String(mass)},${String(time)},${String(temperature)},${String(money)},${tag}`;
}

/** Dimension of a product; tags are dropped. Whether the product is allowed at all: `multipliedDimensions`. */
export function multiplied(a: Dimension, b: Dimension): Dimension {
  return combined(a, b, 1);
}

/** Dimension of a quotient; tags are dropped. Whether it is allowed at all: `dividedDimensions`. */
export function divided(a: Dimension, b: Dimension): Dimension {
  return combined(a, b, -1);
}

/** Dimension of a power; tags are dropped. */
export function raised(of: Dimension, exponent: number): Dimension {
  return {
    length: of.length * exponent + 0,
    mass: of.mass * exponent + 0,
    time: of.time * exponent + 0,
    temperature: of.temperature * exponent + 0,
    money: of.money * exponent + 0,
  };
}

/** Dimension of a square root. */
export function rooted(of: Dimension): Dimension {
  return raised(of, 0.5);
}

/**
 * Dimension of a sum or difference, or undefined where the two cannot be added. Two points on a
 * temperature scale give a difference; a point takes a difference and stays a point. An angle and a
 * plain number are refused here; whoever knows that the number is an expression of PI() may allow it.
 */
export function addedDimensions(
  a: Dimension,
  b: Dimension,
  sign: '+' | '-',
): Dimension | undefined {
  const points = (a.tag === 'point' ? 1 : 0) + (b.tag === 'point' ? 1 : 0);
  if (points === 0) return sameDimension(a, b) ? a : undefined;
  if (points === 2) return sign === '-' ? temperatureDifference : undefined;
  if (a.tag === 'point') return sameDimension(b, temperatureDifference) ? a : undefined;
  return sign === '+' && sameDimension(a, temperatureDifference) ? b : undefined;
}

/** Dimension of a product, or undefined where a temperature on a scale would be multiplied. */
export function multipliedDimensions(a: Dimension, b: Dimension): Dimension | undefined {
  return a.tag === 'point' || b.tag === 'point' ? undefined : multiplied(a, b);
}

/** Dimension of a quotient, or undefined where a temperature on a scale would take part. */
export function dividedDimensions(a: Dimension, b: Dimension): Dimension | undefined {
  return a.tag === 'point' || b.tag === 'point' ? undefined : divided(a, b);
}

/** Share by which two numbers may differ and still be the same: far below any tool, far above rounding noise. */
const share = 1e-9;

/** Noise left where two equal values were subtracted; in base units, so a billionth of a micrometre for lengths. */
const noise = 1e-12;

/** Equality of people: `0.1in + 0.2in` is `0.3in`. */
export function sameValue(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) <= Math.max(noise, share * Math.max(Math.abs(a), Math.abs(b)));
}

/** Order with tolerance: 0 for the same value, else the sign of a − b. */
export function comparedValues(a: number, b: number): -1 | 0 | 1 {
  if (sameValue(a, b)) return 0;
  return a < b ? -1 : 1;
}

function roundedCount(count: number, direction: 'nearest' | 'up' | 'down'): number {
  const nearest = Math.sign(count) * Math.floor(Math.abs(count) * (1 + 1e-12) + 0.5);
  if (direction === 'nearest' || sameValue(count, nearest)) return nearest;
  return direction === 'up' ? Math.ceil(count) : Math.floor(count);
}

/**
 * x to a whole number of steps; `up` and `down` are towards plus and minus infinity. A count of steps
 * that is whole within the tolerance of equality is taken as whole: 0.3 / 0.1 is 3 steps, not 3.0000000001.
 * A step of 0 leaves x as it is.
 */
export function roundedTo(
  x: number,
  step: number,
  direction: 'nearest' | 'up' | 'down' = 'nearest',
): number {
  const size = Math.abs(step);
  if (size === 0 || !Number.isFinite(x)) return x;
  const count = roundedCount(x / size, direction);
  const inverse = Math.round(1 / size);
  // Dividing by the whole inverse gives the double nearest to 0.3, where 3 × 0.1 would miss it.
  const exact = inverse > 0 && sameValue(inverse * size, 1) ? count / inverse : count * size;
  return exact + 0;
}

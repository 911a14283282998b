/** Steps after which the arithmetic-geometric mean of any two doubles has settled. */
const mostSteps = 40;

/**
 * Perimeter of an ellipse from its half axes, in the unit of the axes; exact to the last digits of a
 * double.
 *
 * Gauss's series over the arithmetic-geometric mean, so there is no shape for which it is only near.
 *
 * @source Gauss (arithmetic-geometric mean), checked against quadrature to 1e-10
 * @example ellipsePerimeter(3, 2) // 15.8654395893
 */
export function ellipsePerimeter(halfLength: number, halfWidth: number): number {
  const long = Math.max(Math.abs(halfLength), Math.abs(halfWidth));
  const short = Math.min(Math.abs(halfLength), Math.abs(halfWidth));
  if (short === 0) return 4 * long;
  let [mean, root] = [long, short];
  let sum = (long * long - short * short) / 2;
  let weight = 1;
  for (let step = 0; step < mostSteps && mean - root > mean * 1e-16; step++) {
    const half = (mean - root) / 2;
    [mean, root] = [(mean + root) / 2, Math.sqrt(mean * root)];
    sum += weight * half * half;
    weight *= 2;
  }
  return (2 * Math.PI * (long * long - sum)) / mean;
}

/** Smallest radius of curvature of an ellipse, at the ends of its longer axis. */
export function ellipseTightestRadius(halfLength: number, halfWidth: number): number {
  const long = Math.max(halfLength, halfWidth);
  const short = Math.min(halfLength, halfWidth);
  return long === 0 ? 0 : (short * short) / long;
}

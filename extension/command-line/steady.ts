/** A number without the noise of binary fractions, so that files compare. */
export function steady(number: number): number {
  return Number(number.toPrecision(12));
}

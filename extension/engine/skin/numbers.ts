/** A number of a list of reals; the list is as long as the mesh, so it is always there. */
export function real(values: Float64Array, index: number): number {
  return values[index] ?? 0;
}

/** A whole number of a list of indices. */
export function whole(values: Uint32Array, index: number): number {
  return values[index] ?? 0;
}

/** Adds to a number of a list. */
export function add(values: Float64Array, index: number, more: number): void {
  values[index] = (values[index] ?? 0) + more;
}

/** Sum of products of two lists. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let index = 0; index < a.length; index++) sum += real(a, index) * real(b, index);
  return sum;
}

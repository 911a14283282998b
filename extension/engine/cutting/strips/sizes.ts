/** Pieces of one length to be cut from strips; lengths in whole thousandths of a millimetre, kerf included. */
export interface Size {
  readonly index: number;
  readonly length: number;
  readonly count: number;
}

/** Strips of one length, kerf added once. */
export interface StripStock {
  readonly index: number;
  readonly length: number;
  readonly price: number;
  readonly limit: number;
}

/** One strip: how many pieces of each size are cut from it, by the size's index. */
export interface Strip {
  readonly stock: StripStock;
  readonly counts: readonly number[];
}

/** Length of the pieces on a strip. */
export function lengthOn(counts: readonly number[], sizes: readonly Size[]): number {
  let sum = 0;
  for (const { index, length } of sizes) sum += length * (counts[index] ?? 0);
  return sum;
}

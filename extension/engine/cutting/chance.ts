/** A source of numbers from 0 to below 1 that gives the same numbers after the same seed. */
export type Chance = () => number;

/**
 * Numbers that look like chance and are the same on every machine: a 32-bit counter stepped by an odd
 * constant and mixed by multiplications ("mulberry32", public domain).
 */
export function chanceFrom(seed: number): Chance {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A whole number from 0 to below `end`. */
export function below(chance: Chance, end: number): number {
  return Math.floor(chance() * end);
}

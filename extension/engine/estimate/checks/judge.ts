import { length, sameDimension } from '../../units/dimension.ts';
import type { Quantity } from '../../units/quantity.ts';
import { comparedValues } from '../../units/same-value.ts';

/** What is compared: the figure, its limits, and the margin under which a pass is called near. */
export interface Compared {
  readonly value: Quantity;
  readonly least?: Quantity;
  readonly most?: Quantity;
  readonly near?: Quantity;
}

export interface Judgement {
  readonly outcome: 'pass' | 'near' | 'fail';
  /** Which limit is closer, or is broken. */
  readonly side: 'least' | 'most';
  readonly limit: Quantity;
  /** Room left to that limit; negative where it is broken. */
  readonly margin: Quantity;
}

// A sixteenth of an inch, in mm: what a rule at the bench tells apart (common practice, no source).
const usualRoom = 25.4 / 16;

/** Share of a limit that counts as near where it is no length (common practice, no source). */
const usualShare = 0.1;

function nearMargin(compared: Compared, limit: Quantity): number {
  if (compared.near !== undefined) return compared.near.base;
  if (sameDimension(limit.dimension, length)) return usualRoom;
  return Math.abs(limit.base) * usualShare;
}

/**
 * Compares a figure with its limits, all of one dimension, in base units: it passes where
 * least ≤ value ≤ most with the tolerance of equality, and is near where less than `near` is left to
 * the closer limit. Without a limit there is no judgement.
 */
export function judge(compared: Compared): Judgement | undefined {
  const { value, least, most } = compared;
  const sides = [
    ...(least === undefined
      ? []
      : [{ side: 'least' as const, limit: least, room: value.base - least.base }]),
    ...(most === undefined
      ? []
      : [{ side: 'most' as const, limit: most, room: most.base - value.base }]),
  ].sort((one, two) => one.room - two.room);
  const [closer] = sides;
  if (closer === undefined) return undefined;
  const { side, limit, room } = closer;
  const margin = { base: room, dimension: value.dimension };
  const [low, high] = side === 'least' ? [limit.base, value.base] : [value.base, limit.base];
  if (comparedValues(high, low) < 0) return { outcome: 'fail', side, limit, margin };
  const near = comparedValues(room, nearMargin(compared, limit)) < 0;
  return { outcome: near ? 'near' : 'pass', side, limit, margin };
}

import type { Blank } from './layout.ts';
import type { Asked } from './need.ts';

/** One length to be cut from stock, mm; undefined where the row does not ask for lengths. */
export function pieceOfStrip(row: Asked): Blank | undefined {
  const { use, pieces, panels } = row;
  if (use.count || use.dimension.length !== 1) return undefined;
  return { length: use.base, width: 0, count: Math.ceil(pieces * panels - 1e-9) };
}

import type { CutAnswer, CutInstance, Effort, Report } from './instance.ts';
import { layOut } from './lay-out.ts';

/** Pieces up to which a layout is tried while somebody types. */
const mostAtOnce = 120;

function piecesIn(instance: CutInstance): number {
  return instance.kind === 'packs' ? 0 : instance.parts.reduce((sum, { count }) => sum + count, 0);
}

function withEffort(instance: CutInstance, effort: Effort): CutInstance {
  return instance.kind === 'packs' ? instance : { ...instance, effort };
}

/**
 * A layout found within a keystroke: a handful of orders tried once. Undefined where there are too many
 * pieces, and for outlines, which always take longer.
 */
export function quickLayout(instance: CutInstance): CutAnswer | undefined {
  if (instance.kind === 'outlines' || piecesIn(instance) > mostAtOnce) return undefined;
  return layOut(withEffort(instance, 'quick'));
}

/**
 * The layout that counts: the quick one where nothing can be cheaper, else the one that is left after
 * the search that the instance asks for. The same on every machine, for it goes by work and not by a
 * clock.
 */
export function settledLayout(instance: CutInstance, report?: Report): CutAnswer {
  const quick = quickLayout(instance);
  return quick?.proven === true ? quick : layOut(instance, report);
}

import { budgetOf } from './budgets.ts';
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
 * The same instance to be laid in about a tenth of a second, so that something true is seen soon;
 * undefined where the whole search takes hardly longer.
 */
export function firstTier(instance: CutInstance): CutInstance | undefined {
  if (instance.kind === 'packs') return undefined;
  const isShort = budgetOf(instance.effort, piecesIn(instance)) <= 2 * budgetOf('live');
  return isShort && !isByOutlines(instance) ? undefined : { ...instance, effort: 'live' };
}

function isByOutlines({ kind, parts }: Exclude<CutInstance, { kind: 'packs' }>): boolean {
  return kind === 'outlines' || parts.some(({ points }) => points !== undefined);
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

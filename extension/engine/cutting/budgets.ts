import type { Effort } from './instance.ts';

/** Work allowed by effort, in places looked at: a few milliseconds, a twentieth of a second, half a second, some. */
const budgets: Readonly<Record<Effort, number>> = {
  quick: 6_000,
  live: 500_000,
  refine: 6_000_000,
  long: 80_000_000,
};

/** A few pieces lie in a few ways only: more work than this many for each pair of them finds no more. */
const perPair = 5_000;

/** How many places a search may look at for so many pieces. */
export function budgetOf(effort: Effort | undefined, pieces = Infinity): number {
  return Math.min(budgets[effort ?? 'refine'], perPair * pieces * pieces);
}

/** The same for outlines, in pairs of parts looked at. */
const outlineBudgets: Readonly<Record<Effort, number>> = {
  quick: 20_000,
  live: 70_000,
  refine: 12_000_000,
  long: 120_000_000,
};

/** How many pairs of outlines a search may look at. */
export function outlineBudgetOf(effort: Effort | undefined): number {
  return outlineBudgets[effort ?? 'refine'];
}

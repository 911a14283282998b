import type { Effort } from './instance.ts';

/** Work allowed by effort, in places looked at: a few milliseconds, a tenth of a second, one second, ten. */
const budgets: Readonly<Record<Effort, number>> = {
  quick: 30_000,
  live: 500_000,
  refine: 8_000_000,
  long: 80_000_000,
};

/** How many places a search may look at. */
export function budgetOf(effort: Effort | undefined): number {
  return budgets[effort ?? 'refine'];
}

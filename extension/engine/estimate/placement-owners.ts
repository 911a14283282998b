import type { Placement } from '../cutting/instance.ts';
import type { Laid, Owner } from './cut-layout.ts';

/**
 * The row whose piece each placement is: what a lock holds is its row's; the other copies of a part go
 * to the rows that ask for it, one row after another.
 */
export function placementOwners({ order, answer }: Laid): ReadonlyMap<Placement, Owner> {
  const found = new Map<Placement, Owner>();
  const taken = new Map<Owner, number>();
  const give = (placement: Placement, fits: (owner: Owner) => boolean): void => {
    const owner = (order.owners.get(placement.part) ?? []).find(
      (one) => (taken.get(one) ?? 0) < one.count && fits(one),
    );
    if (owner === undefined) return;
    taken.set(owner, (taken.get(owner) ?? 0) + 1);
    found.set(placement, owner);
  };
  for (const placement of answer.placements) {
    const lock = placement.fixed === undefined ? undefined : order.held.get(placement.fixed);
    if (lock !== undefined) give(placement, ({ row }) => row === lock.part);
  }
  for (const placement of answer.placements) if (!found.has(placement)) give(placement, () => true);
  return found;
}

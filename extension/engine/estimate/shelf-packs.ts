import type { BillLine, BoughtPack } from './bill.ts';

/** The packs of a line that are bought, and those that stand on the shelf already. */
export function packsApart({ packs }: Pick<BillLine, 'packs'>): {
  readonly bought: readonly BoughtPack[];
  readonly shelf: readonly BoughtPack[];
} {
  return {
    bought: packs.filter(({ shelf }) => shelf !== true),
    shelf: packs.filter(({ shelf }) => shelf === true),
  };
}

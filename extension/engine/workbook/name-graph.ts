import type { Cell } from './row.ts';

/** Who hangs on what: cells on cells, and cells on names, kinds and lists. */
export interface NameGraph {
  /** Says anew what a cell hangs on. */
  readonly hang: (cell: Cell, reads: readonly Cell[], watches: readonly string[]) => void;
  readonly watching: (key: string) => Iterable<Cell>;
}

const none: readonly never[] = [];

export function openNameGraph(): NameGraph {
  const watchers = new Map<string, Set<Cell>>();

  function leave(cell: Cell): void {
    for (const read of cell.reads) read.readers?.delete(cell);
    for (const key of cell.watches) watchers.get(key)?.delete(cell);
  }

  return {
    hang: (cell, reads, watches) => {
      leave(cell);
      cell.reads = reads.length === 0 ? none : reads;
      cell.watches = watches.length === 0 ? none : watches;
      for (const read of reads) (read.readers ??= new Set()).add(cell);
      for (const key of watches) {
        const known = watchers.get(key);
        if (known === undefined) watchers.set(key, new Set([cell]));
        else known.add(cell);
      }
    },
    watching: (key) => watchers.get(key) ?? none,
  };
}

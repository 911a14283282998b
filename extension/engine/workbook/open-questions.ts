import type { HeavyQuestion } from '../formula/catalogue.ts';
import type { CallSite } from './call-sites.ts';

/** Heavy questions that cells go on without for now. */
export interface OpenQuestions {
  /**
   * What a call in a cell has to do without; undefined where it has all it asked for, an empty list
   * where its value stays an estimate that no answer will better.
   */
  readonly note: (cell: number, site: CallSite, open: readonly HeavyQuestion[] | undefined) => void;
  /** Whether the value of a cell is an estimate because of them. */
  readonly has: (cell: number) => boolean;
  readonly forget: (cell: number) => void;
  /** All of them, each once. */
  readonly all: () => readonly HeavyQuestion[];
}

export function openQuestions(): OpenQuestions {
  const cells = new Map<number, Map<CallSite, readonly HeavyQuestion[]>>();
  return {
    note: (cell, site, open) => {
      const sites = cells.get(cell);
      if (open !== undefined) {
        if (sites === undefined) cells.set(cell, new Map([[site, open]]));
        else sites.set(site, open);
      } else if (sites?.delete(site) === true && sites.size === 0) cells.delete(cell);
    },
    has: (cell) => cells.has(cell),
    forget: (cell) => {
      cells.delete(cell);
    },
    all: () => {
      const found = new Map<string, HeavyQuestion>();
      for (const sites of cells.values())
        for (const open of sites.values()) for (const one of open) found.set(one.key, one);
      return [...found.values()];
    },
  };
}

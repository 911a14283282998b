import type { HeavyQuestion } from '../formula/catalogue.ts';
import type { CallSite } from './call-sites.ts';

/** Heavy questions that cells go on without for now. */
export interface OpenQuestions {
  /** Cells are about to be worked out. */
  readonly begin: () => void;
  /**
   * What a call in a cell has to do without; undefined where it has all it asked for, an empty list
   * where its value stays an estimate that no answer will better.
   */
  readonly note: (cell: number, site: CallSite, open: readonly HeavyQuestion[] | undefined) => void;
  /** A cell has been worked out since `begin`: what a call asked that it no longer comes to is dropped. */
  readonly worked: (cell: number) => void;
  /** Whether the value of a cell is an estimate because of them. */
  readonly has: (cell: number) => boolean;
  readonly forget: (cell: number) => void;
  /** All of them, each once. */
  readonly all: () => readonly HeavyQuestion[];
}

interface Noted {
  readonly open: readonly HeavyQuestion[];
  readonly run: number;
}

export function openQuestions(): OpenQuestions {
  const cells = new Map<number, Map<CallSite, Noted>>();
  let run = 0;

  function drop(cell: number, sites: Map<CallSite, Noted>, site: CallSite): void {
    if (sites.delete(site) && sites.size === 0) cells.delete(cell);
  }

  return {
    begin: () => {
      run += 1;
    },
    note: (cell, site, open) => {
      const sites = cells.get(cell);
      if (open !== undefined) {
        if (sites === undefined) cells.set(cell, new Map([[site, { open, run }]]));
        else sites.set(site, { open, run });
      } else if (sites !== undefined) drop(cell, sites, site);
    },
    worked: (cell) => {
      const sites = cells.get(cell);
      if (sites === undefined) return;
      for (const [site, noted] of sites) if (noted.run !== run) drop(cell, sites, site);
    },
    has: (cell) => cells.has(cell),
    forget: (cell) => {
      cells.delete(cell);
    },
    all: () => {
      const found = new Map<string, HeavyQuestion>();
      for (const sites of cells.values())
        for (const { open } of sites.values()) for (const one of open) found.set(one.key, one);
      return [...found.values()];
    },
  };
}

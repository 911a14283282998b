import { packRows } from '../protocol/packing.ts';
import type { DeskPanel } from './desk-panel.ts';
import type { Preview } from './views/preview.ts';

/** Rows in a first `rows` message: a screenful and then some, so that the grid paints before the rest. */
const firstRows = 80;
const moreRows = 400;

/** Sends a panel everything: the job, then its rows, the first screenful ahead of the rest. */
export function postJob(panel: DeskPanel, revision: number, { job, rows }: Preview): void {
  panel.post({ type: 'shown', revision, job });
  for (const [table, all] of rows) {
    let from = 0;
    do {
      const to = from + (from === 0 ? firstRows : moreRows);
      panel.post({ type: 'rows', revision, table, rows: packRows(all.slice(from, to)) });
      from = to;
    } while (from < all.length);
  }
}

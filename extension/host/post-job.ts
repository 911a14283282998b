import { packRows } from '../protocol/packing.ts';
import type { DeskPanel } from './desk-panel.ts';
import { pause } from './pause.ts';
import type { Preview } from './views/preview.ts';

/** Rows in a first `rows` message: a screenful and then some, so that the grid paints before the rest. */
const firstRows = 80;
const moreRows = 400;

/**
 * How long the page has to itself once it has its first screenful of texts, in ms. Most answers come
 * in that time, and then nobody has to take in all rows twice.
 */
const answersDue = 1000;

/** The messages that show a job: the job, then its rows, each sheet's first screenful ahead of its rest. */
function* messagesOf(
  revision: number,
  { job, rows }: Preview,
): Generator<Parameters<DeskPanel['post']>[0]> {
  yield { type: 'shown', revision, job };
  for (const [table, all] of rows) {
    let from = 0;
    do {
      const to = from + (from === 0 ? firstRows : moreRows);
      yield { type: 'rows', revision, table, rows: packRows(all.slice(from, to)) };
      from = to;
    } while (from < all.length);
  }
}

/** Sends a panel everything. */
export function postJob(panel: DeskPanel, revision: number, shown: Preview): void {
  for (const message of messagesOf(revision, shown)) panel.post(message);
}

/**
 * The same before the answers are known; the first screenful is painted long before the rest comes,
 * which is left off as soon as it is not `wanted` any more.
 */
export async function postPreview(
  panel: DeskPanel,
  shown: Preview,
  wanted: () => boolean,
): Promise<void> {
  let sent = 0;
  for (const message of messagesOf(0, shown)) {
    if (!wanted()) return;
    panel.post(message);
    sent += 1;
    if (sent === 2) await pause(answersDue);
  }
}

import * as vscode from 'vscode';
import {
  freezeEdits,
  priceDrift,
  pricesToFreeze,
  thawEdits,
  type Snapshot,
} from '../engine/index.ts';
import { editOrTell } from './edit-or-tell.ts';
import type { JobDesk } from './job-desk.ts';
import { today } from './new-job.ts';
import { changeText, moneyText } from './views/money.ts';

function driftWords(desk: JobDesk): string {
  const snapshot = desk.snapshot();
  const drift = priceDrift(snapshot, desk.whatIf);
  if (drift === undefined) return '';
  const { settings } = snapshot;
  const since = drift.since.length === 0 ? '' : ` since ${drift.since.join(', ')}`;
  const change = changeText(drift.today - drift.frozen, settings);
  const now = change === '' ? 'the same' : `${moneyText(drift.today, settings)} (${change})`;
  return `This job holds ${String(drift.held)} prices${since}: materials come to ${moneyText(drift.frozen, settings)}; at today’s prices to ${now}.`;
}

function priceLines(snapshot: Snapshot): string {
  const prices = pricesToFreeze(snapshot);
  const moved = prices.filter(({ held, text }) => held !== text);
  const lines = moved.slice(0, 12).map(({ pack, text, held }) => {
    return held === undefined ? `${pack}: ${text}` : `${pack}: ${held} → ${text}`;
  });
  const more = moved.length - lines.length;
  return [...lines, ...(more > 0 ? [`and ${String(more)} more`] : [])].join('\n');
}

/** Holds today's prices for a quote, brings those that are held to today, or lets the job follow its book. */
export async function freezePrices(desk: JobDesk): Promise<void> {
  const snapshot = desk.snapshot();
  const count = pricesToFreeze(snapshot).length;
  const drift = driftWords(desk);
  const [freeze, release] = ['Freeze Prices', 'Release Prices'];
  const question = `Hold the prices of ${String(count)} packs in this job, as of today? What it is bought for then no longer follows the shop book.`;
  const detail = [drift, priceLines(snapshot)].filter((text) => text !== '').join('\n\n');
  const choices = drift === '' ? [freeze] : [freeze, release];
  const chosen = await vscode.window.showInformationMessage(
    question,
    { modal: true, detail },
    ...choices,
  );
  if (chosen === undefined) return;
  const edits =
    chosen === release ? thawEdits(snapshot.shown) : freezeEdits(desk.snapshot(), today());
  await editOrTell(desk, edits);
}

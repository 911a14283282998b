import * as vscode from 'vscode';
import {
  actualLines,
  evidenceWords,
  proposeRates,
  rateEdits,
  type RateProposal,
  type Snapshot,
} from '../engine/index.ts';
import { editOrTell } from './edit-or-tell.ts';
import type { JobDesk } from './job-desk.ts';
import { jobsOfBook } from './jobs-of-book.ts';

async function jobsOn(book: vscode.Uri): Promise<readonly Snapshot[]> {
  const found: Snapshot[] = [];
  for await (const job of jobsOfBook(book)) found.push(job.with(job.book));
  return found;
}

interface RateItem extends vscode.QuickPickItem {
  readonly proposal: RateProposal;
}

function itemOf(proposal: RateProposal): RateItem {
  const { name, column, now, then } = proposal;
  return {
    label: `${name}: ${now === '' ? 'nothing said' : now} → ${then}`,
    description: column.replace('default.', ''),
    detail: evidenceWords(proposal),
    picked: true,
    proposal,
  };
}

/** Proposes rates for the shop book from what jobs of the workspace took; those agreed to are one edit. */
export async function updateRates(desk: JobDesk): Promise<void> {
  const jobs = await vscode.window.withProgress(
    { location: vscode.ProgressLocation.Notification, title: 'Reading the jobs of this book' },
    () => jobsOn(desk.document.uri),
  );
  const reading = desk.snapshot().shown;
  const { proposals, left } = proposeRates(jobs, reading);
  if (proposals.length === 0) {
    const detail = left.join('\n');
    const none = 'What the jobs of this book took gives no new rate.';
    await vscode.window.showInformationMessage(none, { modal: true, detail });
    return;
  }
  const picked = await vscode.window.showQuickPick(proposals.map(itemOf), {
    title: `Update Rates from Actuals: ${String(jobs.length)} jobs`,
    placeHolder: left.length === 0 ? 'Rates to write into the book' : left.join(' '),
    canPickMany: true,
  });
  const agreed = (picked ?? []).map(({ proposal }) => proposal);
  if (agreed.length === 0) return;
  await editOrTell(desk, rateEdits(agreed, reading));
}

/** Shows what the job was estimated at beside what it took. */
export async function showActuals(desk: JobDesk): Promise<void> {
  const lines = actualLines(desk.snapshot());
  if (lines.length === 0) {
    await vscode.window.showInformationMessage(
      'Nothing is said of what the job took. Fill in Used on parts and Actual on tasks.',
    );
    return;
  }
  await vscode.window.showQuickPick(
    lines.map(({ name, estimated, actual, off }) => ({
      label: name,
      description: off,
      detail: `estimated ${estimated}, took ${actual}`,
    })),
    { title: 'Estimate against Actual', matchOnDetail: true },
  );
}

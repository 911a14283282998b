import * as vscode from 'vscode';
import {
  evidenceWords,
  fileForm,
  proposeRates,
  rateEdits,
  type RateProposal,
  type Snapshot,
} from '../engine/index.ts';
import { readTextBeside } from './book-files.ts';
import { bookOfJob } from './book-of-job.ts';
import { editOrTell } from './edit-or-tell.ts';
import { gridViewType } from './grid-editor.ts';
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

/** The book is opened first, so that what is written into it is seen and can be undone there. */
async function updateRatesOfItsBook(desk: JobDesk): Promise<void> {
  const book = bookOfJob(desk);
  const lacks =
    book === undefined
      ? 'This job runs on the built-in demo book, whose rates cannot be changed. Name a shop book in Book of its settings first.'
      : (await readTextBeside(book)) === undefined
        ? `The shop book of this job, ${book.path}, cannot be read.`
        : undefined;
  if (lacks !== undefined) {
    await vscode.window.showInformationMessage(lacks);
    return;
  }
  await vscode.commands.executeCommand('vscode.openWith', book, gridViewType);
  await vscode.commands.executeCommand('panelwright.updateRates', book);
}

/**
 * Proposes rates for the shop book from what jobs of the workspace took; those agreed to are one edit.
 * In a job it does so for the book that the job stands on.
 */
export async function updateRates(desk: JobDesk): Promise<void> {
  if (fileForm(desk.snapshot().shown) === 'job') {
    await updateRatesOfItsBook(desk);
    return;
  }
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

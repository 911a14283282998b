import * as vscode from 'vscode';
import { gridViewType } from './grid-editor.ts';
import type { JobDesk } from './job-desk.ts';
import { jobsOfBook, type JobOfBook } from './jobs-of-book.ts';
import { changeText, moneyText } from './views/money.ts';

/** A job that stands on the book, with its price before and after what is not saved yet. */
interface EffectItem extends vscode.QuickPickItem {
  readonly uri: vscode.Uri;
  readonly moved: number;
}

interface Texts {
  readonly saved: string;
  readonly now: string;
}

function effectOn(job: JobOfBook, { saved, now }: Texts): EffectItem {
  const before = job.with(saved);
  const after = job.with(now);
  const [was, is] = [before, after].map(({ price, bill }) =>
    price.state === 'materials-only' ? bill.totals.charge : price.totals.price,
  );
  const moved = (is ?? 0) - (was ?? 0);
  const change = changeText(moved, after.settings);
  const path = vscode.workspace.asRelativePath(job.uri);
  return {
    label: job.reading.head.get('title')?.text ?? path,
    description: path,
    detail:
      change === ''
        ? `${moneyText(is ?? 0, after.settings)}, as before`
        : `${moneyText(was ?? 0, after.settings)} → ${moneyText(is ?? 0, after.settings)} (${change})`,
    uri: job.uri,
    moved,
  };
}

async function effects(book: vscode.Uri, texts: Texts): Promise<readonly EffectItem[]> {
  const items: EffectItem[] = [];
  for await (const job of jobsOfBook(book)) items.push(effectOn(job, texts));
  return items.sort((a, b) => Math.abs(b.moved) - Math.abs(a.moved));
}

/** Shows what changes of the book that are not saved yet do to the price of each job that uses it. */
export async function showEffect(desk: JobDesk): Promise<void> {
  const { uri } = desk.document;
  const saved = new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
  const now = desk.document.getText();
  if (saved === now) {
    await vscode.window.showInformationMessage(
      'This shop book has no change that is not saved. Change a price, and see here what it does before it is saved.',
    );
    return;
  }
  const items = await vscode.window.withProgress(
    { location: vscode.ProgressLocation.Notification, title: 'Working out the jobs of this book' },
    () => effects(uri, { saved, now }),
  );
  if (items.length === 0) {
    await vscode.window.showInformationMessage('No job of this workspace uses this shop book.');
    return;
  }
  const picked = await vscode.window.showQuickPick(items, {
    title: 'Effect on Jobs: price before tax, saved → now',
    placeHolder: 'Choose a job to open it',
    matchOnDescription: true,
  });
  if (picked !== undefined)
    await vscode.commands.executeCommand('vscode.openWith', picked.uri, gridViewType);
}

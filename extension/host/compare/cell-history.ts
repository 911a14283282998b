import * as vscode from 'vscode';
import {
  moneyText,
  openCellHistory,
  openSession,
  readFile,
  type CellPast,
  type TracedCell,
} from '../../engine/index.ts';
import type { CellAddress } from '../../protocol/messages.ts';
import {
  commitTime,
  repositoryOf,
  textAt,
  type GitCommit,
  type GitRepository,
} from '../git/repository.ts';
import type { JobDesk } from '../job-desk.ts';
import { earlierAt, type Earlier } from './earlier.ts';

/** Commits that are looked through. */
const most = 200;
/** Values whose price is worked out; older ones are listed without. */
const mostPriced = 25;

type Past = CellPast<GitCommit | undefined>;

interface PastItem extends vscode.QuickPickItem {
  readonly past: Past;
}

function traced({ table, id, column }: CellAddress): TracedCell {
  return table === 'job' ? { table, id: '', column: id } : { table, id, column };
}

/** Looks through the commits of the file, as long as nobody cancels. */
async function pastOf(
  desk: JobDesk,
  cell: TracedCell,
  repository: GitRepository,
  token: vscode.CancellationToken,
): Promise<readonly Past[]> {
  const { uri } = desk.document;
  const commits = await repository.log({ maxEntries: most, path: uri.fsPath });
  const history = openCellHistory<GitCommit | undefined>(cell);
  let goesOn = history.take({ reading: desk.snapshot().reading, about: undefined });
  for (const commit of commits) {
    if (!goesOn || token.isCancellationRequested) break;
    const text = await textAt(repository, commit.hash, uri);
    if (text !== undefined) goesOn = history.take({ reading: readFile(text), about: commit });
  }
  return history.changes();
}

/** Price before tax of a version, with the shop book as it was then. */
async function priceOf(past: Past, desk: JobDesk, repository: GitRepository): Promise<string> {
  const { reading, about } = past.version;
  if (about === undefined) {
    const { price } = desk.snapshot();
    return moneyText(price.totals.price, price.currency);
  }
  const then = await earlierAt(
    repository,
    { ref: about.hash, name: about.hash },
    desk.document.uri,
  );
  const { price } = openSession(reading, then?.book, then?.outlines).snapshot();
  return moneyText(price.totals.price, price.currency);
}

function item(past: Past, price: string): PastItem {
  const { about } = past.version;
  const [subject = ''] = about?.message.split('\n') ?? [];
  const who =
    about === undefined
      ? 'Not committed yet'
      : `${commitTime(about)} ${about.authorName ?? ''} ${about.hash.slice(0, 10)}: ${subject}`;
  return { label: past.text ?? '(blank)', description: price, detail: who.trim(), past };
}

/**
 * Lists who changed a cell, when and in which commit, with its values and the price each time. A value
 * that is chosen is the version to compare with.
 */
export async function showCellHistory(
  desk: JobDesk,
  cell: CellAddress,
): Promise<Earlier | undefined> {
  const found = await repositoryOf(desk.document.uri);
  if (!found.ok) {
    await vscode.window.showInformationMessage(found.message);
    return undefined;
  }
  const { repository } = found;
  const name = cell.table === 'job' ? `job.${cell.id}` : `${cell.id}.${cell.column}`;
  const items = await vscode.window.withProgress(
    {
      location: vscode.ProgressLocation.Notification,
      title: `History of ${name}`,
      cancellable: true,
    },
    async (_, token) => {
      const past = await pastOf(desk, traced(cell), repository, token);
      const told: PastItem[] = [];
      for (const one of past) {
        const priced = told.length < mostPriced && !token.isCancellationRequested;
        told.push(item(one, priced ? await priceOf(one, desk, repository) : ''));
      }
      return told;
    },
  );
  if (items.length === 0) {
    await vscode.window.showInformationMessage(`${name} says nothing, in none of its commits.`);
    return undefined;
  }
  const chosen = await vscode.window.showQuickPick(items, {
    title: `History of ${name}: choose a value to compare with`,
    matchOnDetail: true,
  });
  const about = chosen?.past.version.about;
  if (about === undefined) return undefined;
  const short = about.hash.slice(0, 10);
  return earlierAt(repository, { ref: about.hash, name: short }, desk.document.uri);
}

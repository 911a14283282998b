import * as vscode from 'vscode';
import { readFile } from '../../engine/index.ts';
import { readFilesBeside } from '../files-beside.ts';
import { bookUri } from '../book-files.ts';
import {
  commitTime,
  repositoryOf,
  textAt,
  type GitCommit,
  type GitRepository,
} from '../git/repository.ts';

/** An earlier version of a job with what it stood on. */
export interface Earlier {
  /** What it is called: "HEAD", "old-door.paneljob". */
  readonly against: string;
  readonly text: string;
  readonly book: string | undefined;
  readonly outlines: ReadonlyMap<string, string | undefined>;
}

/** Which version a person wants to compare with. */
export type EarlierKind = 'head' | 'revision' | 'branch' | 'file';

async function say(message: string): Promise<undefined> {
  await vscode.window.showInformationMessage(message);
  return undefined;
}

/** A revision of a job with its shop book as it was then; outlines are taken as they are now. */
export async function earlierAt(
  repository: GitRepository,
  revision: { readonly ref: string; readonly name: string },
  job: vscode.Uri,
): Promise<Earlier | undefined> {
  const text = await textAt(repository, revision.ref, job);
  const file = job.path.replace(/^.*\//, '');
  if (text === undefined) return say(`${revision.name} has no file ${file} to compare with.`);
  const reading = readFile(text);
  const now = await readFilesBeside(job, reading);
  const path = reading.head.get('book')?.text ?? '';
  const book = path === '' ? undefined : await textAt(repository, revision.ref, bookUri(job, path));
  return { against: revision.name, text, book: book ?? now.book.text, outlines: now.outlines };
}

function commitItem(commit: GitCommit): vscode.QuickPickItem & { readonly hash: string } {
  const [subject = ''] = commit.message.split('\n');
  const day = commitTime(commit).slice(0, 10);
  return {
    label: subject,
    description: `${day} ${commit.authorName ?? ''}`.trim(),
    detail: commit.hash.slice(0, 10),
    hash: commit.hash,
  };
}

async function chosenCommit(
  repository: GitRepository,
  job: vscode.Uri,
): Promise<{ readonly ref: string; readonly name: string } | undefined> {
  const commits = await repository.log({ maxEntries: 200, path: job.fsPath });
  if (commits.length === 0) return say('No commit has this job yet.');
  const chosen = await vscode.window.showQuickPick(commits.map(commitItem), {
    title: 'Compare with Revision',
    matchOnDescription: true,
    matchOnDetail: true,
  });
  if (chosen === undefined) return undefined;
  return { ref: chosen.hash, name: `${chosen.hash.slice(0, 10)} ${chosen.label}` };
}

async function chosenBranch(
  repository: GitRepository,
): Promise<{ readonly ref: string; readonly name: string } | undefined> {
  const refs = (await repository.getRefs?.({})) ?? [];
  const names = [...new Set(refs.flatMap(({ name }) => (name === undefined ? [] : [name])))];
  if (names.length === 0) return say('This repository has no other branch or tag.');
  const name = await vscode.window.showQuickPick(names, { title: 'Compare with Branch' });
  return name === undefined ? undefined : { ref: name, name };
}

async function chosenFile(job: vscode.Uri): Promise<Earlier | undefined> {
  const [uri] =
    (await vscode.window.showOpenDialog({
      title: 'Compare with File',
      openLabel: 'Compare',
      defaultUri: vscode.Uri.joinPath(job, '..'),
      filters: { 'Panel jobs': ['paneljob'], 'All files': ['*'] },
    })) ?? [];
  return uri === undefined ? undefined : earlierFile(uri);
}

/** Another file as the earlier version, with the shop book and outlines beside it. */
export async function earlierFile(uri: vscode.Uri): Promise<Earlier | undefined> {
  const against = uri.path.replace(/^.*\//, '');
  try {
    const text = new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
    const { book, outlines } = await readFilesBeside(uri, readFile(text));
    return { against, text, book: book.text, outlines };
  } catch (error) {
    if (error instanceof vscode.FileSystemError) return say(`${against} cannot be read.`);
    throw error;
  }
}

/** Asks which version is meant and reads it; undefined where there is none, which has been told then. */
export async function chosenEarlier(
  kind: EarlierKind,
  job: vscode.Uri,
): Promise<Earlier | undefined> {
  if (kind === 'file') return chosenFile(job);
  const found = await repositoryOf(job);
  if (!found.ok) return say(found.message);
  const { repository } = found;
  if (kind === 'head') return earlierAt(repository, { ref: 'HEAD', name: 'HEAD' }, job);
  const revision =
    kind === 'revision' ? await chosenCommit(repository, job) : await chosenBranch(repository);
  return revision === undefined ? undefined : earlierAt(repository, revision, job);
}

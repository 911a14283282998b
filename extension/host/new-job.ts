import * as vscode from 'vscode';
import { writeEmptyJob } from '../engine/index.ts';
import { filesEnding } from './find-files.ts';
import { gridViewType } from './grid-editor.ts';

const ending = '.paneljob';

/** True for a file that is there. */
export async function exists(uri: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.stat(uri);
    return true;
  } catch (error) {
    if (error instanceof vscode.FileSystemError) return false;
    throw error;
  }
}

/** A name in this folder that no file has yet. */
async function freeName(folder: vscode.Uri): Promise<vscode.Uri> {
  for (let number = 1; ; number++) {
    const name = number === 1 ? `new-job${ending}` : `new-job-${String(number)}${ending}`;
    const uri = vscode.Uri.joinPath(folder, name);
    if (!(await exists(uri))) return uri;
  }
}

/** Units and currency a person starts jobs with, from the settings. */
export function startSettings(): { readonly units: 'in' | 'mm'; readonly currency: string } {
  const settings = vscode.workspace.getConfiguration('panelwright');
  return {
    units: settings.get('units') === 'mm' ? 'mm' : 'in',
    currency: settings.get<string>('currency') ?? 'USD',
  };
}

/** Today, as jobs write it. */
export function today(): string {
  return new Date().toISOString().slice(0, 10);
}

/** Shop books of the workspace, as paths beside the job. */
export async function bookFor(job: vscode.Uri): Promise<string | undefined> {
  const books = await filesEnding('.panelbook');
  if (books.length === 0) return undefined;
  const demo = { label: 'Built-in demo book', description: 'Invented prices', path: undefined };
  const items = books.map((uri) => ({
    label: vscode.workspace.asRelativePath(uri),
    description: 'Shop book',
    path: relativePath(job.path, uri.path),
  }));
  const picked = await vscode.window.showQuickPick([...items, demo], {
    title: 'New Job: shop book',
    placeHolder: 'Where materials, packs and prices come from',
  });
  return picked?.path;
}

/** Path from the folder of one file to another file. */
export function relativePath(from: string, to: string): string {
  const start = from.split('/').slice(0, -1);
  const target = to.split('/');
  let shared = 0;
  while (shared < start.length && start[shared] === target[shared]) shared++;
  return [...start.slice(shared).map(() => '..'), ...target.slice(shared)].join('/');
}

/** Asks where a new job is to be kept; a folder it was asked on is offered. */
export async function placeForJob(given: unknown): Promise<vscode.Uri | undefined> {
  const folder = given instanceof vscode.Uri ? given : vscode.workspace.workspaceFolders?.[0]?.uri;
  const suggestion = folder === undefined ? undefined : await freeName(folder);
  return vscode.window.showSaveDialog({
    title: 'New Job',
    saveLabel: 'Create Job',
    filters: { 'Panelwright job': ['paneljob'] },
    ...(suggestion === undefined ? {} : { defaultUri: suggestion }),
  });
}

/** Asks where, writes a job with nothing in it, and opens its grid, which offers the kits. */
export async function newJob(given: unknown): Promise<void> {
  const uri = await placeForJob(given);
  if (uri === undefined) return;
  const book = await bookFor(uri);
  const text = writeEmptyJob({
    title: 'New job',
    date: today(),
    ...startSettings(),
    ...(book === undefined ? {} : { book }),
  });
  await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text));
  await vscode.commands.executeCommand('vscode.openWith', uri, gridViewType);
}

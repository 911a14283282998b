import * as vscode from 'vscode';
import type { FileCommit } from '../../engine/index.ts';

/** A commit as the built-in git extension tells it. */
export interface GitCommit {
  readonly hash: string;
  readonly message: string;
  readonly authorName?: string;
  readonly authorDate?: Date;
}

/** As much of the built-in git extension's repository as is used here. */
export interface GitRepository {
  readonly rootUri: vscode.Uri;
  /** Text of a file at a revision; `:1` is what both sides of a merge came from. */
  readonly show: (ref: string, path: string) => Promise<string>;
  readonly setConfig: (key: string, value: string) => Promise<string>;
  readonly log: (options: {
    readonly maxEntries?: number;
    readonly path?: string;
  }) => Promise<readonly GitCommit[]>;
  /** How a file differs from the last commit; empty where it does not. */
  readonly diffWithHEAD?: (path: string) => Promise<string>;
  readonly getRefs?: (query: object) => Promise<readonly { readonly name?: string }[]>;
}

interface GitApi {
  readonly getRepository: (uri: vscode.Uri) => GitRepository | null;
  readonly openRepository?: (root: vscode.Uri) => Promise<GitRepository | null>;
}

interface GitExtension {
  readonly enabled: boolean;
  readonly getAPI: (version: 1) => GitApi;
}

/** The repository a file is in, or a sentence that says what is missing. */
export type FoundRepository =
  | { readonly ok: true; readonly repository: GitRepository }
  | { readonly ok: false; readonly message: string };

const withFile = 'Two files can be compared all the same: Compare with File.';

function missing(message: string): FoundRepository {
  return { ok: false, message };
}

/** The repository of a file's folder of the workspace, where git has not opened it by itself. */
async function openedAround(file: vscode.Uri, api: GitApi): Promise<GitRepository | undefined> {
  const folder = vscode.workspace.getWorkspaceFolder(file)?.uri;
  return (folder && (await api.openRepository?.(folder))) ?? undefined;
}

/** Finds the repository of a file by the git extension that comes with VS Code. */
export async function repositoryOf(file: vscode.Uri): Promise<FoundRepository> {
  const extension = vscode.extensions.getExtension<GitExtension>('vscode.git');
  if (extension === undefined)
    return missing(
      `There is no git here: a browser without a machine behind it has none. ${withFile}`,
    );
  try {
    const git = extension.isActive ? extension.exports : await extension.activate();
    if (!git.enabled)
      return missing(`Git is switched off in the settings (git.enabled). ${withFile}`);
    const api = git.getAPI(1);
    const opened = api.getRepository(file) ?? (await openedAround(file, api));
    if (opened === undefined)
      return missing(`This job is in no git repository that VS Code has open. ${withFile}`);
    return { ok: true, repository: opened };
  } catch (error) {
    return missing(
      `Git cannot be asked: ${error instanceof Error ? error.message : String(error)} ${withFile}`,
    );
  }
}

/** When a commit was written, by the clock of whoever reads it: "2026-11-25 14:05"; empty where git does not say. */
export function commitTime({ authorDate }: GitCommit): string {
  if (authorDate === undefined) return '';
  const here = authorDate.getTime() - authorDate.getTimezoneOffset() * 60_000;
  return new Date(here).toISOString().slice(0, 16).replace('T', ' ');
}

/** Text of a file in a revision; undefined where the revision or the file is not there. */
export async function textAt(
  repository: GitRepository,
  revision: string,
  file: vscode.Uri,
): Promise<string | undefined> {
  try {
    return await repository.show(revision, file.fsPath);
  } catch {
    // Whatever git said, the person is told that this revision has no such file.
    return undefined;
  }
}

/** The commit that a file was last changed in, and whether it was changed since; undefined where git does not tell. */
export async function commitOf(file: vscode.Uri): Promise<FileCommit | undefined> {
  const found = await repositoryOf(file);
  if (!found.ok) return undefined;
  const { repository } = found;
  try {
    const [last] = await repository.log({ maxEntries: 1, path: file.fsPath });
    if (last === undefined) return undefined;
    const since = (await repository.diffWithHEAD?.(file.fsPath)) ?? '';
    return { hash: last.hash, changed: since !== '' };
  } catch {
    // A repository without a commit, or a file outside of it: the paper names no version then.
    return undefined;
  }
}

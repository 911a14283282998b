import * as vscode from 'vscode';

/** What is used of a repository that VS Code's git extension has open. */
export interface GitRepository {
  readonly rootUri: vscode.Uri;
  /** Text of a file at a revision; `:1` is what both sides of a merge came from. */
  readonly show: (ref: string, path: string) => Promise<string>;
  readonly setConfig: (key: string, value: string) => Promise<string>;
}

interface GitApi {
  readonly getRepository: (uri: vscode.Uri) => GitRepository | null;
}

interface GitExtension {
  readonly getAPI: (version: 1) => GitApi;
}

/** The repository of a file; undefined where there is none, or where VS Code has no git (in a browser). */
export async function repositoryOf(uri: vscode.Uri): Promise<GitRepository | undefined> {
  const extension = vscode.extensions.getExtension<GitExtension>('vscode.git');
  if (extension === undefined) return undefined;
  try {
    const git = extension.isActive ? extension.exports : await extension.activate();
    return git.getAPI(1).getRepository(uri) ?? undefined;
  } catch {
    // git.enabled may be off, or no git be installed: then there is nothing to ask.
    return undefined;
  }
}

/** The version of a file in conflict that both sides came from, as git keeps it; undefined where it has none. */
export async function versionBefore(uri: vscode.Uri): Promise<string | undefined> {
  const repository = await repositoryOf(uri);
  try {
    return await repository?.show(':1', uri.fsPath);
  } catch {
    return undefined;
  }
}

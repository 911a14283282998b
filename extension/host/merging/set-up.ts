import * as vscode from 'vscode';
import { copiedDriverCommand, driverCopy, driverName, withAttributes } from '../../engine/index.ts';
import { repositoryOf, type GitRepository } from '../git/repository.ts';

const noGit =
  'VS Code has no git here: in a browser, or where git is not installed or switched off (git.enabled), merging cannot be set up. On a computer with git, “panelwright merge --set-up” does the same.';

async function textOf(uri: vscode.Uri): Promise<string | undefined> {
  try {
    return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
  } catch {
    return undefined;
  }
}

/** The folder in which git keeps a repository; linked worktrees have a file that names another. */
async function gitFolder(root: vscode.Uri): Promise<vscode.Uri> {
  const folder = vscode.Uri.joinPath(root, '.git');
  const named = /^gitdir: (.+)$/m.exec((await textOf(folder)) ?? '')?.[1];
  if (named === undefined) return folder;
  // The settings and our copy are shared by all worktrees of a repository.
  const own = /^(?:\/|[A-Za-z]:)/.test(named)
    ? root.with({ path: named })
    : vscode.Uri.joinPath(root, named);
  const common = (await textOf(vscode.Uri.joinPath(own, 'commondir')))?.trim();
  if (common === undefined) return own;
  return /^(?:\/|[A-Za-z]:)/.test(common)
    ? root.with({ path: common })
    : vscode.Uri.joinPath(own, common);
}

async function write(repository: GitRepository, driver: vscode.Uri): Promise<void> {
  const { fs } = vscode.workspace;
  const { rootUri } = repository;
  const copy = vscode.Uri.joinPath(await gitFolder(rootUri), driverCopy);
  await fs.writeFile(copy, await fs.readFile(driver));
  await repository.setConfig('merge.panelwright.name', driverName);
  await repository.setConfig('merge.panelwright.driver', copiedDriverCommand());
  const attributes = vscode.Uri.joinPath(rootUri, '.gitattributes');
  const before = (await textOf(attributes)) ?? '';
  const after = withAttributes(before);
  if (after !== before) await fs.writeFile(attributes, new TextEncoder().encode(after));
}

/** File or folder whose repository is meant. */
function placeOf(given: unknown): vscode.Uri | undefined {
  if (given instanceof vscode.Uri) return given;
  const input = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
  if (input instanceof vscode.TabInputCustom) return input.uri;
  return (
    vscode.window.activeTextEditor?.document.uri ?? vscode.workspace.workspaceFolders?.[0]?.uri
  );
}

/** Makes git merge the jobs of a repository cell by cell, once that is agreed to. */
async function askAndSetUp(given: unknown, extensionUri: vscode.Uri): Promise<void> {
  const place = placeOf(given);
  const found = place === undefined ? undefined : await repositoryOf(place);
  if (found?.ok !== true) {
    await vscode.window.showWarningMessage(
      place === undefined ? 'Open a folder of a git repository first.' : noGit,
    );
    return;
  }
  const agree = 'Set Up';
  const answer = await vscode.window.showInformationMessage(
    `Let git merge the jobs and shop books of ${found.repository.rootUri.fsPath} cell by cell?`,
    {
      modal: true,
      detail:
        'Written are: merge.panelwright.name and merge.panelwright.driver in this repository’s git settings, a copy of the merge program in its git folder, and two lines in .gitattributes. The program is run by Node (node), which must be installed.',
    },
    agree,
  );
  if (answer !== agree) return;
  try {
    await write(found.repository, vscode.Uri.joinPath(extensionUri, 'dist', 'merge-driver.cjs'));
    await vscode.window.showInformationMessage(
      'git merges jobs cell by cell in this repository now. Commit .gitattributes for the others.',
    );
  } catch (error) {
    await vscode.window.showErrorMessage(
      `Merging could not be set up: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

/** The command “Set Up Merging for This Repository”. */
export function setUpMerging(extensionUri: vscode.Uri): vscode.Disposable {
  return vscode.commands.registerCommand('panelwright.setUpMerging', (given: unknown) =>
    askAndSetUp(given, extensionUri),
  );
}

import * as vscode from 'vscode';
import { ownTemplates, readTemplate, type Template } from '../engine/index.ts';
import { filesEnding } from './find-files.ts';

/** Ending of a template’s file. */
export const templateEnding = '.paneltemplate';

/** Folder of the workspace that templates are written to. */
const workspaceFolder = 'panel-templates';

/** A template with the place it stands in. */
export interface FoundTemplate {
  readonly template: Template;
  /** “Built in”, “This workspace”, “Mine”. */
  readonly where: string;
  readonly uri: vscode.Uri | undefined;
}

async function readText(uri: vscode.Uri): Promise<string | undefined> {
  try {
    return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
  } catch (error) {
    if (error instanceof vscode.FileSystemError) return undefined;
    throw error;
  }
}

async function filesIn(folder: vscode.Uri): Promise<readonly vscode.Uri[]> {
  try {
    const entries = await vscode.workspace.fs.readDirectory(folder);
    return entries
      .filter(([name]) => name.endsWith(templateEnding))
      .map(([name]) => vscode.Uri.joinPath(folder, name));
  } catch (error) {
    // Nobody has kept a template of their own yet.
    if (error instanceof vscode.FileSystemError) return [];
    throw error;
  }
}

async function found(
  uris: readonly vscode.Uri[],
  where: string,
): Promise<readonly FoundTemplate[]> {
  const texts = await Promise.all(uris.map(async (uri) => ({ uri, text: await readText(uri) })));
  return texts.flatMap(({ uri, text }) =>
    text === undefined ? [] : [{ template: readTemplate(text), where, uri }],
  );
}

/** Folder of the person’s own templates, on this machine. */
export function ownFolder(storage: vscode.Uri): vscode.Uri {
  return vscode.Uri.joinPath(storage, 'templates');
}

/** Folder of the workspace’s templates; undefined where none is open. */
export function sharedFolder(): vscode.Uri | undefined {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  return folder && vscode.Uri.joinPath(folder, workspaceFolder);
}

/** Every template there is: of the workspace, of the person, and those built in. */
export async function findTemplates(storage: vscode.Uri): Promise<readonly FoundTemplate[]> {
  const shared = await filesEnding(templateEnding);
  const own = await filesIn(ownFolder(storage));
  return [
    ...(await found(shared, 'This workspace')),
    ...(await found(own, 'Mine')),
    ...ownTemplates().map((template) => ({ template, where: 'Built in', uri: undefined })),
  ];
}

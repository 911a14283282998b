import * as vscode from 'vscode';
import { pause } from './pause.ts';

/** Files looked at most, and folders deep, where the workspace cannot be searched. */
const mostFiles = 200;
const mostDeep = 4;

/** Longest wait for a search, in ms: a browser may have nothing that searches. */
const patience = 2000;

async function entriesOf(
  folder: vscode.Uri,
): Promise<readonly (readonly [string, vscode.FileType])[]> {
  try {
    return await vscode.workspace.fs.readDirectory(folder);
  } catch (error) {
    // A folder that may not be read holds nothing that could be opened.
    if (error instanceof vscode.FileSystemError) return [];
    throw error;
  }
}

async function walked(
  folder: vscode.Uri,
  ending: string,
  deep: number,
): Promise<readonly vscode.Uri[]> {
  const found: vscode.Uri[] = [];
  for (const [name, type] of await entriesOf(folder)) {
    if (name.startsWith('.') || name === 'node_modules') continue;
    const uri = vscode.Uri.joinPath(folder, name);
    if (type === vscode.FileType.Directory && deep > 0)
      found.push(...(await walked(uri, ending, deep - 1)));
    else if (name.endsWith(ending)) found.push(uri);
  }
  return found;
}

/** Files of the workspace that end so; folder by folder where the workspace cannot be searched, as in a browser. */
export async function filesEnding(ending: string): Promise<readonly vscode.Uri[]> {
  const searched = vscode.workspace.findFiles(`**/*${ending}`, '**/node_modules/**', mostFiles);
  const found = await Promise.race([searched, pause(patience).then(() => [])]);
  if (found.length > 0) return found;
  const folders = vscode.workspace.workspaceFolders ?? [];
  const all = await Promise.all(folders.map(({ uri }) => walked(uri, ending, mostDeep)));
  return all.flat().slice(0, mostFiles);
}

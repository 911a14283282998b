import * as vscode from 'vscode';

/** What the shop book of a job says, or why it could not be read. */
export interface BookText {
  readonly uri: vscode.Uri | undefined;
  readonly text: string | undefined;
}

/** Address of the book a job names, beside the job file. */
export function bookUri(job: vscode.Uri, path: string): vscode.Uri {
  return vscode.Uri.joinPath(job, '..', path);
}

/** Text of the shop book: from an open editor if there is one, else from disk. */
export async function readBookText(job: vscode.Uri, path: string | undefined): Promise<BookText> {
  if (path === undefined || path === '') return { uri: undefined, text: undefined };
  const uri = bookUri(job, path);
  return { uri, text: await readTextBeside(uri) };
}

/** Text of a file that a job names: from an open editor if there is one, else from disk. */
export async function readTextBeside(uri: vscode.Uri): Promise<string | undefined> {
  const open = vscode.workspace.textDocuments.find((one) => one.uri.toString() === uri.toString());
  if (open !== undefined) return open.getText();
  try {
    return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
  } catch (error) {
    if (error instanceof vscode.FileSystemError) return undefined;
    throw error;
  }
}

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
  const open = vscode.workspace.textDocuments.find((one) => one.uri.toString() === uri.toString());
  if (open !== undefined) return { uri, text: open.getText() };
  try {
    const bytes = await vscode.workspace.fs.readFile(uri);
    return { uri, text: new TextDecoder().decode(bytes) };
  } catch (error) {
    if (error instanceof vscode.FileSystemError) return { uri, text: undefined };
    throw error;
  }
}

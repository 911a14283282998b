import * as vscode from 'vscode';
import { applyEdits, readFile, type Edit } from '../engine/index.ts';
import { applied } from './workspace-edit.ts';

/** Does edits of a file that need not be open, as one undo step of its document; tells whether it was done. */
export async function editDocument(
  uri: vscode.Uri,
  edits: readonly Edit[],
  log: vscode.LogOutputChannel,
): Promise<boolean> {
  const document = await vscode.workspace.openTextDocument(uri);
  const made = applyEdits(readFile(document.getText()), edits);
  if (!made.ok) {
    await vscode.window.showErrorMessage(made.problem.message);
    return false;
  }
  return applied(document, made.value.changes, log);
}

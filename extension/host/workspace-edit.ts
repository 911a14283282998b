import * as vscode from 'vscode';
import type { TextChange } from '../engine/index.ts';

/** Changes of a document's text as one edit of the workspace: one undo step. */
export function workspaceEdit(
  document: vscode.TextDocument,
  changes: readonly TextChange[],
): vscode.WorkspaceEdit {
  const edit = new vscode.WorkspaceEdit();
  for (const change of changes) {
    const start = document.positionAt(change.start);
    const end = document.positionAt(change.end);
    edit.replace(document.uri, new vscode.Range(start, end), change.text);
  }
  return edit;
}

/** Does an edit of the document; a fault is logged and means that it was not done. */
export async function applied(
  edit: vscode.WorkspaceEdit,
  log: Pick<vscode.LogOutputChannel, 'error'>,
): Promise<boolean> {
  try {
    return await vscode.workspace.applyEdit(edit);
  } catch (error) {
    log.error(`edit: ${String(error)}`);
    return false;
  }
}

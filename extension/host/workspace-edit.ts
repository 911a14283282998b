import * as vscode from 'vscode';
import type { TextChange } from '../engine/index.ts';

/** Changes of a document's text as one edit of the workspace: one undo step. */
function workspaceEdit(
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

/** Does changes of the document; a fault is logged and means that they were not done. */
export async function applied(
  document: vscode.TextDocument,
  changes: readonly TextChange[],
  log: Pick<vscode.LogOutputChannel, 'error'>,
): Promise<boolean> {
  try {
    return await vscode.workspace.applyEdit(workspaceEdit(document, changes));
  } catch (error) {
    log.error(`edit: ${String(error)}`);
    return false;
  }
}

const stepMs = 20;
const mostMs = 400;

/**
 * Waits a little for a text of the document that is on its way, such as an undo that overtook an edit:
 * the editor then refuses the edit, which was meant for the text before.
 *
 * @returns whether it has come
 */
export async function anotherText(
  document: Pick<vscode.TextDocument, 'getText'>,
  text: string,
): Promise<boolean> {
  for (let waited = 0; waited < mostMs && document.getText() === text; waited += stepMs)
    await new Promise<void>((resolve) => setTimeout(resolve, stepMs));
  return document.getText() !== text;
}

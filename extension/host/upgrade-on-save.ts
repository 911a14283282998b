import * as vscode from 'vscode';
import { readFile, upgradeChanges } from '../engine/index.ts';

/** Edits that bring an older file to the current format; none for a file that is there already. */
export function upgradeEdits(document: vscode.TextDocument): readonly vscode.TextEdit[] {
  const changes = upgradeChanges(readFile(document.getText()));
  if (!changes.ok) return [];
  return changes.value.map((change) => {
    const range = new vscode.Range(
      document.positionAt(change.start),
      document.positionAt(change.end),
    );
    return vscode.TextEdit.replace(range, change.text);
  });
}

/** Older files are upgraded when the user saves, never before. */
export function upgradeOnSave(): vscode.Disposable {
  return vscode.workspace.onWillSaveTextDocument((event) => {
    if (event.document.languageId !== 'panelwright-job') return;
    event.waitUntil(Promise.resolve(upgradeEdits(event.document)));
  });
}

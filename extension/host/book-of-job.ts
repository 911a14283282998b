import * as vscode from 'vscode';
import { bookUri } from './book-files.ts';
import { editDocument } from './book-edits.ts';
import type { Desks } from './desks.ts';
import type { Edit } from '../engine/index.ts';
import { gridViewType } from './grid-editor.ts';
import type { JobDesk } from './job-desk.ts';

/** Address of the shop book that a job names; undefined where it runs on the built-in one. */
export function bookOfJob(desk: JobDesk): vscode.Uri | undefined {
  const path = desk.snapshot().shown.head.get('book')?.text ?? '';
  return path === '' ? undefined : bookUri(desk.document.uri, path);
}

/** Does edits of a shop book as one undo step, and offers to open it. */
export async function editBook(
  uri: vscode.Uri,
  edits: readonly Edit[],
  desks: Desks,
  told: string,
): Promise<void> {
  if (!(await editDocument(uri, edits, desks.log))) return;
  const open = 'Open Book';
  const next = await vscode.window.showInformationMessage(told, open);
  if (next === open) await vscode.commands.executeCommand('vscode.openWith', uri, gridViewType);
}

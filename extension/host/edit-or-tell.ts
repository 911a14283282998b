import * as vscode from 'vscode';
import type { Edit } from '../engine/index.ts';
import type { JobDesk } from './job-desk.ts';

/** Does edits of a file as one undo step, or says why they cannot be done. */
export async function editOrTell(
  desk: Pick<JobDesk, 'editFile'>,
  edits: readonly Edit[],
): Promise<void> {
  const reply = await desk.editFile(edits);
  if (!reply.ok) await vscode.window.showErrorMessage(reply.message);
}

import type { EditReply } from '../protocol/messages.ts';
import * as vscode from 'vscode';
import type { Snapshot } from '../engine/index.ts';
import { lockOf, type Lock } from './views/job-view.ts';

/** Reason why a job takes no edit now: its file cannot be written, or its text cannot be shown. */
export function lockOfDocument({ uri }: vscode.TextDocument, snapshot: Snapshot): Lock | undefined {
  const { scheme } = uri;
  if (vscode.workspace.fs.isWritableFileSystem(scheme) === false || scheme === 'git')
    return {
      state: 'read-only',
      message: 'This file is read-only; the grid shows it but takes no edit.',
      line: 0,
    };
  return lockOf(snapshot);
}

/** The answer to an edit that is not done. */
export function refusal(message: string): EditReply {
  return { ok: false, message, cell: undefined };
}

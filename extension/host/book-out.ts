import * as vscode from 'vscode';
import { bookOut, readFile } from '../engine/index.ts';
import { readTextBeside } from './book-files.ts';
import { bookOfJob, editBook } from './book-of-job.ts';
import type { Desks } from './desks.ts';
import type { JobDesk } from './job-desk.ts';

/** Writes what a job that is built took from the shelf, and what it leaves, into its shop book. */
export async function bookOutMaterials(desk: JobDesk, desks: Desks): Promise<void> {
  const uri = bookOfJob(desk);
  const text = uri && (await readTextBeside(uri));
  if (uri === undefined || text === undefined) {
    await vscode.window.showInformationMessage(
      'This job names no shop book that can be read, so there is no shelf to book out of.',
    );
    return;
  }
  const snapshot = desk.snapshot();
  if (snapshot.heavy.length > 0) {
    await vscode.window.showInformationMessage(
      'Layouts of this job are still being worked out; book out when the figures have settled.',
    );
    return;
  }
  const lines = bookOut(snapshot, readFile(text));
  if (lines.length === 0) {
    await vscode.window.showInformationMessage('This job leaves the shelf as it is.');
    return;
  }
  const kinds = { taken: 'from the shelf', offcut: 'offcut', rest: 'rest' } as const;
  const items = lines.map((line) => ({
    label: line.words,
    description: kinds[line.kind],
    picked: true,
    line,
  }));
  const picked = await vscode.window.showQuickPick(items, {
    title: 'Book Out Materials',
    placeHolder: 'What is written into the shop book, as one edit',
    canPickMany: true,
  });
  if (picked === undefined || picked.length === 0) return;
  const edits = picked.flatMap(({ line }) => line.edits);
  const told = `${String(picked.length)} changes of the shelf are in the shop book; save it to keep them.`;
  await editBook(uri, edits, desks, told);
}

import * as vscode from 'vscode';
import { kitEdits, type SourceRow } from '../engine/index.ts';
import { bookOfJob, editBook } from './book-of-job.ts';
import type { Desks } from './desks.ts';
import { editOrTell } from './edit-or-tell.ts';
import type { JobDesk } from './job-desk.ts';

/** Rows that are selected in the grid in front, as they stand in the file. */
function selectedRows(desk: JobDesk, desks: Desks): readonly SourceRow[] {
  const panel = desks.active?.desk === desk ? desks.active.panel : undefined;
  const { cursor, selected = [] } = panel ?? { cursor: undefined };
  const places = selected.length > 0 ? selected : cursor === undefined ? [] : [cursor];
  const { tables } = desk.snapshot().shown;
  return places.flatMap(
    ({ table, id, occurrence }) =>
      (tables.get(table) ?? []).find((row) => row.id === id && row.occurrence === occurrence) ?? [],
  );
}

async function asked(prompt: string): Promise<string | undefined> {
  return (await vscode.window.showInputBox({ title: 'Save Rows as Group', prompt }))?.trim();
}

async function chosenPlace(desk: JobDesk): Promise<vscode.Uri | undefined> {
  const book = bookOfJob(desk);
  const job = desk.document.uri;
  if (book === undefined) return job;
  const places = [
    { label: 'Shop book', description: 'For every job that uses it', uri: book },
    { label: 'This job', description: 'For this job alone', uri: job },
  ];
  const title = 'Save Rows as Group: where it is kept';
  return (await vscode.window.showQuickPick(places, { title }))?.uri;
}

/** Saves the selected rows as a group that Insert Kit offers from then on. */
export async function saveRowsAsGroup(desk: JobDesk, desks: Desks): Promise<void> {
  const rows = selectedRows(desk, desks);
  if (rows.length === 0) {
    await vscode.window.showInformationMessage('Select the rows of the group in the grid first.');
    return;
  }
  const name = await asked(`Name of the group of ${String(rows.length)} rows`);
  if (name === undefined || name === '') return;
  const help = await asked('What it is for, in a line');
  const uri = help === undefined ? undefined : await chosenPlace(desk);
  if (help === undefined || uri === undefined) return;
  const { book, shown } = desk.snapshot();
  const tables = ['kit', 'question', 'kit_row'].flatMap((table) => shown.tables.get(table) ?? []);
  const taken = new Set([...book.kits, ...tables].map(({ id }) => id));
  const edits = kitEdits(rows, { name, help, taken });
  if (uri.toString() !== desk.document.uri.toString()) {
    const told = `The group “${name}” is in the shop book; Insert Kit offers it.`;
    await editBook(uri, edits, desks, told);
    return;
  }
  await editOrTell(desk, edits);
}

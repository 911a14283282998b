import * as vscode from 'vscode';
import { freshId, type CellRef, type Edit } from '../engine/index.ts';
import { engineCell } from './addresses.ts';
import type { Desks } from './desks.ts';
import { editOrTell } from './edit-or-tell.ts';
import { takenIds } from './gestures.ts';
import type { JobDesk } from './job-desk.ts';
import { newLetters } from './letters.ts';

function keyOf({ table, id, column }: CellRef): string {
  return table === 'job' ? `set.job.${column}` : `set.${id}.${column}`;
}

function textAt(desk: JobDesk, { table, id, occurrence, column }: CellRef): string {
  const { shown } = desk.snapshot();
  if (table === 'job') return shown.head.get(column)?.text ?? '';
  const row = (shown.tables.get(table) ?? []).find(
    (one) => one.id === id && one.occurrence === occurrence,
  );
  return row?.cells.get(column)?.text ?? '';
}

/** Adds an option that says the cell under the cursor otherwise, or one more cell of an option there is. */
export async function addOption(desk: JobDesk, desks: Desks): Promise<void> {
  const cursor = desks.active?.desk === desk ? desks.active.panel.cursor : undefined;
  const cell = cursor && engineCell(cursor);
  if (cell === undefined || ['id', ''].includes(cell.column)) {
    await vscode.window.showInformationMessage('Put the cursor on the cell that may differ first.');
    return;
  }
  const title = 'Add Option from Cell';
  const then = await vscode.window.showInputBox({
    title,
    prompt: `What ${keyOf(cell).slice('set.'.length)} is in the option`,
    value: textAt(desk, cell),
  });
  if (then === undefined) return;
  const edit = await optionEdit(desk, { key: keyOf(cell), then: then.trim() });
  if (edit === undefined) return;
  await editOrTell(desk, [edit]);
}

async function optionEdit(
  desk: JobDesk,
  { key, then }: { readonly key: string; readonly then: string },
): Promise<Edit | undefined> {
  const title = 'Add Option from Cell';
  const snapshot = desk.snapshot();
  const rows = snapshot.shown.tables.get('option') ?? [];
  const items = [
    { label: 'New option…', row: undefined },
    ...rows.map((row) => ({ label: row.cells.get('name')?.text ?? row.id, row })),
  ];
  const chosen = rows.length === 0 ? items[0] : await vscode.window.showQuickPick(items, { title });
  if (chosen === undefined) return undefined;
  if (chosen.row !== undefined) {
    const { id, occurrence } = chosen.row;
    const row = { table: 'option', id, occurrence };
    return { kind: 'set-cell', row, column: key, text: then };
  }
  const name = await vscode.window.showInputBox({ title, prompt: 'Name of the option' });
  if (name === undefined || name.trim() === '') return undefined;
  const id = freshId('option', takenIds(snapshot), newLetters);
  return { kind: 'insert-row', table: 'option', id, cells: { name: name.trim(), [key]: then } };
}

import * as vscode from 'vscode';
import { jobWorkbook } from '../engine/index.ts';
import type { JobDesk } from './job-desk.ts';

/** Writes the whole job as a workbook of a spreadsheet program, with formulas where they hold. */
export async function exportWorkbook(desk: JobDesk): Promise<void> {
  const stem = desk.document.uri.path.replace(/\.paneljob$/, '');
  const uri = await vscode.window.showSaveDialog({
    defaultUri: desk.document.uri.with({ path: `${stem}.xlsx` }),
    filters: { Workbook: ['xlsx'] },
    title: 'Export Workbook',
  });
  if (uri === undefined) return;
  await vscode.workspace.fs.writeFile(uri, jobWorkbook(desk.snapshot()));
  await vscode.window.showInformationMessage(`Workbook written to ${uri.path}.`);
}

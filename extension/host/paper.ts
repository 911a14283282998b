import * as vscode from 'vscode';
import { papers, type Paper } from '../engine/index.ts';
import type { JobDesk } from './job-desk.ts';
import { newNonce } from './page.ts';

interface PaperItem extends vscode.QuickPickItem {
  readonly paper: Paper;
}

async function choosePaper(title: string): Promise<Paper | undefined> {
  const items = papers.map((paper): PaperItem => ({
    label: paper.name,
    detail: paper.help,
    paper,
  }));
  const chosen = await vscode.window.showQuickPick(items, { title, matchOnDetail: true });
  return chosen?.paper;
}

/** Shows a paper of the job beside the grid, black on white as it will be printed. */
export async function previewPaper(desk: JobDesk): Promise<void> {
  const paper = await choosePaper('Preview Paper');
  if (paper === undefined) return;
  const name = desk.document.uri.path.replace(/^.*\//, '');
  const panel = vscode.window.createWebviewPanel(
    'panelwright.paper',
    `${paper.name}: ${name}`,
    vscode.ViewColumn.Beside,
    { enableFindWidget: true },
  );
  const show = (): void => {
    panel.webview.html = paper.page(desk.snapshot(), { nonce: newNonce() });
  };
  show();
  const saved = vscode.workspace.onDidSaveTextDocument((document) => {
    if (document === desk.document) show();
  });
  panel.onDidDispose(() => {
    saved.dispose();
  });
}

/** Writes a paper of the job as a page that any browser prints. */
export async function writePaper(desk: JobDesk): Promise<void> {
  const paper = await choosePaper('Write Paper');
  if (paper === undefined) return;
  const stem = desk.document.uri.path.replace(/\.paneljob$/, '');
  const uri = await vscode.window.showSaveDialog({
    defaultUri: desk.document.uri.with({ path: `${stem}-${paper.id}.html` }),
    filters: { 'Page to print': ['html'] },
    title: `Write ${paper.name}`,
  });
  if (uri === undefined) return;
  await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(paper.page(desk.snapshot())));
  await vscode.window.showInformationMessage(`${paper.name} written to ${uri.path}.`);
}

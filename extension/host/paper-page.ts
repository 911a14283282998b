import * as vscode from 'vscode';
import {
  htmlPage,
  lackingSentence,
  paperPdf,
  type PaperContent,
  type Sheet,
} from '../engine/index.ts';
import type { JobDesk } from './job-desk.ts';
import { newNonce } from './page.ts';
import { besideJob } from './write-file.ts';

/** A paper of a job that is open: what it is called, and what it says of the job as it is then. */
export interface OfferedPaper {
  readonly name: string;
  /** Ending of the file it is written to, before what kind of file that is: `quote`. */
  readonly word: string;
  /** Undefined where there is none now, which has been told then. */
  readonly content: () => PaperContent | undefined;
}

/** Shows a paper beside the grid, black on white as it will be printed; saving the job shows it anew. */
export function showPaper(desk: JobDesk, { name, content }: OfferedPaper): void {
  const first = content();
  if (first === undefined) return;
  const panel = vscode.window.createWebviewPanel(
    'panelwright.paper',
    `${name}: ${desk.document.uri.path.replace(/^.*\//, '')}`,
    vscode.ViewColumn.Beside,
    { enableFindWidget: true },
  );
  panel.webview.html = htmlPage(first, newNonce());
  const saved = vscode.workspace.onDidSaveTextDocument((document) => {
    const paper = document === desk.document ? content() : undefined;
    if (paper !== undefined) panel.webview.html = htmlPage(paper, newNonce());
  });
  panel.onDidDispose(() => {
    saved.dispose();
  });
}

interface FormItem extends vscode.QuickPickItem {
  readonly ending: string;
  readonly sheet: Sheet | undefined;
}

/** What a paper is written as; the PDF of the job's own sheets stands first. */
function forms(units: 'in' | 'mm'): readonly FormItem[] {
  const letter = { label: 'PDF on Letter', ending: 'pdf', sheet: 'letter' } as const;
  const a4 = { label: 'PDF on A4', ending: 'pdf', sheet: 'a4' } as const;
  const page = { label: 'HTML', detail: 'A page that any browser prints', ending: 'html' };
  return [...(units === 'in' ? [letter, a4] : [a4, letter]), { ...page, sheet: undefined }];
}

/** Asks what a paper is to be written as and where, and writes it there. */
export async function keepPaper(
  desk: JobDesk,
  { name, word, content }: OfferedPaper,
): Promise<void> {
  const items = forms(desk.snapshot().settings.units);
  const form = await vscode.window.showQuickPick(items, { title: `Write ${name} as` });
  if (form === undefined) return;
  const uri = await vscode.window.showSaveDialog({
    defaultUri: besideJob(desk.document.uri, `-${word}.${form.ending}`),
    filters: form.sheet === undefined ? { 'Page to print': ['html'] } : { PDF: ['pdf'] },
    title: `Write ${name}`,
  });
  if (uri === undefined) return;
  const paper = content();
  if (paper === undefined) return;
  const made =
    form.sheet === undefined
      ? { bytes: new TextEncoder().encode(htmlPage(paper)), lacking: new Map() }
      : paperPdf(paper, form.sheet);
  await vscode.workspace.fs.writeFile(uri, made.bytes);
  const lacking = lackingSentence(made.lacking);
  if (lacking !== '') await vscode.window.showWarningMessage(lacking);
  await vscode.window.showInformationMessage(`${name} written to ${uri.path}.`);
}

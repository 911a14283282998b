import * as vscode from 'vscode';
import {
  compareOptions,
  lackingSentence,
  optionPrices,
  optionsOf,
  papers,
  type Paper,
  type PaperSource,
  type Sheet,
} from '../engine/index.ts';
import type { JobDesk } from './job-desk.ts';
import { newNonce } from './page.ts';
import { besideJob } from './write-file.ts';

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

/** What a paper tells beside the job itself: a quote offers the job's options. */
function sourceOf(paper: Paper, desk: JobDesk): PaperSource {
  const offers = paper.id === 'quote' && optionsOf(desk.snapshot().shown).length > 0;
  return offers ? { options: optionPrices(compareOptions(desk)) } : {};
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
    panel.webview.html = paper.page(desk.snapshot(), {
      ...sourceOf(paper, desk),
      nonce: newNonce(),
    });
  };
  show();
  const saved = vscode.workspace.onDidSaveTextDocument((document) => {
    if (document === desk.document) show();
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

async function askForm(paper: Paper, units: 'in' | 'mm'): Promise<FormItem | undefined> {
  return vscode.window.showQuickPick(forms(units), { title: `Write ${paper.name} as` });
}

/** Writes a paper of the job as PDF, or as a page that any browser prints. */
export async function writePaper(desk: JobDesk): Promise<void> {
  const paper = await choosePaper('Write Paper');
  if (paper === undefined) return;
  const form = await askForm(paper, desk.snapshot().settings.units);
  if (form === undefined) return;
  const uri = await vscode.window.showSaveDialog({
    defaultUri: besideJob(desk.document.uri, `-${paper.id}.${form.ending}`),
    filters: form.sheet === undefined ? { 'Page to print': ['html'] } : { PDF: ['pdf'] },
    title: `Write ${paper.name}`,
  });
  if (uri === undefined) return;
  const snapshot = desk.snapshot();
  const source = sourceOf(paper, desk);
  const made =
    form.sheet === undefined
      ? { bytes: new TextEncoder().encode(paper.page(snapshot, source)), lacking: new Map() }
      : paper.pdf(snapshot, form.sheet, source);
  await vscode.workspace.fs.writeFile(uri, made.bytes);
  const lacking = lackingSentence(made.lacking);
  if (lacking !== '') await vscode.window.showWarningMessage(lacking);
  await vscode.window.showInformationMessage(`${paper.name} written to ${uri.path}.`);
}

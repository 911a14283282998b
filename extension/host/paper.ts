import * as vscode from 'vscode';
import {
  compareOptions,
  optionPrices,
  optionsOf,
  papers,
  type Paper,
  type PaperSource,
} from '../engine/index.ts';
import { commitOf } from './git/repository.ts';
import type { JobDesk } from './job-desk.ts';
import { keepPaper, showPaper, type OfferedPaper } from './paper-page.ts';

interface PaperItem extends vscode.QuickPickItem {
  readonly paper: Paper;
}

/** What a quote tells beside the job itself: the job's options. */
function offersOf(paper: Paper, desk: JobDesk): Pick<PaperSource, 'options'> {
  const offers = paper.id === 'quote' && optionsOf(desk.snapshot().shown).length > 0;
  return offers ? { options: optionPrices(compareOptions(desk)) } : {};
}

/** What a paper tells of its job's file: the commit, where git keeps it. */
export async function sourceOf({ document }: JobDesk): Promise<PaperSource> {
  const commit = await commitOf(document.uri);
  if (commit === undefined) return {};
  return { commit: { ...commit, changed: commit.changed || document.isDirty } };
}

async function choosePaper(title: string, desk: JobDesk): Promise<OfferedPaper | undefined> {
  const items = papers.map((paper): PaperItem => ({
    label: paper.name,
    detail: paper.help,
    paper,
  }));
  const chosen = await vscode.window.showQuickPick(items, { title, matchOnDetail: true });
  if (chosen === undefined) return undefined;
  const { paper } = chosen;
  const source = await sourceOf(desk);
  return {
    name: paper.name,
    word: paper.id,
    content: () => paper.content(desk.snapshot(), { ...source, ...offersOf(paper, desk) }),
  };
}

/** Shows a paper of the job beside the grid. */
export async function previewPaper(desk: JobDesk): Promise<void> {
  const paper = await choosePaper('Preview Paper', desk);
  if (paper !== undefined) showPaper(desk, paper);
}

/** Writes a paper of the job as PDF, or as a page that any browser prints. */
export async function writePaper(desk: JobDesk): Promise<void> {
  const paper = await choosePaper('Write Paper', desk);
  if (paper !== undefined) await keepPaper(desk, paper);
}

import * as vscode from 'vscode';
import { changeOrderPaper, compareJobs, openSession } from '../../engine/index.ts';
import type { JobDesk } from '../job-desk.ts';
import { sourceOf } from '../paper.ts';
import { keepPaper, showPaper, type OfferedPaper } from '../paper-page.ts';
import { chosenEarlier, type EarlierKind } from './earlier.ts';

const states: readonly (vscode.QuickPickItem & { readonly which: EarlierKind })[] = [
  { label: 'HEAD', detail: 'What was committed last.', which: 'head' },
  { label: 'Revision…', detail: 'A commit that changed this job.', which: 'revision' },
  { label: 'Branch or tag…', detail: 'Such as the one that was quoted.', which: 'branch' },
  { label: 'File…', detail: 'A copy of the job as it was agreed to.', which: 'file' },
];

const copies = [
  { label: 'Client’s copy', detail: 'Scope and price; no costs, no hours.', copy: 'client' },
  { label: 'Shop’s copy', detail: 'With hours and amounts.', copy: 'shop' },
] as const;

/** The change order from a state that the person chooses to the job as it is. */
async function chosenOrder(verb: string, desk: JobDesk): Promise<OfferedPaper | undefined> {
  const title = `${verb} Change Order`;
  const state = await vscode.window.showQuickPick(states, {
    title: `${title}: What Was Agreed To`,
  });
  if (state === undefined) return undefined;
  const earlier = await chosenEarlier(state.which, desk.document.uri);
  if (earlier === undefined) return undefined;
  const chosen = await vscode.window.showQuickPick(copies, { title: `${title}: Copy` });
  if (chosen === undefined) return undefined;
  const before = openSession(earlier.text, earlier.book, earlier.outlines).snapshot();
  const source = await sourceOf(desk);
  return {
    name: 'Change order',
    word: 'change-order',
    content: () => {
      const after = desk.snapshot();
      const compared = compareJobs(before.reading, after.reading);
      if (compared.ok) {
        const order = { before, after, compared: compared.value, since: earlier.against };
        return changeOrderPaper({ ...order, copy: chosen.copy }, source);
      }
      void vscode.window.showErrorMessage(compared.problem.message);
      return undefined;
    },
  };
}

/** Shows the change order from an agreed state to the job as it is beside the grid. */
export async function previewChangeOrder(desk: JobDesk): Promise<void> {
  const order = await chosenOrder('Preview', desk);
  if (order !== undefined) showPaper(desk, order);
}

/** Writes the change order as PDF, or as a page that any browser prints. */
export async function writeChangeOrder(desk: JobDesk): Promise<void> {
  const order = await chosenOrder('Write', desk);
  if (order !== undefined) await keepPaper(desk, order);
}

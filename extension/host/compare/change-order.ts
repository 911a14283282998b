import * as vscode from 'vscode';
import { changeOrderPaper, compareJobs, openSession } from '../../engine/index.ts';
import type { JobDesk } from '../job-desk.ts';
import { newNonce } from '../page.ts';
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

/** Shows the change order from an agreed state to the job as it is, black on white as it will be printed. */
export async function previewChangeOrder(desk: JobDesk): Promise<void> {
  const title = 'Preview Change Order: What Was Agreed To';
  const state = await vscode.window.showQuickPick(states, { title });
  if (state === undefined) return;
  const earlier = await chosenEarlier(state.which, desk.document.uri);
  if (earlier === undefined) return;
  const chosen = await vscode.window.showQuickPick(copies, { title: 'Preview Change Order: Copy' });
  if (chosen === undefined) return;
  const before = openSession(earlier.text, earlier.book, earlier.outlines).snapshot();
  const panel = vscode.window.createWebviewPanel(
    'panelwright.paper',
    `Change order: ${desk.document.uri.path.replace(/^.*\//, '')}`,
    vscode.ViewColumn.Beside,
    { enableFindWidget: true },
  );
  const show = (): void => {
    const after = desk.snapshot();
    const compared = compareJobs(before.reading, after.reading);
    if (!compared.ok) {
      void vscode.window.showErrorMessage(compared.problem.message);
      return;
    }
    const order = { before, after, compared: compared.value, since: earlier.against };
    panel.webview.html = changeOrderPaper({ ...order, copy: chosen.copy }, { nonce: newNonce() });
  };
  show();
  const saved = vscode.workspace.onDidSaveTextDocument((document) => {
    if (document === desk.document) show();
  });
  panel.onDidDispose(() => {
    saved.dispose();
  });
}

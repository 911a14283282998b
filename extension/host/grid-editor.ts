import * as vscode from 'vscode';
import { readFile } from '../engine/index.ts';
import { isFromWebview } from '../protocol/guards.ts';
import type { ToWebview } from '../protocol/messages.ts';
import type { DeskPanel } from './desk-panel.ts';
import type { Desks } from './desks.ts';
import type { JobDesk } from './job-desk.ts';
import { isLongText } from './long-text.ts';
import { gridPage } from './page.ts';
import { pause } from './pause.ts';
import { postPreview } from './post-job.ts';
import { previewOf } from './views/preview.ts';

export const gridViewType = 'panelwright.grid';

/**
 * Longest wait for a page to be ready before the answers are worked out all the same, in ms. Most come
 * sooner; one that VS Code is late with gets its texts between two stretches of that work.
 */
const patience = 1200;

/** How long a page is left to paint the first screenful of texts by itself, in ms. */
const paintTime = 60;

/** A grid that is being opened. */
interface Opening {
  readonly document: vscode.TextDocument;
  readonly panel: DeskPanel;
  /** Ends when its page can be sent messages. */
  readonly ready: Promise<void>;
  readonly isClosed: () => boolean;
}

/**
 * Opens a document's desk. The texts of a long job are shown first: working out its answers beside
 * the page that is on its way would keep both from the processor.
 */
async function opened(
  { document, panel, ready, isClosed }: Opening,
  desks: Desks,
): Promise<JobDesk> {
  // Its page is on its way only once this turn has ended, and comes while the text is read.
  await pause(0);
  const text = document.getText();
  if (!isLongText(text) || desks.known(document.uri) !== undefined) return desks.desk(document);
  const reading = readFile(text);
  const preview = previewOf(reading);
  if (preview === undefined) return desks.desk(document, reading);
  let answered = false;
  const shown = ready.then(async () => {
    void postPreview(panel, preview, () => !answered && !isClosed());
    await pause(paintTime);
  });
  await Promise.race([shown, pause(patience)]);
  try {
    return await desks.desk(document, reading);
  } finally {
    answered = true;
  }
}

/**
 * True for the tab in front that is no preview. VS Code gives such an editor the keyboard before its page
 * is there to take it; one that is only looked at from the explorer leaves it there.
 */
function isOpenedToStay(uri: vscode.Uri): boolean {
  const tab = vscode.window.tabGroups.activeTabGroup.activeTab;
  return (
    tab?.isPreview === false &&
    tab.input instanceof vscode.TabInputCustom &&
    tab.input.uri.toString() === uri.toString()
  );
}

/** The grid as VS Code's editor for job files. */
export function gridEditor(
  desks: Desks,
  extensionUri: vscode.Uri,
): vscode.CustomTextEditorProvider {
  return {
    resolveCustomTextEditor: (document, webviewPanel): void => {
      const { webview } = webviewPanel;
      webview.options = {
        enableScripts: true,
        localResourceRoots: [vscode.Uri.joinPath(extensionUri, 'dist')],
      };
      const panel: DeskPanel = {
        panel: webviewPanel,
        cursor: undefined,
        ready: false,
        post: (message: ToWebview) => void webview.postMessage(JSON.stringify(message)),
      };
      // VS Code loads the page only once this function has ended, so nothing is waited for here.
      let resolve = (): void => undefined;
      const ready = new Promise<void>((done) => {
        resolve = done;
      });
      let closed = false;
      webviewPanel.onDidDispose(() => {
        closed = true;
      });
      const opening = opened({ document, panel, ready, isClosed: () => closed }, desks);
      webview.onDidReceiveMessage(async (message: unknown) => {
        if (!isFromWebview(message)) return;
        if (message.type === 'ready') {
          resolve();
          if (isOpenedToStay(document.uri)) panel.post({ type: 'take-focus' });
        }
        // What is typed while the answers are worked out waits for them.
        const desk = await opening.catch(() => undefined);
        if (desk !== undefined) await desks.receive(desk, panel, message);
      });
      const attached = opening.then(
        (desk) => {
          if (!closed) desks.attach(desk, panel);
        },
        (error: unknown) => {
          desks.failed(document, error);
        },
      );
      desks.expect(document.uri, attached);
      webview.html = gridPage(webview, extensionUri);
    },
  };
}

import * as vscode from 'vscode';
import { readFile, type FileReading } from '../engine/index.ts';
import { isFromWebview } from '../protocol/guards.ts';
import type { ToWebview } from '../protocol/messages.ts';
import type { DeskPanel } from './desk-panel.ts';
import type { Desks } from './desks.ts';
import { gridPage } from './page.ts';
import { pause } from './pause.ts';
import { postPreview } from './post-job.ts';
import { previewOf } from './views/preview.ts';

export const gridViewType = 'panelwright.grid';

/** From this length on a job's texts are shown before its answers are worked out. */
const longText = 100_000;

/** Longest wait for a page to be ready before the answers are worked out all the same, in ms. */
const patience = 3000;

/** Shows the texts of a long job as soon as its page is ready and gives its reading; ends at once for any other. */
async function previewed(
  document: vscode.TextDocument,
  panel: DeskPanel,
  ready: Promise<void>,
  desks: Desks,
): Promise<FileReading | undefined> {
  const text = document.getText();
  if (text.length < longText || desks.known(document.uri) !== undefined) return undefined;
  const reading = readFile(text);
  const preview = previewOf(reading);
  if (preview === undefined) return reading;
  await Promise.race([ready, pause(patience)]);
  await postPreview(panel, preview);
  // Working out the answers holds the host up, so the messages leave before.
  await pause(10);
  return reading;
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
      const opening = previewed(document, panel, ready, desks).then((read) =>
        desks.desk(document, read),
      );
      webview.onDidReceiveMessage(async (message: unknown) => {
        if (!isFromWebview(message)) return;
        if (message.type === 'ready') resolve();
        // What is typed while the answers are worked out waits for them.
        const desk = await opening.catch(() => undefined);
        if (desk !== undefined) await desks.receive(desk, panel, message);
      });
      let closed = false;
      webviewPanel.onDidDispose(() => {
        closed = true;
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

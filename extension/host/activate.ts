import * as vscode from 'vscode';
import type { CellAddress } from '../protocol/messages.ts';
import { registerCommands } from './commands.ts';
import { Comparisons } from './compare/comparisons.ts';
import { Desks } from './desks.ts';
import { gridEditor, gridViewType } from './grid-editor.ts';
import { heavyHand, type HeavyHand } from './heavy-hand.ts';
import { heavyWork, workerSource, type HeavyWork } from './heavy-work.ts';
import type { PinStore } from './knobs.ts';
import { setUpMerging } from './merging/set-up.ts';
import { upgradeOnSave } from './upgrade-on-save.ts';

/** Pinned cells live in the workspace's own storage: they are the user's, not the job's. */
function pinStore(memento: vscode.Memento): PinStore {
  const key = (uri: vscode.Uri): string => `pins:${uri.toString()}`;
  return {
    get: (uri) => memento.get<readonly CellAddress[]>(key(uri)),
    set: async (uri, cells) => memento.update(key(uri), cells),
  };
}

/** What other extensions (and the tests) may use of this one. */
export interface Exports {
  readonly heavyWork: HeavyWork;
}

/** Called by VS Code when a job is opened or a command is run for the first time. */
export function activate(context: vscode.ExtensionContext): Exports {
  const diagnostics = vscode.languages.createDiagnosticCollection('panelwright');
  const sum = vscode.window.createStatusBarItem(
    'panelwright.sum',
    vscode.StatusBarAlignment.Right,
    100,
  );
  sum.name = 'Selected Cells';
  const log = vscode.window.createOutputChannel('Panelwright', { log: true });
  const hand = (): HeavyHand => heavyHand(() => workerSource(context.extensionUri));
  const services = { diagnostics, pins: pinStore(context.workspaceState), log, hand };
  const desks = new Desks(services, sum);
  const comparisons = new Comparisons(services);
  desks.shown = (desk, panel) => {
    comparisons.greet(desk, panel);
  };
  desks.closed = (desk) => {
    comparisons.stop(desk);
  };
  const editor = gridEditor(desks, context.extensionUri);
  context.subscriptions.push(
    diagnostics,
    sum,
    log,
    vscode.window.registerCustomEditorProvider(gridViewType, editor, {
      supportsMultipleEditorsPerDocument: true,
      webviewOptions: { enableFindWidget: false },
    }),
    vscode.workspace.onDidChangeTextDocument((event) => {
      // Events without changes only tell that the dirty mark moved.
      if (event.contentChanges.length === 0) return;
      void desks.known(event.document.uri)?.then((desk) => {
        desk.documentChanged();
      });
      void tellAll(desks, event.document.uri);
    }),
    vscode.workspace.onDidOpenTextDocument((document) => {
      void desks.textOpened(document);
    }),
    vscode.workspace.onDidCloseTextDocument((document) => void desks.textClosed(document)),
    // A save takes along what was typed before it, also where the document has yet to be told.
    vscode.workspace.onWillSaveTextDocument((event) => {
      const desk = desks.known(event.document.uri);
      if (desk !== undefined) event.waitUntil(desk.then((known) => known.settled()));
    }),
    upgradeOnSave(),
    vscode.workspace.onDidSaveTextDocument((document) => void tellAll(desks, document.uri)),
    setUpMerging(context.extensionUri),
    ...fileWatchers(desks),
    comparisons,
    ...registerCommands(desks, context.globalStorageUri, comparisons),
  );
  return { heavyWork: heavyWork(context.extensionUri) };
}

/** Shop books and outlines may change on disk (a pull, another editor, a drawing program). */
function fileWatchers(desks: Desks): readonly vscode.Disposable[] {
  const watcher = vscode.workspace.createFileSystemWatcher('**/*.{panelbook,svg,dxf}');
  const changed = (uri: vscode.Uri): void => void tellAll(desks, uri);
  return [
    watcher,
    watcher.onDidChange(changed),
    watcher.onDidCreate(changed),
    watcher.onDidDelete(changed),
  ];
}

async function tellAll(desks: Desks, uri: vscode.Uri): Promise<void> {
  if (!/\.(panelbook|svg|dxf)$/i.test(uri.path)) return;
  for (const opening of desks.all()) {
    const desk = await opening;
    await desk.fileChanged(uri);
  }
}

import type * as vscode from 'vscode';
import { JobDesk } from '../../extension/host/job-desk.ts';
import type { DeskPanel, DeskServices } from '../../extension/host/desk-panel.ts';
import type { CellAddress, GridEdit, ToWebview } from '../../extension/protocol/messages.ts';
import { editor, FakeDocument, Uri, type Diagnostic } from './fake-vscode.ts';
import { demoBook, doorPair } from './sample-session.ts';

/** Documents and services of a host without VS Code. */
export interface Bench {
  readonly document: FakeDocument;
  readonly asked: vscode.TextDocument;
  readonly book: FakeDocument;
  readonly services: DeskServices;
  readonly log: string[];
  readonly diagnostics: Map<string, readonly Diagnostic[]>;
}

/** The front-door pair and its shop book, both open in the editor, with nothing said yet. */
export function bench(text = doorPair): Bench {
  editor.hearers.clear();
  Object.assign(editor, { edits: [], accepts: true, commands: [], warnings: [], tabs: [] });
  editor.writable.clear();
  const document = new FakeDocument(Uri.parse('file:/jobs/door.paneljob'), text);
  const bookUri = Uri.parse('file:/jobs/books/demo-shop.panelbook');
  const book = new FakeDocument(bookUri, demoBook, 'panelwright-book');
  editor.documents = [document, book];
  const pins = new Map<string, readonly CellAddress[]>();
  const log: string[] = [];
  const diagnostics = new Map<string, readonly Diagnostic[]>();
  const services = {
    diagnostics: {
      set: (uri: Uri, list: readonly Diagnostic[]) => diagnostics.set(uri.toString(), list),
      delete: (uri: Uri) => diagnostics.delete(uri.toString()),
    },
    pins: {
      get: (uri: Uri) => pins.get(uri.toString()),
      set: (uri: Uri, cells: readonly CellAddress[]) => {
        pins.set(uri.toString(), cells);
        return Promise.resolve();
      },
    },
    log: { error: (line: string) => log.push(line) },
    // Heavy questions stay open: what is worked out beside the typing has tests of its own.
    hand: () => ({
      work: () => new Promise(() => undefined),
      drop: () => undefined,
      dispose: () => undefined,
    }),
  };
  return {
    document,
    asked: document as unknown as vscode.TextDocument,
    book,
    services: services as unknown as DeskServices,
    log,
    diagnostics,
  };
}

/** A grid that keeps what it is sent. */
export interface TestPanel extends DeskPanel {
  readonly sent: ToWebview[];
  readonly close: () => void;
}

export function testPanel(): TestPanel {
  const sent: ToWebview[] = [];
  const closing: (() => void)[] = [];
  const panel = {
    active: true,
    reveal: () => undefined,
    onDidChangeViewState: () => undefined,
    onDidDispose: (hear: () => void) => closing.push(hear),
  };
  return {
    panel: panel as unknown as vscode.WebviewPanel,
    ready: false,
    cursor: undefined,
    post: (message) => sent.push(message),
    sent,
    close: () => {
      for (const hear of closing) hear();
    },
  };
}

/** Messages of one type, in the order they came. */
export function sentOf<Type extends ToWebview['type']>(
  panel: TestPanel,
  type: Type,
): readonly (ToWebview & { readonly type: Type })[] {
  return panel.sent.filter((one): one is ToWebview & { readonly type: Type } => one.type === type);
}

const opened: JobDesk[] = [];

/** Closes every desk that a test has opened. */
export function closeDesks(): void {
  for (const desk of opened.splice(0)) desk.dispose();
}

/** A job that is open, in no grid yet. */
export async function deskOf(text = doorPair): Promise<JobDesk> {
  const on = bench(text);
  const desk = await JobDesk.open(on.asked, on.services);
  opened.push(desk);
  return desk;
}

/** A job open in one grid, which follows its document. */
export async function openDesk(
  text = doorPair,
): Promise<{ desk: JobDesk; panel: TestPanel; on: Bench }> {
  const on = bench(text);
  const desk = await JobDesk.open(on.asked, on.services);
  opened.push(desk);
  editor.hearers.add((document) => {
    if (document === on.document) desk.documentChanged();
  });
  const panel = testPanel();
  desk.panels.add(panel);
  desk.show(panel);
  return { desk, panel, on };
}

/** A text typed into a cell. */
export function typed(id: string, column: string, text: string, table = 'part'): GridEdit {
  return { kind: 'type', cell: { table, id, occurrence: 0, column }, text };
}

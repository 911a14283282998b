import * as vscode from 'vscode';
import {
  openSession,
  readFile,
  rowKey,
  type Bill,
  type Edit,
  type Session,
  type SessionChange,
  type Snapshot,
  type TextChange,
} from '../engine/index.ts';
import type { CellAddress, EditReply, GridEdit, ToWebview } from '../protocol/messages.ts';
import { packRows } from '../protocol/packing.ts';
import type { KnobView } from '../protocol/views.ts';
import { readBookText } from './book-files.ts';
import { showProblems } from './diagnostics.ts';
import { gestureEdits } from './gestures.ts';
import { knobPlaces, knobViews, type PinStore } from './knobs.ts';
import { newLetters } from './letters.ts';
import { jobView, lockOf, tableRows, type Lock } from './views/job-view.ts';
import { patchOf } from './views/patch.ts';
import { sheetContext, shownTables, type SheetContext } from './views/sheet-view.ts';

/** One open grid: a panel of a document. */
export interface DeskPanel {
  readonly post: (message: ToWebview) => void;
  readonly panel: vscode.WebviewPanel;
  /** Where its cursor is. */
  cursor: CellAddress | undefined;
}

export interface DeskServices {
  readonly diagnostics: vscode.DiagnosticCollection;
  readonly pins: PinStore;
  readonly log: vscode.LogOutputChannel;
}

/** Rows in a first `rows` message: a screenful and then some, so that the grid paints before the rest. */
const firstRows = 80;
const moreRows = 400;

/**
 * One document with all its grids. The text document is the only truth: edits are worked out on the
 * session, applied as one WorkspaceEdit, and confirmed or rolled back by the document's own event.
 */
export class JobDesk {
  readonly panels = new Set<DeskPanel>();
  #session: Session;
  #context: SheetContext;
  #baseline: Bill;
  #revision = 1;
  #queue: Promise<unknown> = Promise.resolve();
  #bookUri: vscode.Uri | undefined;
  #knobs: readonly KnobView[] = [];
  #knobTimer: number | undefined;
  readonly document: vscode.TextDocument;
  readonly #services: DeskServices;

  private constructor(document: vscode.TextDocument, session: Session, services: DeskServices) {
    this.document = document;
    this.#services = services;
    this.#session = session;
    this.#context = sheetContext(session.snapshot());
    this.#baseline = session.snapshot().bill;
    this.#refreshKnobs();
    showProblems(services.diagnostics, document, session.snapshot());
  }

  static async open(document: vscode.TextDocument, services: DeskServices): Promise<JobDesk> {
    const path = readFile(document.getText()).head.get('book')?.text;
    const book = await readBookText(document.uri, path);
    // The text may have moved on while the book was read.
    const desk = new JobDesk(document, openSession(document.getText(), book.text), services);
    desk.#bookUri = book.uri;
    return desk;
  }

  snapshot(): Snapshot {
    return this.#session.snapshot();
  }

  context(): SheetContext {
    return this.#context;
  }

  /** Reason why the job takes no edit now. */
  lock(): Lock | undefined {
    const { scheme } = this.document.uri;
    if (vscode.workspace.fs.isWritableFileSystem(scheme) === false || scheme === 'git')
      return {
        state: 'read-only',
        message: 'This file is read-only; the grid shows it but takes no edit.',
        line: 0,
      };
    return lockOf(this.snapshot());
  }

  /** Sends a panel everything: the job, then its rows, the first screenful ahead of the rest. */
  show(panel: DeskPanel): void {
    const context = this.#context;
    const job = jobView({
      context,
      baseline: this.#baseline,
      knobs: this.#knobs,
      lock: this.lock(),
    });
    panel.post({ type: 'shown', revision: this.#revision, job });
    for (const table of shownTables(context.snapshot)) {
      const rows = tableRows(table, context);
      let from = 0;
      do {
        const to = from + (from === 0 ? firstRows : moreRows);
        const packed = packRows(rows.slice(from, to));
        panel.post({ type: 'rows', revision: this.#revision, table, rows: packed });
        from = to;
      } while (from < rows.length);
    }
  }

  /** Does one gesture: one WorkspaceEdit, one undo step. Gestures of all panels wait in one queue. */
  edit(
    panel: DeskPanel | undefined,
    request: number | undefined,
    edits: readonly GridEdit[],
  ): Promise<EditReply> {
    return this.#enqueue(async () => {
      const lock = this.lock();
      if (lock !== undefined) return { ok: false, message: lock.message, cell: undefined };
      this.#follow();
      const gesture = gestureEdits(edits, this.snapshot(), newLetters);
      if (!gesture.ok) return gesture;
      return this.#apply(gesture.edits, gesture.focus, { panel, request });
    });
  }

  /** Does edits of the file that no grid gesture stands for, such as switching units. */
  editFile(edits: readonly Edit[]): Promise<EditReply> {
    return this.#enqueue(() => {
      this.#follow();
      return this.#apply(edits, undefined, { panel: undefined, request: undefined });
    });
  }

  /** Ends when every gesture received so far is in the document. */
  async settled(): Promise<void> {
    await this.#queue;
  }

  #enqueue<Answer>(work: () => Promise<Answer> | Answer): Promise<Answer> {
    const done = this.#queue.then(work);
    this.#queue = done.catch(() => undefined);
    return done;
  }

  async #apply(
    edits: readonly Edit[],
    focus: CellAddressLike | undefined,
    cause: { readonly panel: DeskPanel | undefined; readonly request: number | undefined },
  ): Promise<EditReply> {
    const planned = this.#session.plan(edits);
    if (!planned.ok) return { ok: false, message: planned.problem.message, cell: undefined };
    if (planned.value.changes.length === 0) return { ok: true, revision: this.#revision, focus };
    // The grids move at once; the document's event finds nothing left to do, or puts things right.
    this.#move(() => this.#session.setText(planned.value.text), cause);
    const done = await vscode.workspace.applyEdit(this.#workspaceEdit(planned.value.changes));
    this.#follow();
    if (!done)
      return {
        ok: false,
        message: 'The file could not be changed; it may be read-only.',
        cell: undefined,
      };
    return { ok: true, revision: this.#revision, focus };
  }

  #workspaceEdit(changes: readonly TextChange[]): vscode.WorkspaceEdit {
    const edit = new vscode.WorkspaceEdit();
    for (const change of changes) {
      const start = this.document.positionAt(change.start);
      const end = this.document.positionAt(change.end);
      edit.replace(this.document.uri, new vscode.Range(start, end), change.text);
    }
    return edit;
  }

  /** Brings the session to the document's text where they differ (typing in the text view, undo, git). */
  #follow(): void {
    const text = this.document.getText();
    if (text === this.snapshot().reading.text) return;
    const bookBefore = this.#bookPath();
    this.#move(() => this.#session.setText(text));
    if (this.#bookPath() !== bookBefore) void this.#loadBook();
  }

  /** The document changed, by our own edit or by somebody else. */
  documentChanged(): void {
    this.#follow();
  }

  /** A file was saved or changed on disk: reloads the shop book if it is the one. */
  async fileChanged(uri: vscode.Uri): Promise<void> {
    if (uri.toString() === this.#bookUri?.toString()) await this.#loadBook();
  }

  #bookPath(): string | undefined {
    return this.snapshot().shown.head.get('book')?.text;
  }

  async #loadBook(): Promise<void> {
    const path = this.#bookPath();
    const book = await readBookText(this.document.uri, path);
    this.#bookUri = book.uri;
    this.#move(() => this.#session.setBook(book.text));
  }

  #move(
    work: () => SessionChange,
    cause: { readonly panel: DeskPanel | undefined; readonly request: number | undefined } = {
      panel: undefined,
      request: undefined,
    },
  ): void {
    const before = this.#context;
    const wasLocked = this.lock()?.state;
    const change = work();
    const after = sheetContext(this.snapshot());
    this.#context = after;
    this.#revision += 1;
    this.#refreshKnobs();
    if (this.lock()?.state !== wasLocked || change.whole) {
      for (const panel of this.panels) this.show(panel);
    } else {
      const revision = this.#revision;
      const patch = patchOf({
        before,
        after,
        change,
        baseline: this.#baseline,
        knobs: this.#knobs,
        revision,
      });
      for (const panel of this.panels)
        panel.post({ ...patch, cause: panel === cause.panel ? cause.request : undefined });
    }
    if (before.snapshot.problems !== after.snapshot.problems)
      showProblems(this.#services.diagnostics, this.document, this.snapshot());
  }

  /** Values of the pinned cells at once; what a step of each does follows when there is time. */
  #refreshKnobs(): void {
    const places = knobPlaces(this.#services.pins, this.document.uri, this.snapshot());
    this.#knobs = knobViews(places, this.snapshot(), this.#knobs);
    if (this.#knobTimer !== undefined) clearTimeout(this.#knobTimer);
    this.#knobTimer = setTimeout(() => {
      this.#knobTimer = undefined;
      this.#knobs = knobViews(places, this.snapshot(), [], (edits) => this.#session.whatIf(edits));
      for (const panel of this.panels)
        panel.post({
          type: 'patch',
          revision: this.#revision,
          cause: undefined,
          sheets: [],
          rows: '',
          knobs: this.#knobs,
        });
    }, 250);
  }

  /** Pinned cells of this job, as `part/mid_ring#0/tilt`. */
  pinned(): ReadonlySet<string> {
    const places = knobPlaces(this.#services.pins, this.document.uri, this.snapshot());
    return new Set(places.map((place) => `${rowKey(place)}/${place.column}`));
  }

  pinsChanged(): void {
    this.#refreshKnobs();
  }

  dispose(): void {
    if (this.#knobTimer !== undefined) clearTimeout(this.#knobTimer);
    this.#services.diagnostics.delete(this.document.uri);
  }
}

type CellAddressLike = Pick<CellAddress, 'table' | 'id' | 'occurrence'>;

import type * as vscode from 'vscode';
import {
  readFile,
  sessionSteps,
  type Money,
  type Edit,
  type FileReading,
  type HeavyQuestion,
  type HeavyReplies,
  type Session,
  type SessionChange,
  type Snapshot,
} from '../engine/index.ts';
import type { EditReply, GridEdit, RowAddress, ToWebview } from '../protocol/messages.ts';
import type { KnobView } from '../protocol/views.ts';
import { noCause, type Cause, type DeskPanel, type DeskServices } from './desk-panel.ts';
import { showProblems } from './diagnostics.ts';
import { FilesBeside, readFilesBeside } from './files-beside.ts';
import { gestureEdits } from './gestures.ts';
import { openingPause, Settling } from './settling.ts';
import { KnobStrip } from './knob-strip.ts';
import { lockOfDocument, refusal } from './document-lock.ts';
import { newLetters } from './letters.ts';
import { postJob } from './post-job.ts';
import { jobView, tableRows, type Lock } from './views/job-view.ts';
import { Telling } from './telling.ts';
import { withTurns } from './turns.ts';
import { anotherText, applied } from './workspace-edit.ts';
import { sheetContext, type SheetContext } from './views/sheet-context.ts';
import { shownTables } from './views/sheet-view.ts';

/**
 * One document with all its grids. The text document is the only truth: edits are worked out on the
 * session, applied as one WorkspaceEdit, and confirmed or rolled back by the document's own event.
 */
export class JobDesk {
  readonly panels = new Set<DeskPanel>();
  /** Called after each change of the job's text, its files or its answers. */
  readonly hearers = new Set<() => void>();
  readonly #session: Session;
  #context: SheetContext;
  #baseline: Money;
  /** Somebody has changed the job since it was opened. */
  #edited = false;
  #revision = 1;
  #queue: Promise<unknown> = Promise.resolve();
  readonly #files: FilesBeside;
  readonly #knobs: KnobStrip;
  readonly #settling: Settling;
  readonly #telling: Telling;
  /** What the job would come to after edits, in figures or as a whole; nothing changes. */
  readonly whatIf: Session['whatIf'];
  readonly trial: Session['trial'];
  readonly document: vscode.TextDocument;
  readonly #services: DeskServices;

  private constructor(
    document: vscode.TextDocument,
    session: Session,
    services: DeskServices,
    bookUri: vscode.Uri | undefined,
  ) {
    this.document = document;
    this.#services = services;
    this.#session = session;
    ({ whatIf: this.whatIf, trial: this.trial } = session);
    this.#context = sheetContext(session.snapshot());
    const { bill, work, price } = session.snapshot();
    this.#baseline = { bill, work, price };
    this.#knobs = new KnobStrip({
      uri: document.uri,
      pins: services.pins,
      snapshot: () => this.snapshot(),
      whatIf: session.whatIf,
      shown: (knobs) => {
        this.#knobsShown(knobs);
      },
    });
    const ground = {
      job: document.uri,
      log: services.log,
      snapshot: () => this.snapshot(),
      setBook: (text: string | undefined) => {
        this.#move(() => session.setBook(text));
      },
      setOutlines: (texts: Parameters<Session['setOutlines']>[0]) => {
        this.#move(() => session.setOutlines(texts));
      },
    };
    this.#files = new FilesBeside(ground, bookUri);
    this.#settling = new Settling(services, {
      snapshot: () => this.snapshot(),
      settle: this.#settled.bind(this),
      told: ({ about }, share) => {
        this.#postAll(() => ({ type: 'progress', about, share }));
      },
    });
    this.#settling.look(openingPause(this.snapshot().reading.text));
    this.#telling = new Telling(this.#context, {
      post: this.#postAll.bind(this),
      now: () => ({
        context: this.#context,
        baseline: this.#baseline,
        knobs: this.#knobs.views,
        revision: this.#revision,
      }),
      told: ({ snapshot: { problems } }) => {
        if (problems !== this.snapshot().problems) this.#showProblems();
      },
    });
    this.#showProblems();
  }

  #showProblems(): void {
    showProblems(this.#services.diagnostics, this.document, this.snapshot());
  }

  /** `read` is a reading of its text made before, which is taken where the text is still the same. */
  static async open(
    document: vscode.TextDocument,
    services: DeskServices,
    read?: FileReading,
  ): Promise<JobDesk> {
    const reading = read ?? readFile(document.getText());
    const { book, outlines } = await readFilesBeside(document.uri, reading);
    // The text may move on while the files are read, and while the answers are worked out.
    const text = document.getText();
    const isSame = text === reading.text;
    const steps = sessionSteps(isSame ? reading : text, book.text, outlines);
    const session = await withTurns(steps);
    session.setText(document.getText());
    const desk = new JobDesk(document, session, services, book.uri);
    if (!isSame) void desk.#files.loadOutlines();
    return desk;
  }

  snapshot(): Snapshot {
    return this.#session.snapshot();
  }

  /** What the job came to when it was opened. */
  get baseline(): Money {
    return this.#baseline;
  }

  context(): SheetContext {
    return this.#context;
  }

  /** Reason why the job takes no edit now. */
  lock(): Lock | undefined {
    return lockOfDocument(this.document, this.snapshot());
  }

  /** Sends a panel everything: the job, then its rows, the first screenful ahead of the rest. */
  show(panel: DeskPanel): void {
    panel.ready = true;
    const context = this.#context;
    const job = jobView({
      context,
      baseline: this.#baseline,
      knobs: this.#knobs.views,
      lock: this.lock(),
    });
    const tables = shownTables(context.snapshot);
    const rows = new Map(tables.map((table) => [table, tableRows(table, context)]));
    postJob(panel, this.#revision, { job, rows });
  }

  /** Does one gesture: one WorkspaceEdit, one undo step. Gestures of all panels wait in one queue. */
  edit(
    panel: DeskPanel | undefined,
    request: number | undefined,
    edits: readonly GridEdit[],
  ): Promise<EditReply> {
    return this.#enqueue(async () => {
      this.documentChanged();
      const lock = this.lock();
      if (lock !== undefined) return refusal(lock.message);
      const gesture = gestureEdits(edits, this.snapshot(), newLetters);
      if (!gesture.ok) return gesture;
      const typed = edits.flatMap((one) => (one.kind === 'type' ? [one.cell] : []));
      return this.#apply(gesture.edits, gesture.focus, { panel, request, typed });
    });
  }

  /** Does edits of the file that no grid gesture stands for, such as switching units. */
  editFile(edits: readonly Edit[]): Promise<EditReply> {
    return this.#enqueue(() => {
      this.documentChanged();
      const lock = this.lock();
      if (lock !== undefined) return refusal(lock.message);
      return this.#apply(edits, undefined, noCause);
    });
  }

  /** The answer to a heavy question that a picture asks, worked out beside the typing. */
  settledAnswer(question: HeavyQuestion): Promise<unknown> {
    return this.#settling.of(question);
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
    focus: RowAddress | undefined,
    cause: Cause,
    again = 2,
  ): Promise<EditReply> {
    const planned = this.#session.plan(edits);
    if (!planned.ok) return refusal(planned.problem.message);
    if (planned.value.changes.length === 0) return { ok: true, revision: this.#revision, focus };
    const before = this.snapshot().reading;
    // The grids move at once; the document's event finds nothing left to do, or puts things right.
    this.#edited = true;
    this.#move(() => this.#session.take(planned.value), cause);
    const done = await applied(this.document, planned.value.changes, this.#services.log);
    const overtaken = !done && again > 0 && (await anotherText(this.document, before.text));
    this.documentChanged();
    if (overtaken) return this.#apply(edits, focus, cause, again - 1);
    return done
      ? { ok: true, revision: this.#revision, focus }
      : refusal('The file could not be changed; it may be read-only.');
  }

  /** Brings the session to the document's text where they differ (typing in the text view, undo, git). */
  documentChanged(): void {
    const text = this.document.getText();
    if (text === this.snapshot().reading.text) return;
    this.#edited = true;
    this.#move(() => this.#session.setText(text));
  }

  /** What an unchanged job comes to when all is worked out is what later changes are measured from. */
  #settled(replies: HeavyReplies): void {
    this.#move(() => {
      const change = this.#session.settle(replies);
      const { bill, work, price } = this.snapshot();
      if (!this.#edited) this.#baseline = { bill, work, price };
      return change;
    });
  }

  /** A file was saved or changed on disk, which may be the shop book or an outline. */
  async fileChanged(uri: vscode.Uri): Promise<void> {
    await this.#files.changed(uri);
  }

  #move(work: () => SessionChange, cause: Cause = noCause): void {
    const before = this.snapshot();
    const wasLocked = this.lock()?.state;
    const change = work();
    this.#context = sheetContext(this.snapshot());
    this.#revision += 1;
    this.#knobs.refresh();
    if (this.lock()?.state !== wasLocked || change.whole) {
      for (const panel of this.panels) if (panel.ready) this.show(panel);
      this.#telling.knowsAll();
    } else this.#telling.tell(change, cause);
    this.#settling.look();
    this.#files.follow(before);
    for (const hear of this.hearers) hear();
  }

  #postAll(message: (panel: DeskPanel) => ToWebview): void {
    for (const panel of this.panels) if (panel.ready) panel.post(message(panel));
  }

  #knobsShown(knobs: readonly KnobView[]): void {
    const revision = this.#revision;
    const patch = { type: 'patch', revision, cause: undefined, sheets: [], rows: '' } as const;
    this.#postAll(() => ({ ...patch, knobs }));
  }

  /** Pinned cells of this job, as `part/mid_ring#0/tilt`. */
  pinned(): ReadonlySet<string> {
    return this.#knobs.pinned();
  }

  pinsChanged(): void {
    this.#knobs.refresh();
  }

  dispose(): void {
    this.#settling.dispose();
    this.#telling.dispose();
    this.#files.dispose();
    this.#knobs.dispose();
    this.#services.diagnostics.delete(this.document.uri);
  }
}

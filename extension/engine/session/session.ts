import type { OutlineTexts } from '../geometry/outline-files.ts';
import type { WhatIf } from './desk.ts';
import type { Edit, FileReading } from '../job/source.ts';
import { applyEdits } from '../job/apply-edits.ts';
import { readChange, readFile } from '../job/read-file.ts';
import { ok, type Result } from '../result.ts';
import { atOnce, type Steps } from '../steps.ts';
import { deskSteps, type Desk, type DeskGrounds } from './desk.ts';
import { openGrounds } from './grounds.ts';
import type { HeavyReplies } from './heavy-memory.ts';
import { openPlans, type PlannedEdit } from './plans.ts';
import type { Snapshot } from './snapshot.ts';

/** What a change of text or book did. */
export interface SessionChange {
  /** Rows with other answers, as `table/id#occurrence`. */
  readonly rows: ReadonlySet<string>;
  /** Rows came, went or moved. */
  readonly structure: boolean;
  /** Everything may differ: the book, the units or the kinds changed. */
  readonly whole: boolean;
}

/**
 * One open job: text in, answers out. It is brought from text to text and calculates only what
 * changed; the caller owns the text.
 */
export interface Session {
  readonly snapshot: () => Snapshot;
  /** Takes over a new text of the job, whoever wrote it. */
  readonly setText: (text: string) => SessionChange;
  /** Takes over an edit that was planned: `setText` of its text, without comparing long texts. */
  readonly take: (planned: PlannedEdit) => SessionChange;
  /** Takes over the shop book's text; undefined is the built-in demo book. */
  readonly setBook: (text: string | undefined) => SessionChange;
  /**
   * Takes over the texts of outline files by their path, as the snapshot wants them; undefined for one
   * that is not there. Texts that are the same change nothing and are not read again.
   */
  readonly setOutlines: (texts: OutlineTexts) => SessionChange;
  /** Takes over answers to the snapshot's heavy questions. */
  readonly settle: (replies: HeavyReplies) => SessionChange;
  /** Works out edits as the smallest changes of the text. */
  readonly plan: (edits: readonly Edit[]) => Result<PlannedEdit>;
  /** Bill and checks as they would be after these edits; nothing changes. */
  readonly whatIf: (edits: readonly Edit[]) => WhatIf | undefined;
  /** The whole job as it would be after these edits, worked out beside it; nothing changes. */
  readonly trial: (edits: readonly Edit[]) => Result<Snapshot>;
}

const nothing: SessionChange = { rows: new Set(), structure: false, whole: false };

/** A text without rows, for a file of which nothing can be shown yet. */
const emptyText = 'format = 1\n';

function canShow(reading: FileReading): boolean {
  return reading.state === 'readable' || reading.state === 'newer';
}

/** Keys of `[job]` that change what every cell means or shows. */
const wideKeys = ['units', 'currency', 'fraction'];

function headMoved(before: FileReading, after: FileReading): boolean {
  return wideKeys.some((key) => before.head.get(key)?.text !== after.head.get(key)?.text);
}

/** Tables whose rows belong to the book: a change there may change every kind. */
const bookTables = [
  ...['material', 'pack', 'supplier', 'constant', 'band', 'kind'],
  ...['kit', 'question', 'kit_row'],
];

function bookMoved(before: FileReading, after: FileReading): boolean {
  return bookTables.some((table) => before.tables.get(table) !== after.tables.get(table));
}

interface Opened {
  readonly desk: Desk;
  readonly snapshot: Snapshot;
}

function* openingWith(
  reading: FileReading,
  shown: FileReading,
  grounds: DeskGrounds,
): Steps<Opened> {
  const desk = yield* deskSteps(shown, grounds);
  return { desk, snapshot: desk.snapshot(reading) };
}

function openWith(reading: FileReading, shown: FileReading, grounds: DeskGrounds): Opened {
  return atOnce(openingWith(reading, shown, grounds));
}

/**
 * Opens a job from its text, or from the reading of it where there is one already; without a book text
 * it runs on the built-in demo book and says so.
 */
export function openSession(
  job: string | FileReading,
  bookText?: string,
  outlineTexts: OutlineTexts = new Map(),
): Session {
  return atOnce(sessionSteps(job, bookText, outlineTexts));
}

/** The same in steps, for a long job that is opened while somebody waits for something else. */
export function* sessionSteps(
  job: string | FileReading,
  bookText?: string,
  outlineTexts: OutlineTexts = new Map(),
): Steps<Session> {
  const grounds = openGrounds(bookText, outlineTexts);
  const first = typeof job === 'string' ? readFile(job) : job;
  const plans = openPlans();
  const start = canShow(first) ? first : readFile(emptyText);
  let { desk, snapshot } = yield* openingWith(first, start, grounds.now());

  function reopened(): SessionChange {
    ({ desk, snapshot } = openWith(snapshot.reading, snapshot.shown, grounds.now()));
    return { rows: new Set(), structure: true, whole: true };
  }

  function move(reading: FileReading): SessionChange {
    const before = snapshot.shown;
    if (!canShow(reading)) {
      snapshot = desk.snapshot(reading);
      return nothing;
    }
    const whole = headMoved(before, reading) || bookMoved(before, reading);
    const change = desk.update(reading, whole);
    snapshot = desk.snapshot(reading);
    return { ...change, whole: headMoved(before, reading) };
  }

  function setText(next: string): SessionChange {
    if (next === snapshot.reading.text) return nothing;
    return move(readChange(snapshot.reading, next));
  }

  return {
    snapshot: () => snapshot,
    setText,
    take: (edit) => {
      const reading = plans.readingAfter(edit, snapshot.reading);
      return reading === undefined ? setText(edit.text) : move(reading);
    },
    setBook: (next) => {
      grounds.setBook(next);
      return reopened();
    },
    setOutlines: (texts) => (grounds.setOutlines(texts) ? reopened() : nothing),
    settle: (replies) => {
      // Also while the text cannot be shown: what is not taken is asked for again, without end.
      if (!grounds.answered(replies)) return nothing;
      const change = desk.settle();
      snapshot = desk.snapshot(snapshot.reading);
      return { ...change, whole: false };
    },
    plan: (edits) => plans.plan(snapshot.reading, edits),
    trial: (edits) => {
      const applied = applyEdits(snapshot.reading, edits);
      if (!applied.ok) return applied;
      return ok(openWith(applied.value.reading, applied.value.reading, grounds.now()).snapshot);
    },
    whatIf: (edits) => {
      const applied = applyEdits(snapshot.reading, edits);
      if (!applied.ok || !canShow(snapshot.reading)) return undefined;
      return desk.whatIf(applied.value.reading);
    },
  };
}

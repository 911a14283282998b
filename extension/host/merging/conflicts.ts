import type * as vscode from 'vscode';
import {
  columnsOf,
  headColumns,
  moneyText,
  openConflicts,
  openSession,
  readFile,
  settledText,
  stretchChange,
  type Conflict,
  type FileReading,
  type Session,
} from '../../engine/index.ts';
import type { Answers, EditReply, Question } from '../../protocol/messages.ts';
import type {
  ConflictChoice,
  ConflictTotal,
  ConflictView,
  ResolveView,
} from '../../protocol/resolve-view.ts';
import { readFilesBeside } from '../files-beside.ts';
import { repositoryOf, textAt } from '../git/repository.ts';
import { applied } from '../workspace-edit.ts';

type Choices = ReadonlyMap<string, ConflictChoice>;

function rowName({ table, row: id, occurrence }: Conflict['place'], reading: FileReading): string {
  if (id === undefined) return table === 'book' ? 'Book' : 'Job';
  const rows = reading.tables.get(table) ?? [];
  const row = rows.find((one) => one.id === id && one.occurrence === occurrence);
  const name = row?.cells.get('name')?.text ?? '';
  return name === '' ? id : `${name} (${id})`;
}

/** What a conflict is about, in the words of the grid; the reading is of the job with ours taken in all. */
function titleOf({ kind, place, key }: Conflict, reading: FileReading): string {
  const { table, row, column } = place;
  if (kind === 'text') return table === '' ? `Lines in conflict (${key})` : `Table ${table}`;
  const name = rowName(place, reading);
  if (column === undefined) return name;
  if (column === 'order') return `${name}: place on the screen`;
  const head = table === 'book' ? 'book' : 'job';
  const columns = row === undefined ? headColumns(head) : columnsOf(reading, table);
  return `${name}: ${columns.find((one) => one.key === column)?.label ?? column}`;
}

function whatOf({ kind, place, ours, theirs }: Conflict): string {
  switch (kind) {
    case 'cell':
      return place.column === 'order'
        ? 'Both moved this row to another place on the screen.'
        : 'Both changed this cell.';
    case 'row':
      if (ours === undefined) return 'Ours has no such row; theirs changed it or uses it.';
      if (theirs === undefined) return 'Theirs has no such row; ours changed it or uses it.';
      return 'Both changed this row in ways that cannot stand together.';
    case 'twice':
      return 'Both put in a row under one id. With both, theirs keeps the id shown here, and what speaks of it follows.';
    case 'name':
      return 'Both gave this row another id. What speaks of it follows the one you take.';
    case 'text':
      return 'Both changed these lines.';
  }
}

function conflictView(conflict: Conflict, reading: FileReading): ConflictView {
  const { key, base, baseKnown, ours, theirs, choices } = conflict;
  return {
    key,
    title: titleOf(conflict, reading),
    what: whatOf(conflict),
    base,
    baseKnown,
    ours,
    theirs,
    choices,
  };
}

function messageOf(count: number, byCell: boolean): string {
  if (!byCell) {
    return 'One side cannot be read as a job, so whole stretches of lines are to be chosen.';
  }
  return count === 0
    ? 'No cell is in conflict: all that both sides changed can be put together.'
    : 'All else that both sides changed is put together with your first choice. What you leave open can be saved and gone on with later.';
}

/** The version of a file in conflict that both sides came from, as git keeps it; undefined where it has none. */
async function versionBefore(uri: vscode.Uri): Promise<string | undefined> {
  const found = await repositoryOf(uri);
  return found.ok ? textAt(found.repository, ':1', uri) : undefined;
}

function oursInAll(conflicts: readonly Conflict[]): Choices {
  return new Map(conflicts.map(({ key }) => [key, 'ours']));
}

/** The open conflicts of a document, cell by cell. */
export async function conflictsView(document: vscode.TextDocument): Promise<ResolveView> {
  const text = document.getText();
  const before = await versionBefore(document.uri);
  const open = openConflicts(text, before);
  if (open === undefined) tried.delete(document);
  const { conflicts = [], byCell = true } = open ?? {};
  const reading = readFile(settledText(text, oursInAll(conflicts), before));
  return {
    conflicts: conflicts.map((conflict) => conflictView(conflict, reading)),
    message: messageOf(conflicts.length, byCell),
  };
}

/** Settles conflicts as one edit of the document: one undo step. */
export async function settleConflicts(
  document: vscode.TextDocument,
  choices: Choices,
): Promise<EditReply> {
  const text = document.getText();
  const settled = settledText(text, choices, await versionBefore(document.uri));
  const changes = stretchChange(text, settled);
  const refused = 'The file could not be changed; it may be read-only.';
  // The text may have moved on while git was asked.
  const isSame = document.getText() === text;
  const log = { error: () => undefined };
  const done = isSame && (await applied(document, changes, log));
  if (openConflicts(document.getText()) === undefined) tried.delete(document);
  return done
    ? { ok: true, revision: 0, focus: undefined }
    : { ok: false, message: refused, cell: undefined };
}

interface Tried {
  readonly session: Session;
  readonly book: string | undefined;
}

/** What is tried of a file in conflict: opened once, for all its conflicts and what is left of them. */
const tried = new WeakMap<vscode.TextDocument, Tried>();

async function sessionOf(document: vscode.TextDocument, text: string): Promise<Session> {
  const { book, outlines } = await readFilesBeside(document.uri, readFile(text));
  const known = tried.get(document);
  if (known === undefined || known.book !== book.text) {
    const session = openSession(text, book.text, outlines);
    tried.set(document, { session, book: book.text });
    return session;
  }
  known.session.setOutlines(outlines);
  return known.session;
}

function totalOf(session: Session, choice: ConflictChoice): ConflictTotal {
  const { price, bill, settings, reading } = session.snapshot();
  if (reading.state !== 'readable') return { choice, price: 'not known', materials: 'not known' };
  const text = (minor: number): string => moneyText(minor, settings.currency);
  return { choice, price: text(price.totals.price), materials: text(bill.totals.charge) };
}

/** What the job comes to with each side of one conflict, ours being taken in all others. */
export async function conflictTotals(
  document: vscode.TextDocument,
  key: string,
): Promise<readonly ConflictTotal[]> {
  const text = document.getText();
  const before = await versionBefore(document.uri);
  const conflicts = openConflicts(text, before)?.conflicts ?? [];
  const asked = conflicts.find((one) => one.key === key);
  if (asked === undefined) return [];
  const ours = oursInAll(conflicts);
  const session = await sessionOf(document, settledText(text, ours, before));
  return asked.choices.map((choice) => {
    session.setText(settledText(text, new Map([...ours, [key, choice]]), before));
    return totalOf(session, choice);
  });
}

/** Questions of the page that settles conflicts. */
export type OfConflicts = Extract<Question, { ask: 'conflicts' | 'conflict-totals' | 'settle' }>;

export function isOfConflicts(question: Question): question is OfConflicts {
  return ['conflicts', 'conflict-totals', 'settle'].includes(question.ask);
}

/** Answers the page that settles conflicts. */
export function conflictAnswer(
  question: OfConflicts,
  document: vscode.TextDocument,
): Promise<Answers[OfConflicts['ask']]> {
  switch (question.ask) {
    case 'conflicts':
      return conflictsView(document);
    case 'conflict-totals':
      return conflictTotals(document, question.key);
    case 'settle':
      return settleConflicts(document, new Map(Object.entries(question.choices)));
  }
}

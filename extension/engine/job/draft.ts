import { columnOf, columnsOf, headColumns } from './columns.ts';
import { editProblem } from './edit-problems.ts';
import { insertKey, removeKey, replaceValue, type BlockAt } from './edit-key.ts';
import { keyRanks } from './key-rank.ts';
import type { Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { indexed, readChange, readInBlock, type IndexedReading } from './read-file.ts';
import type { FileReading, SourceCell, TextChange } from './source.ts';
import { changedText, joinedChanges } from './text-changes.ts';
import { valueText } from './write-value.ts';
import { onDemand } from '../units/on-demand.ts';

/** A file on its way through a gesture: its text now, and what changed since the gesture began. */
export interface Draft {
  /** The file when the gesture began. */
  readonly original: FileReading;
  readonly reading: IndexedReading;
  readonly changes: readonly TextChange[];
}

export function startDraft(reading: FileReading): Draft {
  return { original: reading, reading: indexed(reading), changes: [] };
}

/** The draft after changes of its text, given in any order. */
export function withChanges(draft: Draft, changes: readonly TextChange[]): Draft {
  if (changes.length === 0) return draft;
  const sorted = changes.toSorted((a, b) => a.start - b.start);
  return {
    original: draft.original,
    reading: readAfter(draft.reading, sorted),
    changes: joinedChanges(draft.original.text, draft.changes, sorted),
  };
}

function readAfter(reading: IndexedReading, sorted: readonly TextChange[]): IndexedReading {
  const [first, ...more] = sorted;
  const quick = first && more.length === 0 ? readInBlock(reading, first) : undefined;
  return quick ?? indexed(readChange(reading, changedText(reading.text, sorted)));
}

/** The draft after one value was replaced by another: most gestures are this and no more. */
function withValue(draft: Draft, change: TextChange): Draft | undefined {
  if (draft.changes.length > 0) return undefined;
  const reading = readInBlock(draft.reading, change);
  return reading && { original: draft.original, reading, changes: [change] };
}

/** One key of one block, and the text it is to have. */
export interface KeyEdit {
  readonly block: number;
  readonly key: string;
  readonly text: string | undefined;
  /** The value as TOML, to be written to the letter instead of `text`. */
  readonly spelt?: string;
}

const textOnDemand = onDemand('text');

function blockAt(reading: IndexedReading, index: number): BlockAt | undefined {
  const block = reading.split.parsed[index];
  if (block === undefined) return undefined;
  const table = block.header?.name ?? '';
  const columns =
    block.role === 'head'
      ? headColumns(table === 'book' ? 'book' : 'job')
      : columnsOf(reading, table);
  const start = reading.split.starts[index] ?? 0;
  return textOnDemand({ block, start, rank: keyRanks(table, columns) }, () => reading.text);
}

function oldCell(at: BlockAt, key: string): SourceCell | undefined {
  if (key === 'order' || key === 'id') {
    return { text: '', form: key === 'id' ? 'string' : 'integer', span: { start: 0, end: 0 } };
  }
  return at.block.cells.get(key);
}

function keyChanges(reading: IndexedReading, edit: KeyEdit): readonly TextChange[] {
  const at = blockAt(reading, edit.block);
  if (at === undefined) return [];
  const { key, text } = edit;
  const entry = at.block.entries.find((one) => one.key === key);
  if (text === undefined) return entry === undefined ? [] : [removeKey(at, entry)];
  const table = at.block.header?.name ?? '';
  const column = columnOf(table, key) ?? columnsOf(reading, table).find((one) => one.key === key);
  const value = edit.spelt ?? valueText(text, oldCell(at, key), column);
  if (entry === undefined) return [insertKey(at, key, value)];
  if (edit.spelt !== undefined) return replaceValue(at, entry, value);
  // The value as it stands is kept to the letter where it says the same already.
  if (at.block.cells.get(key)?.text === text) return [];
  return replaceValue(at, entry, value);
}

function clash(reading: IndexedReading, edit: KeyEdit): Problem {
  const block = reading.split.parsed[edit.block];
  const row = [block?.header?.name ?? '', block?.id ?? ''].join(' ').trim();
  return editProblem('edit-key-clash', { key: edit.key, row });
}

/** Sets keys, each in a block of its own, as one change. */
export function withKeys(draft: Draft, edits: readonly KeyEdit[]): Result<Draft> {
  const changes = edits.flatMap((edit) => keyChanges(draft.reading, edit));
  const [only] = changes;
  const value = edits.length === 1 && changes.length === 1 ? only : undefined;
  const next = (value && withValue(draft, value)) ?? withChanges(draft, changes);
  const { parsed } = next.reading.split;
  const spoilt =
    parsed.length === draft.reading.split.parsed.length
      ? edits.find((edit) => parsed[edit.block]?.broken === true)
      : edits[0];
  return spoilt === undefined ? ok(next) : failed(clash(draft.reading, spoilt));
}

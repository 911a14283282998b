import type { Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { columnOf, columnsOf, headColumns } from './columns.ts';
import { startDraft, withChanges, withKeys, type Draft, type KeyEdit } from './draft.ts';
import { moveRow, roomFor, sortRows } from './edit-order.ts';
import { editProblem } from './edit-problems.ts';
import { deleteRow, insertHead, insertRow } from './edit-rows.ts';
import { compareRanks, keyRanks, type KeyRank } from './key-rank.ts';
import { referenceChanges } from './rename-references.ts';
import { newIdProblem, rowAt, rowsCalled } from './row-ids.ts';
import type { Column } from './column.ts';
import type { Edit, FileReading, RowRef, SourceRow, TextChange } from './source.ts';
import { newlineOf } from './text-lines.ts';
import { keyText, quotedText, valueText } from './write-value.ts';

type EditOf<Kind extends Edit['kind']> = Extract<Edit, { readonly kind: Kind }>;

function editableRow(draft: Draft, ref: RowRef): Result<SourceRow> {
  const row = rowAt(draft.reading, ref);
  const { table, id } = ref;
  if (row === undefined) return failed(editProblem('edit-row-missing', { table, id }));
  return row.broken ? failed(editProblem('edit-row-locked', { table, id })) : ok(row);
}

function cellEdit(draft: Draft, edit: EditOf<'set-cell'>): Result<KeyEdit> {
  const row = editableRow(draft, edit.row);
  if (!row.ok) return row;
  const { column: key, text } = edit;
  if (key === 'id' && text === undefined) return failed(editProblem('edit-id-needed'));
  if (key === 'id' && text !== undefined && text !== row.value.id) {
    const problem = newIdProblem(draft.reading, row.value.table, text);
    if (problem !== undefined) return failed(problem);
  }
  return ok({ block: row.value.block, key, text });
}

function lineOfKey(key: string, text: string, column: Column | undefined): string {
  return `${keyText(key)} = ${valueText(text, undefined, column)}`;
}

/** The lines of a new block: keys in canonical order, a blank line between groups. */
function blockLines(
  header: string,
  keys: readonly { readonly line: string; readonly rank: KeyRank }[],
  newline: string,
): string {
  const lines = [header];
  let group: string | undefined;
  for (const { line, rank } of keys.toSorted((a, b) => compareRanks(a.rank, b.rank))) {
    if (group !== undefined && group !== rank.group) lines.push('');
    lines.push(line);
    group = rank.group;
  }
  return lines.map((line) => line + newline).join('');
}

function rowLines(reading: FileReading, edit: EditOf<'insert-row'>, order: number): string {
  const columns = columnsOf(reading, edit.table);
  const rank = keyRanks(edit.table, columns);
  const keys = Object.entries(edit.cells)
    .filter(([key, text]) => text !== '' && key !== 'id' && key !== 'order')
    .map(([key, text]) => {
      const column = columns.find((one) => one.key === key) ?? columnOf(edit.table, key);
      return { line: lineOfKey(key, text, column), rank: rank(key) };
    });
  const own = [
    { line: `id = ${quotedText(edit.id)}`, rank: rank('id') },
    { line: `order = ${String(order)}`, rank: rank('order') },
  ];
  return blockLines(`[[${edit.table}]]`, [...own, ...keys], newlineOf(reading.text));
}

/** Ids of rows that the edits from an index on insert one below the other. */
function chainFrom(edits: readonly Edit[], from: number): string[] {
  const ids: string[] = [];
  for (const [index, edit] of edits.slice(from).entries()) {
    if (edit.kind !== 'insert-row') break;
    if (index > 0 && edit.after !== ids.at(-1)) break;
    ids.push(edit.id);
  }
  return ids;
}

function withNewRow(draft: Draft, edit: EditOf<'insert-row'>, chain: string[]): Result<Draft> {
  const problem = newIdProblem(draft.reading, edit.table, edit.id);
  if (problem !== undefined) return failed(problem);
  const room = roomFor(draft, edit.table, chain, edit.after);
  if (!room.ok) return room;
  const { draft: ready, order } = room.value;
  const lines = rowLines(ready.reading, edit, order);
  const next = withChanges(ready, [insertRow(ready.reading, edit, lines)]);
  const made = rowAt(next.reading, edit);
  if (made?.broken === false) return ok(next);
  const key = Object.keys(edit.cells).join(', ');
  return failed(editProblem('edit-key-clash', { key, row: `${edit.table} ${edit.id}` }));
}

function withHeadKey(draft: Draft, edit: EditOf<'set-head'>): Result<Draft> {
  const { key, text } = edit;
  const { parsed } = draft.reading.split;
  const block = parsed.findIndex((one) => one.role === 'head');
  const table = parsed[block]?.header?.name ?? 'job';
  if (parsed[block]?.broken === true) return failed(editProblem('edit-head-locked', { table }));
  if (block !== -1) return withKeys(draft, [{ block, key, text }]);
  if (text === undefined) return ok(draft);
  const column = headColumns(table === 'book' ? 'book' : 'job').find((one) => one.key === key);
  const newline = newlineOf(draft.reading.text);
  const lines = `[job]${newline}${lineOfKey(key, text, column)}${newline}`;
  return ok(withChanges(draft, [insertHead(draft.reading, lines)]));
}

function withRowRenamed(draft: Draft, edit: EditOf<'rename-row'>): Result<Draft> {
  const row = editableRow(draft, edit.row);
  if (!row.ok) return row;
  const { table, id: from, block } = row.value;
  const { id: to } = edit;
  if (from === to) return ok(draft);
  const problem = newIdProblem(draft.reading, table, to);
  if (problem !== undefined) return failed(problem);
  // Where two rows bear the id, references to it mean neither; only the row itself is renamed.
  const alone = from !== '' && rowsCalled(draft.reading, table, from).length === 1;
  const changes: readonly TextChange[] = alone
    ? referenceChanges(draft.reading, { table, from, to })
    : [];
  const referred = withChanges(draft, changes);
  const keyed =
    table === 'column' && !row.value.cells.has('key')
      ? withKeys(referred, [{ block, key: 'key', text: from }])
      : ok(referred);
  return keyed.ok ? withKeys(keyed.value, [{ block, key: 'id', text: to }]) : keyed;
}

function withEdit(draft: Draft, edit: Edit, chain: () => string[]): Result<Draft> {
  switch (edit.kind) {
    case 'set-cell': {
      const one = cellEdit(draft, edit);
      return one.ok ? withKeys(draft, [one.value]) : one;
    }
    case 'set-head':
      return withHeadKey(draft, edit);
    case 'insert-row':
      return withNewRow(draft, edit, chain());
    case 'delete-row': {
      const row = editableRow(draft, edit.row);
      if (!row.ok) return row;
      return ok(withChanges(draft, [deleteRow(draft.reading, row.value.block)]));
    }
    case 'move-row': {
      const row = editableRow(draft, edit.row);
      return row.ok ? moveRow(draft, edit.row, edit.after) : row;
    }
    case 'sort-rows':
      return sortRows(draft, edit.table, edit.ids);
    case 'rename-row':
      return withRowRenamed(draft, edit);
  }
}

/** Cells from an index on that stand in rows of their own, so that they can be set as one change. */
function cellRun(draft: Draft, edits: readonly Edit[], from: number): Result<readonly KeyEdit[]> {
  const run: KeyEdit[] = [];
  const blocks = new Set<number>();
  for (const edit of edits.slice(from)) {
    if (edit.kind !== 'set-cell' || edit.column === 'id' || edit.row.table === 'column') break;
    const one = cellEdit(draft, edit);
    if (!one.ok) return one;
    if (blocks.has(one.value.block)) break;
    blocks.add(one.value.block);
    run.push(one.value);
  }
  return ok(run);
}

function stateProblem(reading: FileReading): Problem | undefined {
  switch (reading.state) {
    case 'readable':
      return undefined;
    case 'newer':
      return editProblem('file-newer');
    case 'conflicted':
      return editProblem('file-conflicted');
    case 'unreadable':
      return editProblem('file-unreadable');
  }
}

/**
 * Applies one gesture to a file: its edits in order, as the smallest changes of the text before, which
 * are sorted and do not overlap. Where one edit cannot be made none is, and the problem says why.
 */
export function applyEdits(
  reading: FileReading,
  edits: readonly Edit[],
): Result<{ readonly reading: FileReading; readonly changes: readonly TextChange[] }> {
  const refused = stateProblem(reading);
  if (refused !== undefined) return failed(refused);
  let draft = startDraft(reading);
  let index = 0;
  while (index < edits.length) {
    const edit = edits[index];
    if (edit === undefined) break;
    const from = index;
    const run = cellRun(draft, edits, from);
    if (!run.ok) return run;
    const several = run.value.length > 1;
    const next = several
      ? withKeys(draft, run.value)
      : withEdit(draft, edit, () => chainFrom(edits, from));
    if (!next.ok) return next;
    draft = next.value;
    index += several ? run.value.length : 1;
  }
  return ok({ reading: draft.reading, changes: draft.changes });
}

import {
  acceptOption,
  answerEdits,
  entryText,
  freshId,
  kitRows,
  optionsOf,
  rowKey,
  type Edit,
  type FixRow,
  type LocatedProblem,
  type Snapshot,
} from '../engine/index.ts';
import type { CellAddress, GridEdit, RowAddress } from '../protocol/messages.ts';
import { engineCell } from './addresses.ts';
import { lockEdits } from './lock-parts.ts';
import { moveEdits, placedAbove } from './move-rows.ts';
import { placeEdits } from './place-row.ts';
import { inSafeOrder } from './safe-order.ts';
import { sheetRows } from './views/sheet-view.ts';

/** A gesture made ready for the file, or the sentence why it cannot be done. */
export type Gesture =
  | { readonly ok: true; readonly edits: readonly Edit[]; readonly focus: RowAddress | undefined }
  | { readonly ok: false; readonly message: string; readonly cell: CellAddress | undefined };

interface Step {
  readonly edits: readonly Edit[];
  readonly focus?: RowAddress;
}

type StepResult =
  | { readonly ok: true; readonly step: Step }
  | { readonly ok: false; readonly message: string; readonly cell?: CellAddress };

interface GestureContext {
  readonly snapshot: Snapshot;
  /** True where several cells are typed at once (a paste): texts that cannot be read are kept as they are. */
  readonly lenient: boolean;
  /** Three letters drawn by the host for a new row's id. */
  readonly letters: () => string;
  readonly taken: Set<string>;
}

function refuse(message: string, cell?: CellAddress): StepResult {
  return cell === undefined ? { ok: false, message } : { ok: false, message, cell };
}

function typeStep(cell: CellAddress, typed: string, context: GestureContext): StepResult {
  if (cell.column === 'id' && cell.table !== 'job') return renameStep(cell, typed.trim());
  const place = engineCell(cell);
  const entry = entryText(place, typed, context.snapshot);
  if (!entry.ok && !context.lenient) return refuse(entry.problem.message, cell);
  // A paste that runs over results leaves them alone.
  if (!entry.ok && entry.problem.code === 'entry-computed')
    return { ok: true, step: { edits: [] } };
  const text = entry.ok ? entry.value : typed.trim();
  const edit: Edit =
    cell.table === 'job'
      ? { kind: 'set-head', key: place.column, text }
      : { kind: 'set-cell', row: cell, column: cell.column, text };
  return { ok: true, step: { edits: [edit] } };
}

/** Ids that cannot be are refused with a sentence when the edit is worked out on the file. */
function renameStep(row: RowAddress, id: string): StepResult {
  if (id === row.id) return { ok: true, step: { edits: [] } };
  const { table, occurrence } = row;
  return {
    ok: true,
    step: {
      edits: [{ kind: 'rename-row', row: { table, id: row.id, occurrence }, id }],
      focus: { table, id, occurrence: 0 },
    },
  };
}

/** What a new row of this kind stands on: the row under the cursor if that fits, else the nearest fitting above. */
function fittingOn(
  kind: string,
  after: RowAddress | undefined,
  snapshot: Snapshot,
): string | undefined {
  const fits = snapshot.book.kinds.get(kind)?.on ?? [];
  if (fits.length === 0) return undefined;
  const rows = sheetRows('part', snapshot);
  const at =
    after === undefined ? rows.length - 1 : rows.findIndex((row) => rowKey(row) === rowKey(after));
  for (let index = at < 0 ? rows.length - 1 : at; index >= 0; index--) {
    const row = rows[index];
    if (row !== undefined && fits.includes(row.kind)) return row.id;
  }
  // Groups are shown apart, so the fitting row may stand below: a skin above its base.
  return rows.find((row) => fits.includes(row.kind))?.id;
}

function insertStep(edit: GridEdit & { kind: 'insert' }, context: GestureContext): StepResult {
  const { snapshot } = context;
  const { table, rowKind, after } = edit;
  const id = newId(rowKind === '' ? table : rowKind, context);
  const on = rowKind === '' ? undefined : fittingOn(rowKind, after, snapshot);
  const cells: Record<string, string> = {};
  if (rowKind !== '') cells['kind'] = rowKind;
  if (on !== undefined) cells['on'] = on;
  return {
    ok: true,
    step: {
      edits: [
        {
          kind: 'insert-row',
          table,
          id,
          cells,
          ...(after?.table === table ? { after: placedAbove(after, snapshot) } : {}),
        },
      ],
      focus: { table, id, occurrence: 0 },
    },
  };
}

function duplicateStep(row: RowAddress, context: GestureContext): StepResult {
  const source = (context.snapshot.shown.tables.get(row.table) ?? []).find(
    (one) => one.id === row.id && one.occurrence === row.occurrence,
  );
  if (source === undefined) return refuse(`There is no ${row.table} called ${row.id} any more.`);
  if (source.broken)
    return refuse(
      `${row.id} cannot be read, so it cannot be duplicated; mend it in the text first.`,
    );
  const kind = source.cells.get('kind')?.text ?? row.table;
  const id = newId(kind, context);
  const cells = Object.fromEntries([...source.cells].map(([key, cell]) => [key, cell.text]));
  return {
    ok: true,
    step: {
      edits: [{ kind: 'insert-row', table: row.table, id, cells, after: row.id }],
      focus: { table: row.table, id, occurrence: 0 },
    },
  };
}

function kitStep(edit: GridEdit & { kind: 'kit' }, context: GestureContext): StepResult {
  const kit = context.snapshot.book.kits.find((one) => one.id === edit.kit);
  if (kit === undefined) return refuse(`There is no kit called ${edit.kit}.`);
  const rows = kitRows(kit, edit.answers, {
    taken: context.taken,
    settings: context.snapshot.settings,
  });
  if (!rows.ok) return refuse(rows.problem.message);
  const first = rows.value[0];
  return {
    ok: true,
    step: {
      edits: rows.value.map((row) => ({ kind: 'insert-row', ...row })),
      ...(first === undefined
        ? {}
        : { focus: { table: first.table, id: first.id, occurrence: 0 } }),
    },
  };
}

function answerStep(edit: GridEdit & { kind: 'answer' }, snapshot: Snapshot): StepResult {
  const edits = answerEdits(snapshot.shown, edit.answers);
  return edits.ok ? { ok: true, step: { edits: edits.value } } : refuse(edits.problem.message);
}

function acceptStep({ id, occurrence }: RowAddress, { shown }: Snapshot): StepResult {
  const option = optionsOf(shown).find((one) => one.id === id && one.occurrence === occurrence);
  if (option === undefined) return refuse('That option is gone already.');
  return { ok: true, step: { edits: acceptOption(option) } };
}

function isHead(table: string): boolean {
  return table === 'job' || table === 'book';
}

function isAt(located: LocatedProblem, cell: CellAddress): boolean {
  const { place } = located;
  const { table, id, occurrence, column } = engineCell(cell);
  if (place === undefined || (place.column ?? '') !== column) return false;
  // The settings of a shop book stand in the grid where those of a job do.
  if (isHead(place.table) ? !isHead(table) : place.table !== table) return false;
  return isHead(table) || (place.row === id && (place.occurrence ?? 0) === occurrence);
}

/** Writes the rows of a way out at the end of their tables, and goes to the first. */
function rowsStep(rows: readonly FixRow[], context: GestureContext): StepResult {
  const edits = rows.map(({ table, word, cells }) => {
    return { kind: 'insert-row', table, id: newId(word, context), cells } as const;
  });
  const [first] = edits;
  const focus =
    first === undefined ? {} : { focus: { table: first.table, id: first.id, occurrence: 0 } };
  return { ok: true, step: { edits, ...focus } };
}

function fixStep(edit: GridEdit & { kind: 'fix' }, context: GestureContext): StepResult {
  const { snapshot } = context;
  const located = snapshot.problems.find(
    (one) => one.problem.code === edit.code && isAt(one, edit.cell),
  );
  const fix = located?.problem.fixes?.[edit.fix];
  if (fix === undefined) return refuse('That problem is gone already.');
  if (fix.rows !== undefined) return rowsStep(fix.rows, context);
  const { table, row: id = '', column = '', occurrence = 0 } = fix.place;
  const row = { table, id, occurrence };
  if (column === 'id') return renameStep(row, fix.text);
  const text = fix.text === '' ? undefined : fix.text;
  const one: Edit = isHead(table)
    ? { kind: 'set-head', key: column, text }
    : { kind: 'set-cell', row, column, text };
  return { ok: true, step: { edits: [one] } };
}

/** What lies where: on a panel, or on a sheet. */
function laidStep(
  edit: GridEdit & { kind: 'place' | 'lock' },
  context: GestureContext,
): StepResult {
  const { snapshot } = context;
  const edits =
    edit.kind === 'place'
      ? placeEdits(edit.row, edit, snapshot)
      : lockEdits(edit, snapshot, (word) => newId(word, context));
  return typeof edits === 'string' ? refuse(edits) : { ok: true, step: { edits } };
}

function step(edit: GridEdit, context: GestureContext): StepResult {
  switch (edit.kind) {
    case 'type':
      return typeStep(edit.cell, edit.text, context);
    case 'insert':
      return insertStep(edit, context);
    case 'duplicate':
      return duplicateStep(edit.row, context);
    case 'delete':
      return { ok: true, step: { edits: [{ kind: 'delete-row', row: edit.row }] } };
    case 'move':
      return { ok: true, step: { edits: [], focus: edit.row } };
    case 'rename':
      return renameStep(edit.row, edit.id);
    case 'kit':
      return kitStep(edit, context);
    case 'answer':
      return answerStep(edit, context.snapshot);
    case 'accept-option':
      return acceptStep(edit.row, context.snapshot);
    case 'fix':
      return fixStep(edit, context);
    default:
      return laidStep(edit, context);
  }
}

/** Every id of the job: no two rows may share one. */
export function takenIds(snapshot: Snapshot): Set<string> {
  return new Set([...snapshot.shown.tables.values()].flatMap((rows) => rows.map((row) => row.id)));
}

/** An id for a new row, drawn apart from those of the job and of the book's rows that it could lie over. */
function newId(word: string, { snapshot, taken, letters }: GestureContext): string {
  const { materials, constants, packs, kinds } = snapshot.book;
  const barred = new Set([
    ...taken,
    ...materials.keys(),
    ...constants.keys(),
    ...kinds.keys(),
    ...packs.map((pack) => pack.id),
  ]);
  const id = freshId(word, barred, letters);
  taken.add(id);
  return id;
}

/** Turns what the grid sent into edits of the file; nothing is done yet. */
export function gestureEdits(
  gridEdits: readonly GridEdit[],
  snapshot: Snapshot,
  letters: () => string,
): Gesture {
  const lenient = gridEdits.filter((edit) => edit.kind === 'type').length > 1;
  const context: GestureContext = { snapshot, lenient, letters, taken: takenIds(snapshot) };
  const edits: Edit[] = [];
  let focus: RowAddress | undefined;
  const moves = gridEdits.filter((edit) => edit.kind === 'move');
  for (const gridEdit of gridEdits) {
    const result = step(gridEdit, context);
    if (!result.ok) return { ok: false, message: result.message, cell: result.cell };
    edits.push(...result.step.edits);
    focus = result.step.focus ?? focus;
  }
  edits.push(...moveEdits(moves, snapshot));
  return { ok: true, edits: inSafeOrder(edits), focus };
}

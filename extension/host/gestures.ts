import {
  entryText,
  freshId,
  kindGroups,
  kitRows,
  rowKey,
  type AnsweredRow,
  type Edit,
  type LocatedProblem,
  type Snapshot,
} from '../engine/index.ts';
import type { CellAddress, GridEdit, RowAddress } from '../protocol/messages.ts';
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
  const place = cell.table === 'job' ? { ...cell, column: cell.id, id: 'job' } : cell;
  const entry = entryText(place, typed, context.snapshot);
  if (!entry.ok && !context.lenient) return refuse(entry.problem.message, cell);
  const text = entry.ok ? entry.value : typed.trim();
  if (cell.table === 'job')
    return { ok: true, step: { edits: [{ kind: 'set-head', key: cell.id, text }] } };
  if (cell.column === 'id') return renameStep(cell, typed.trim(), context);
  return {
    ok: true,
    step: { edits: [{ kind: 'set-cell', row: cell, column: cell.column, text }] },
  };
}

function renameStep(row: RowAddress, id: string, context: GestureContext): StepResult {
  if (id === row.id) return { ok: true, step: { edits: [] } };
  if (context.taken.has(id))
    return refuse(`There is a row called ${id} already; choose another id.`);
  return {
    ok: true,
    step: { edits: [{ kind: 'rename-row', row, id }], focus: { ...row, id, occurrence: 0 } },
  };
}

function answered(row: RowAddress, snapshot: Snapshot): AnsweredRow | undefined {
  return snapshot.workbook
    .rows(row.table)
    .find((one) => one.id === row.id && one.occurrence === row.occurrence);
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
  const { snapshot, taken } = context;
  const { table, rowKind, after } = edit;
  const id = freshId(rowKind === '' ? table : rowKind, taken, context.letters);
  taken.add(id);
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
          ...(after?.table === table ? { after: after.id } : {}),
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
  const kind = source.cells.get('kind')?.text ?? row.table;
  const id = freshId(kind, context.taken, context.letters);
  context.taken.add(id);
  const cells = Object.fromEntries([...source.cells].map(([key, cell]) => [key, cell.text]));
  return {
    ok: true,
    step: {
      edits: [{ kind: 'insert-row', table: row.table, id, cells, after: row.id }],
      focus: { table: row.table, id, occurrence: 0 },
    },
  };
}

/** One place up or down among the rows of its own group; `after` is the row it then follows. */
function moveStep(row: RowAddress, by: -1 | 1, snapshot: Snapshot): StepResult {
  const own = answered(row, snapshot);
  const group = (one: AnsweredRow): string =>
    snapshot.book.kinds.get(one.kind)?.group ?? kindGroups[0];
  const mates = sheetRows(row.table, snapshot).filter(
    (one) => own !== undefined && (row.table !== 'part' || group(one) === group(own)),
  );
  const at = mates.findIndex((one) => rowKey(one) === rowKey(row));
  const target = mates[at + by];
  if (at < 0 || target === undefined) return { ok: true, step: { edits: [], focus: row } };
  const after = by > 0 ? target.id : rowBefore(target, snapshot);
  return { ok: true, step: { edits: [{ kind: 'move-row', row, after }], focus: row } };
}

function rowBefore(target: AnsweredRow, snapshot: Snapshot): string | null {
  const rows = snapshot.shown.tables.get(target.table) ?? [];
  const at = rows.findIndex((row) => row.id === target.id && row.occurrence === target.occurrence);
  return rows[at - 1]?.id ?? null;
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

function fixStep(edit: GridEdit & { kind: 'fix' }, snapshot: Snapshot): StepResult {
  const { cell } = edit;
  const located = snapshot.problems.find((one: LocatedProblem) => {
    const { place, problem } = one;
    return (
      problem.code === edit.code &&
      place?.table === cell.table &&
      place.row === cell.id &&
      (place.column ?? '') === cell.column
    );
  });
  const fix = located?.problem.fixes?.[edit.fix];
  if (fix === undefined) return refuse('That problem is gone already.');
  const { table, row = '', column = '', occurrence = 0 } = fix.place;
  const target = { table, id: row, occurrence };
  const edits: Edit[] =
    column === 'id'
      ? [{ kind: 'rename-row', row: target, id: fix.text }]
      : table === 'job'
        ? [{ kind: 'set-head', key: column, text: fix.text }]
        : [{ kind: 'set-cell', row: target, column, text: fix.text }];
  return { ok: true, step: { edits } };
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
      return moveStep(edit.row, edit.by, context.snapshot);
    case 'rename':
      return renameStep(edit.row, edit.id, context);
    case 'kit':
      return kitStep(edit, context);
    case 'fix':
      return fixStep(edit, context.snapshot);
  }
}

/** Every id of the job: no two rows may share one. */
export function takenIds(snapshot: Snapshot): Set<string> {
  return new Set([...snapshot.shown.tables.values()].flatMap((rows) => rows.map((row) => row.id)));
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
  for (const gridEdit of gridEdits) {
    const result = step(gridEdit, context);
    if (!result.ok) return { ok: false, message: result.message, cell: result.cell };
    edits.push(...result.step.edits);
    focus = result.step.focus ?? focus;
  }
  return { ok: true, edits, focus };
}

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import type { Edit, FileReading, SourceRow } from '../../../extension/engine/job/source.ts';
import { changedText, invertChanges } from '../../../extension/engine/job/text-changes.ts';
import { anyFile, sample } from './arbitrary-files.ts';

const texts = fc.oneof(anyFile, fc.constant(sample), fc.constant(sample.replaceAll('\n', '\r\n')));

const columns = [
  'name',
  'size',
  'depth',
  'qty',
  'note',
  'on',
  'draw.glue.use',
  'order_of',
  'value',
];

const cellText = fc.oneof(
  fc.constantFrom(
    '8 in',
    '2',
    '2.50',
    'true',
    '2026-11-25',
    '["a"]',
    '',
    'a "b"',
    "'",
    '\\',
    '\n',
    '\t',
  ),
  fc.string({ unit: 'grapheme', maxLength: 12 }),
);

function rowsOf(reading: FileReading): readonly SourceRow[] {
  return [...reading.tables.values()].flat();
}

/** Edits of a file as the grid makes them; numbers pick rows, so that any file will do. */
const gestures = fc.array(
  fc.record({
    kind: fc.constantFrom(
      'set-cell',
      'set-cell',
      'clear-cell',
      'set-head',
      'insert-row',
      'delete-row',
      'move-row',
      'sort-rows',
      'rename-row',
    ),
    row: fc.nat(),
    other: fc.nat(),
    column: fc.constantFrom(...columns),
    text: cellText,
    id: fc.stringMatching(/^[a-z]{3}_new[a-z]?$/),
  }),
  { minLength: 1, maxLength: 5 },
);

type Gesture = typeof gestures extends fc.Arbitrary<(infer One)[]> ? One : never;

function rotated(ids: readonly string[], by: number): readonly string[] {
  const at = ids.length === 0 ? 0 : by % ids.length;
  return [...ids.slice(at).reverse(), ...ids.slice(0, at)];
}

function editOf(gesture: Gesture, reading: FileReading): Edit | undefined {
  const { column, text, id, kind, other } = gesture;
  const rows = rowsOf(reading);
  const row = rows[gesture.row % Math.max(1, rows.length)];
  if (kind === 'set-head') return { kind, key: 'title', text };
  if (row === undefined) {
    return { kind: 'insert-row', table: 'part', id, cells: { [column]: text }, after: null };
  }
  const { table } = row;
  const peers = (reading.tables.get(table) ?? []).map((one) => one.id);
  const after = peers[other % (peers.length + 1)] ?? null;
  const made: Record<typeof kind, Edit> = {
    'set-cell': { kind: 'set-cell', row, column, text },
    'clear-cell': { kind: 'set-cell', row, column: firstKey(row) ?? column, text: undefined },
    'insert-row': { kind: 'insert-row', table, id, cells: { [column]: text, kind: 'ring' }, after },
    'delete-row': { kind: 'delete-row', row },
    'move-row': { kind: 'move-row', row, after },
    'sort-rows': { kind: 'sort-rows', table, ids: rotated(peers, other) },
    'rename-row': { kind: 'rename-row', row, id },
  };
  return made[kind];
}

function firstKey(row: SourceRow): string | undefined {
  return [...row.cells.keys()][0];
}

/** A text with a gesture that can be made on it, applied. */
function applied(text: string, all: readonly Gesture[]) {
  let edits: Edit[] = [];
  const before = readFile(text);
  let result = applyEdits(before, edits);
  for (const gesture of all) {
    if (!result.ok) break;
    const edit = editOf(gesture, result.value.reading);
    if (edit === undefined) continue;
    const next = applyEdits(before, [...edits, edit]);
    if (!next.ok) continue;
    edits = [...edits, edit];
    result = next;
  }
  if (!result.ok) throw new Error(result.problem.message);
  return { before, edits, ...result.value };
}

function cellsOf(row: SourceRow): Record<string, string> {
  return Object.fromEntries([...row.cells].map(([key, cell]) => [key, cell.text]));
}

function idsOf(reading: FileReading, table: string): readonly string[] {
  return reading.tables.get(table)?.map((row) => row.id) ?? [];
}

function hasTwins(reading: FileReading, table: string): boolean {
  return new Set(idsOf(reading, table)).size < idsOf(reading, table).length;
}

/** The ids with one of them, or a new one, right behind another; first behind none. */
function moved(ids: readonly string[], id: string, after: string | null): readonly string[] {
  if (after === id) return ids;
  const rest = ids.filter((one) => one !== id);
  return rest.toSpliced(after === null ? 0 : rest.indexOf(after) + 1, 0, id);
}

describe('applyEdits', () => {
  test('[J19] no edit changes no letter', () => {
    fc.assert(
      fc.property(texts, (text) => {
        const result = applyEdits(readFile(text), []);
        expect(result.ok && result.value.changes).toEqual([]);
        expect(result.ok && result.value.reading.text).toBe(text);
      }),
    );
  });

  test('[J19] a gesture is a list of changes that can be undone to the last letter', () => {
    fc.assert(
      fc.property(texts, gestures, (text, all) => {
        const { reading, changes } = applied(text, all);
        const after = changedText(text, changes);
        expect(reading.text).toBe(after);
        expect(changedText(after, invertChanges(text, changes))).toBe(text);
        let end = 0;
        for (const change of changes) {
          expect(change.start).toBeGreaterThanOrEqual(end);
          expect(change.text).not.toBe(text.slice(change.start, change.end));
          ({ end } = change);
        }
      }),
      { numRuns: 200 },
    );
  });

  test('[J23] what an edit leaves reads as the whole text does', () => {
    fc.assert(
      fc.property(texts, gestures, (text, all) => {
        const { reading } = applied(text, all);
        expect(reading).toEqual(readFile(reading.text));
      }),
    );
  });

  test('[J19] no edit breaks a row or loses a remark that is set off by blank lines', () => {
    fc.assert(
      fc.property(texts, gestures, (text, all) => {
        const { before, reading } = applied(text, all);
        const broken = (of: FileReading): number => rowsOf(of).filter((row) => row.broken).length;
        expect(broken(reading)).toBeLessThanOrEqual(broken(before));
        const setOff = (of: string): number => of.split('# set off').length;
        expect(setOff(reading.text)).toBe(setOff(text));
      }),
      { numRuns: 200 },
    );
  });

  test('[J11] a cell that is set reads as it was set, and no other row changes a letter', () => {
    fc.assert(
      fc.property(texts, gestures, (text, [gesture]) => {
        const before = readFile(text);
        const row = rowsOf(before)[(gesture?.row ?? 0) % Math.max(1, rowsOf(before).length)];
        if (row === undefined || gesture === undefined || row.broken) return;
        const { column, text: typed } = gesture;
        const result = applyEdits(before, [{ kind: 'set-cell', row, column, text: typed }]);
        if (!result.ok) return;
        const { reading } = result.value;
        const rowAfter = rowsOf(reading).find((one) => one.block === row.block);
        expect(rowAfter && cellsOf(rowAfter)).toEqual({ ...cellsOf(row), [column]: typed });
        const others = (of: FileReading): readonly string[] =>
          of.blocks.map((block) => block.text).filter((_, index) => index !== row.block);
        expect(others(reading)).toEqual(others(before));
      }),
      { numRuns: 200 },
    );
  });

  test('[J9] a row that is moved or put in stands where it was put, the others in their order', () => {
    fc.assert(
      fc.property(texts, gestures, (text, [gesture]) => {
        if (gesture === undefined) return;
        const before = readFile(text);
        const kind = gesture.row % 2 === 0 ? 'move-row' : 'insert-row';
        const edit = editOf({ ...gesture, kind }, before);
        if (edit?.kind !== 'move-row' && edit?.kind !== 'insert-row') return;
        const { table, id } = edit.kind === 'move-row' ? edit.row : edit;
        const result = applyEdits(before, [edit]);
        if (!result.ok || hasTwins(before, table)) return;
        const after = edit.after ?? null;
        expect(idsOf(result.value.reading, table)).toEqual(moved(idsOf(before, table), id, after));
      }),
      { numRuns: 200 },
    );
  });

  test('[J10] sorted rows stand as they were sorted, and cells stay with their rows', () => {
    fc.assert(
      fc.property(texts, gestures, (text, [gesture]) => {
        const before = readFile(text);
        const edit = gesture && editOf({ ...gesture, kind: 'sort-rows' }, before);
        if (edit?.kind !== 'sort-rows' || new Set(edit.ids).size !== edit.ids.length) return;
        const result = applyEdits(before, [edit]);
        if (!result.ok) throw new Error(result.problem.message);
        const rows = result.value.reading.tables.get(edit.table) ?? [];
        expect(rows.map((row) => row.id)).toEqual(edit.ids);
        for (const row of rows) {
          const old = before.tables.get(edit.table)?.find((one) => one.id === row.id);
          expect(old && cellsOf(old)).toEqual(cellsOf(row));
        }
      }),
    );
  });
});

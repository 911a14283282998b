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
  const rows = rowsOf(reading);
  const row = rows[gesture.row % Math.max(1, rows.length)];
  const { column, text, id, kind } = gesture;
  if (kind === 'set-head') return { kind, key: 'title', text };
  const table = row?.table ?? 'part';
  const peers = reading.tables.get(table) ?? [];
  const after = peers[gesture.other % (peers.length + 1)]?.id ?? null;
  if (kind === 'insert-row') {
    return { kind, table, id, cells: { [column]: text, kind: 'ring' }, after };
  }
  if (row === undefined) return undefined;
  switch (kind) {
    case 'set-cell':
      return { kind, row, column, text };
    case 'clear-cell':
      return { kind: 'set-cell', row, column: [...row.cells.keys()][0] ?? column, text: undefined };
    case 'sort-rows':
      return {
        kind,
        table,
        ids: rotated(
          peers.map((one) => one.id),
          gesture.other,
        ),
      };
    case 'move-row':
      return { kind, row, after };
    case 'rename-row':
      return { kind, row, id };
    case 'delete-row':
      return { kind, row };
  }
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
      { numRuns: 300 },
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
      { numRuns: 300 },
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
      { numRuns: 300 },
    );
  });

  test('[J9] a row that is moved or put in stands where it was put, the others in their order', () => {
    fc.assert(
      fc.property(texts, gestures, (text, [gesture]) => {
        const before = readFile(text);
        if (gesture === undefined) return;
        const kind = gesture.row % 2 === 0 ? 'move-row' : 'insert-row';
        const edit = editOf({ ...gesture, kind }, before);
        if (edit?.kind !== 'move-row' && edit?.kind !== 'insert-row') return;
        const table = edit.kind === 'move-row' ? edit.row.table : edit.table;
        const id = edit.kind === 'move-row' ? edit.row.id : edit.id;
        const ids = (of: FileReading): string[] => of.tables.get(table)?.map((row) => row.id) ?? [];
        if (new Set(ids(before)).size !== ids(before).length) return;
        const result = applyEdits(before, [edit]);
        if (!result.ok) return;
        const rest = ids(before).filter((one) => one !== id);
        const moved = edit.after === id ? ids(before).indexOf(id) : undefined;
        const place = edit.after === null ? 0 : rest.indexOf(edit.after ?? '') + 1;
        expect(ids(result.value.reading)).toEqual(rest.toSpliced(moved ?? place, 0, id));
      }),
      { numRuns: 300 },
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

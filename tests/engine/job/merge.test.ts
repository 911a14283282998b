import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { writeEmptyJob } from '../../../extension/engine/job/empty-job.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import type { Edit, FileReading } from '../../../extension/engine/job/source.ts';

const folder = mkdtempSync(join(tmpdir(), 'panel-merge-'));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

function edited(text: string, edits: readonly Edit[]): string {
  const result = applyEdits(readFile(text), edits);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value.reading.text;
}

const rowCount = 14;

function idAt(index: number): string {
  return `${String.fromCharCode(97 + index)}ow_ring`;
}

/** A job of fourteen parts whose rows are displayed in another order than their ids have. */
function baseJob(): string {
  const start = writeEmptyJob({ title: 'Pair', units: 'in', currency: 'USD', date: '2026-11-25' });
  const edits = Array.from({ length: rowCount }, (_, index): Edit => {
    const size = `${String(2 + (index % 5))} in`;
    const cells = { kind: 'ring', name: `Ring ${String(index)}`, size, tilt: '15 deg', qty: '2' };
    return { kind: 'insert-row', table: 'part', id: idAt((index * 5) % rowCount), cells };
  });
  return edited(start, edits);
}

const base = baseJob();

/** What one person does to the row at a place of the file, or beside it. */
const rowEdit = fc.record({
  what: fc.constantFrom('set', 'set', 'add', 'clear', 'delete', 'move', 'insert'),
  text: fc.constantFrom('9 in', '=size / 2', 'shop', '7 deg'),
  target: fc.nat(rowCount - 1),
});

function editOf(
  index: number,
  edit: typeof rowEdit extends fc.Arbitrary<infer One> ? One : never,
): Edit {
  const row = { table: 'part', id: idAt(index) };
  switch (edit.what) {
    case 'set':
      return { kind: 'set-cell', row, column: 'size', text: edit.text };
    case 'add':
      return { kind: 'set-cell', row, column: 'depth', text: edit.text };
    case 'clear':
      return { kind: 'set-cell', row, column: 'qty', text: undefined };
    case 'delete':
      return { kind: 'delete-row', row };
    case 'move':
      return { kind: 'move-row', row, after: edit.target === index ? null : idAt(edit.target) };
    case 'insert': {
      const cells = { kind: 'ring', size: edit.text };
      return { kind: 'insert-row', table: 'part', id: `${idAt(index)}_new`, cells };
    }
  }
}

type Cells = Readonly<Record<string, string>>;

function cellsById(reading: FileReading): Record<string, Cells> {
  const rows = reading.tables.get('part') ?? [];
  const texts = (row: (typeof rows)[number]): Cells => ({
    ...Object.fromEntries([...row.cells].map(([key, cell]) => [key, cell.text])),
    order: String(row.order),
  });
  return Object.fromEntries(rows.map((row) => [row.id, texts(row)]));
}

/** Each row as the person left it who changed it; the other left it alone. */
function expected(ours: string, theirs: string): Record<string, Cells> {
  const [before, left, right] = [base, ours, theirs].map((text) => cellsById(readFile(text)));
  const all = new Set([before, left, right].flatMap((rows) => Object.keys(rows ?? {})));
  const merged: Record<string, Cells> = {};
  for (const id of all) {
    const changed = JSON.stringify(left?.[id]) !== JSON.stringify(before?.[id]);
    const row = changed ? left?.[id] : right?.[id];
    if (row !== undefined) merged[id] = row;
  }
  return merged;
}

function mergedByGit(ours: string, theirs: string): { text: string; conflicts: number | null } {
  const paths = [ours, base, theirs].map((text, index) => {
    const path = join(folder, `${String(index)}.paneljob`);
    writeFileSync(path, text);
    return path;
  });
  const run = spawnSync('git', ['merge-file', '-p', ...paths], { encoding: 'utf8' });
  return { text: run.stdout, conflicts: run.status };
}

describe('git merge-file', () => {
  test('[J6] two people who leave a row between them merge, and every text stands in its row', () => {
    const places = fc
      .record({ ours: fc.nat(rowCount - 1), theirs: fc.nat(rowCount - 1) })
      .filter(({ ours, theirs }) => Math.abs(ours - theirs) >= 2);
    fc.assert(
      fc.property(places, rowEdit, rowEdit, (at, our, their) => {
        const ours = edited(base, [editOf(at.ours, our)]);
        const theirs = edited(base, [editOf(at.theirs, their)]);
        const { text, conflicts } = mergedByGit(ours, theirs);
        expect(conflicts).toBe(0);
        const reading = readFile(text);
        expect(reading.problems).toEqual([]);
        expect(cellsById(reading)).toEqual(expected(ours, theirs));
      }),
      { numRuns: 40 },
    );
  });
});

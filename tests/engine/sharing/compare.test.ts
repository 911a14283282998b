import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import type { Edit } from '../../../extension/engine/job/source.ts';
import {
  compareJobs,
  type CellChange,
  type JobComparison,
} from '../../../extension/engine/sharing/compare.ts';
import { anyFile, sample } from '../job/arbitrary-files.ts';
import { edited, set } from '../job/editing.ts';

function compared(before: string, after: string): JobComparison {
  const result = compareJobs(before, after);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}

function refused(before: string, after: string): string {
  const result = compareJobs(before, after);
  return result.ok ? 'compared' : result.problem.message;
}

/** Rows in short: `+part skin`, `-part skin`, `~part skin (was hide) moved: size, tilt`. */
function told({ rows }: JobComparison): readonly string[] {
  return rows.map(({ kind, table, id, formerId, moved, cells }) => {
    const sign = { added: '+', removed: '-', kept: '~' }[kind];
    const was = formerId === undefined ? '' : ` (was ${formerId})`;
    const listed = kind === 'kept' ? cells.map(({ column }) => column).join(', ') : '';
    const marks = [moved ? ' moved' : '', listed === '' ? '' : `: ${listed}`].join('');
    return `${sign}${table} ${id}${was}${marks}`;
  });
}

const skin = { table: 'part', id: 'skin' };

describe('compareJobs', () => {
  test('a cell that was typed over is told with both texts', () => {
    const after = edited(sample, set('size', '8 1/4 in'));
    const { rows, settings, same } = compared(sample, after);
    expect(same).toBe(false);
    expect(settings).toEqual([]);
    expect(rows).toHaveLength(1);
    expect(rows[0]).toMatchObject({
      table: 'part',
      id: 'mid_ring',
      kind: 'kept',
      moved: false,
      cells: [{ kind: 'changed', column: 'size', before: '8 in', after: '8 1/4 in' }],
    });
  });

  test('cells that are new and cells that are gone say so', () => {
    const after = edited(sample, set('note', 'soft edge'), set('tilt', undefined));
    expect(compared(sample, after).rows[0]?.cells).toEqual([
      { kind: 'added', column: 'note', before: undefined, after: 'soft edge' },
      { kind: 'removed', column: 'tilt', before: '15 deg', after: undefined },
    ]);
  });

  test('a setting of the job counts, a remark and a blank line do not', () => {
    const warmer = edited(sample, { kind: 'set-head', key: 'temperature', text: '60 degF' });
    expect(compared(sample, warmer).settings).toEqual([
      { kind: 'changed', column: 'temperature', before: '70 degF', after: '60 degF' },
    ]);
    const remarked = sample.replace('# as the client sits', '# as the driver sits\n\n');
    expect(compared(sample, remarked).same).toBe(true);
  });

  test('a new row and one that is gone come with all their cells; the one that is gone keeps its place', () => {
    const after = edited(
      sample,
      { kind: 'delete-row', row: skin },
      {
        kind: 'insert-row',
        table: 'part',
        id: 'foam',
        cells: { name: 'Foam', on: 'base' },
        after: 'base',
      },
    );
    const found = compared(sample, after);
    expect(told(found)).toEqual(['+part foam', '-part skin']);
    expect(found.rows[0]?.cells.map(({ kind, column }) => `${kind} ${column}`)).toEqual([
      'added name',
      'added on',
    ]);
    expect(found.rows[1]?.cells.map(({ kind }) => kind)).toEqual(Array(5).fill('removed'));
  });

  test('a renamed row is one row, and references that follow it did not change', () => {
    const after = edited(sample, {
      kind: 'rename-row',
      row: { table: 'part', id: 'base' },
      id: 'backing',
    });
    expect(told(compared(sample, after))).toEqual(['~part backing (was base)']);
  });

  test('a renamed row that was edited too keeps what it said before', () => {
    const after = edited(
      sample,
      { kind: 'rename-row', row: { table: 'part', id: 'base' }, id: 'backing' },
      set('material', 'hardboard_3', { table: 'part', id: 'backing' }),
    );
    const [row] = compared(sample, after).rows;
    expect(row).toMatchObject({ id: 'backing', formerId: 'base' });
    expect(row?.cells).toEqual([
      { kind: 'changed', column: 'material', before: 'hardboard_6', after: 'hardboard_3' },
    ]);
  });

  test('the row that was put elsewhere has moved; those it passed stayed', () => {
    const after = edited(sample, { kind: 'move-row', row: skin, after: null });
    expect(told(compared(sample, after))).toEqual(['~part skin moved']);
    const numbered = sample.replace('order = 3000', 'order = 2500');
    expect(compared(sample, numbered).same).toBe(true);
  });

  test('two rows with one id are each held against the row they are most like', () => {
    const second =
      '\n[[part]]\nid = "skin"\n\nname = "Other skin"\nkind = "skin"\n\norder = 5000\n';
    const twice = sample + second;
    const found = compared(twice, twice.replace('"Other skin"', '"Third skin"'));
    expect(found.rows).toHaveLength(1);
    expect(found.rows[0]).toMatchObject({ id: 'skin', occurrence: 1 });
  });

  test('a version with conflict markers or without sense is refused, and named', () => {
    const torn = sample.replace('size = "8 in"', '<<<<<<< a\nsize = "8 in"\n=======\n>>>>>>> b');
    expect(refused(torn, sample)).toMatch(/^The earlier version holds git’s conflict markers/);
    expect(refused(sample, torn)).toMatch(/^The later version holds git’s conflict markers/);
  });

  test('nothing differs between a file and itself', () => {
    fc.assert(
      fc.property(anyFile, (text) => {
        const result = compareJobs(text, text);
        if (result.ok) expect(result.value.same).toBe(true);
      }),
    );
  });
});

const rows = ['base', 'mid_ring', 'skin'] as const;

/** What a person does to the sample; edits that can no longer be made are left out. */
const step = fc.record({
  what: fc.constantFrom('set', 'set', 'clear', 'head', 'insert', 'delete', 'move', 'rename'),
  row: fc.constantFrom(...rows),
  other: fc.constantFrom(...rows, 'fresh'),
  column: fc.constantFrom('name', 'size', 'tilt', 'note', 'draw.glue.use'),
  text: fc.constantFrom('9 in', '=base.area', '30 deg', 'wide', '=size / 2'),
});

function editOf(one: typeof step extends fc.Arbitrary<infer One> ? One : never): Edit {
  const row = { table: 'part', id: one.row };
  switch (one.what) {
    case 'set':
      return { kind: 'set-cell', row, column: one.column, text: one.text };
    case 'clear':
      return { kind: 'set-cell', row, column: one.column, text: undefined };
    case 'head':
      return { kind: 'set-head', key: 'client', text: one.text };
    case 'insert':
      return {
        kind: 'insert-row',
        table: 'part',
        id: `${one.row}_new`,
        cells: { note: one.text, kind: 'ring' },
        after: one.other,
      };
    case 'delete':
      return { kind: 'delete-row', row };
    case 'move':
      return { kind: 'move-row', row, after: one.other === one.row ? null : one.other };
    case 'rename':
      return { kind: 'rename-row', row, id: `${one.row}_too` };
  }
}

const versions = fc.array(step, { maxLength: 6 }).map((steps) =>
  steps.reduce((text, one) => {
    const result = applyEdits(readFile(text), [editOf(one)]);
    return result.ok ? result.value.reading.text : text;
  }, sample),
);

/** Does to a file all that a comparison says was done to it, then puts its rows in order. */
function carriedOut(before: string, after: string, found: JobComparison): string {
  const kept = found.rows.filter(({ kind }) => kind === 'kept');
  const texts = (cells: readonly CellChange[]): Record<string, string> =>
    Object.fromEntries(cells.map(({ column, after: text = '' }) => [column, text]));
  const edits: Edit[] = [
    ...kept.flatMap(({ table, id, formerId }): Edit[] =>
      formerId === undefined ? [] : [{ kind: 'rename-row', row: { table, id: formerId }, id }],
    ),
    ...found.rows
      .filter(({ kind }) => kind === 'removed')
      .map(({ table, id }): Edit => ({ kind: 'delete-row', row: { table, id } })),
    ...found.rows
      .filter(({ kind }) => kind === 'added')
      .map(({ table, id, cells }): Edit => ({
        kind: 'insert-row',
        table,
        id,
        cells: texts(cells),
      })),
    ...kept.flatMap(({ table, id, cells }) =>
      cells.map(({ column, after: text }): Edit => ({
        kind: 'set-cell',
        row: { table, id },
        column,
        text,
      })),
    ),
    ...found.settings.map(({ column, after: text }): Edit => ({
      kind: 'set-head',
      key: column,
      text,
    })),
    ...[...readFile(after).tables].map(([table, list]): Edit => ({
      kind: 'sort-rows',
      table,
      ids: list.map(({ id }) => id),
    })),
  ];
  return edited(before, ...edits);
}

/** A comparison the other way round, without the order of its parts. */
function mirrored({ settings, rows: changes }: JobComparison): unknown {
  const turned = (cells: readonly CellChange[]): unknown =>
    cells
      .map(({ kind, column, before, after }) => ({
        kind: { added: 'removed', changed: 'changed', removed: 'added' }[kind],
        column,
        before: after,
        after: before,
      }))
      .sort((a, b) => (a.column < b.column ? -1 : 1));
  return {
    settings: turned(settings),
    rows: changes
      .map((row) => ({
        id: row.formerId ?? row.id,
        formerId: row.formerId === undefined ? undefined : row.id,
        kind: { added: 'removed', removed: 'added', kept: 'kept' }[row.kind],
        moved: row.moved,
        cells: turned(row.cells),
      }))
      .sort((a, b) => (a.id < b.id ? -1 : 1)),
  };
}

function unordered({ settings, rows: changes }: JobComparison): unknown {
  const sorted = (cells: readonly CellChange[]): unknown =>
    [...cells].sort((a, b) => (a.column < b.column ? -1 : 1));
  return {
    settings: sorted(settings),
    rows: changes
      .map(({ id, formerId, kind, moved, cells }) => ({
        id,
        formerId,
        kind,
        moved,
        cells: sorted(cells),
      }))
      .sort((a, b) => (a.id < b.id ? -1 : 1)),
  };
}

describe('compareJobs, of any two versions', () => {
  test('doing what it says to the one gives the other', () => {
    fc.assert(
      fc.property(versions, versions, (before, after) => {
        const found = compared(before, after);
        expect(compared(carriedOut(before, after, found), after).same).toBe(true);
      }),
      { numRuns: 100 },
    );
  });

  test('the other way round it says the opposite', () => {
    fc.assert(
      fc.property(versions, (after) => {
        expect(unordered(compared(after, sample))).toEqual(mirrored(compared(sample, after)));
      }),
      { numRuns: 100 },
    );
  });
});

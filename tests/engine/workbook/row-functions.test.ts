import { describe, expect, test } from 'vitest';
import type { FunctionEntry, RowView } from '../../../extension/engine/formula/catalogue.ts';
import type { CellValue } from '../../../extension/engine/formula/value.ts';
import { ok } from '../../../extension/engine/result.ts';
import { length } from '../../../extension/engine/units/dimension.ts';
import { part } from '../../helpers/job-rows.ts';
import { catalogueWith, sheet } from '../../helpers/workbook-of.ts';

function told(row: RowView): string {
  const value = row.value('depth');
  const base = value?.kind === 'quantity' ? String(Math.round(value.base)) : '-';
  return `${row.id} ${base} (${row.standing.map(({ id }) => id).join(' ')})`;
}

const describeRow: FunctionEntry = {
  name: 'TEST.TELL',
  group: 'shapes',
  help: 'Tells what it sees.',
  parameters: [{ name: 'row', help: 'The row.', type: { kind: 'row' } }],
  result: { kind: 'text' },
  example: { formula: '=TEST.TELL(base)', shows: 'base' },
  source: 'test',
  rows: {
    reads: ['depth'],
    run: (row) => ok({ kind: 'text', text: [row, ...row.standing].map(told).join(', ') }),
  },
};

const deepest: FunctionEntry = {
  ...describeRow,
  name: 'TEST.DEEPEST',
  result: { kind: 'quantity', dimension: length },
  rows: {
    reads: ['depth'],
    run: (row) => {
      const depths = row.standing.map((one) => one.value('depth'));
      const bases = depths.map((value) => (value?.kind === 'quantity' ? value.base : 0));
      return ok({ kind: 'quantity', base: Math.max(0, ...bases), dimension: length });
    },
  },
};

/** Looks at extras alone. */
const deepestExtra: FunctionEntry = {
  ...deepest,
  name: 'TEST.DEEPESTEXTRA',
  rows: {
    reads: ['depth'],
    standing: (kind) => (kind === 'extra' ? ['depth'] : []),
    run: (row, args, context) => deepest.rows?.run(row, args, context) ?? ok(noDepth),
  },
};

const noDepth: CellValue = { kind: 'quantity', base: -1, dimension: length };

const functions = catalogueWith(describeRow, deepest, deepestExtra);
const stack =
  part('base', { kind: 'extra' }) +
  part('low', { kind: 'extra', on: 'base', depth: '10 mm' }) +
  part('top', { kind: 'extra', on: 'low', depth: '20 mm' });

describe('functions of rows', () => {
  test('see the row, all that stands on it and what stands on that', () => {
    const job = sheet(`${stack}${part('x', { kind: 'extra', note: '=TEST.TELL(base)' })}`, {
      functions,
    });
    expect(job.says('x.note')).toBe('base - (low top), low 10 (top), top 20 ()');
  });

  test('are worked out again when a cell they read changes, or a row comes', () => {
    const asking = part('x', { kind: 'extra', size: '=TEST.DEEPEST(base)' });
    const job = sheet(`${stack}${asking}`, { functions });
    expect(job.base('x.size')).toBe(20);
    job.change("depth = '20 mm'", "depth = '30 mm'");
    expect(job.base('x.size')).toBe(30);
    job.setText(job.text() + part('more', { kind: 'extra', on: 'top', depth: '=top.depth * 2' }));
    expect(job.base('x.size')).toBe(60);
    job.change("on = 'low'", "on = 'x'");
    expect(job.base('x.size')).toBe(10);
  });

  test('do not see the row that asks, nor what stands on it', () => {
    const job = sheet(
      stack +
        part('skin', { kind: 'extra', on: 'base', depth: '=TEST.DEEPEST(on)' }) +
        part('cover', { kind: 'extra', on: 'skin', depth: '=on.depth + 1mm' }),
      { functions },
    );
    expect(job.base('skin.depth')).toBe(20);
    expect(job.base('cover.depth')).toBe(21);
  });

  test('do not see rows of a table that has none of the columns they read', () => {
    const looked = '\n[[check]]\nid = "look"\n\nkind = "look"\n\non = "low"\n';
    const job = sheet(
      `${stack}${part('x', { kind: 'extra', note: '=TEST.TELL(base)' })}${looked}`,
      { functions },
    );
    expect(job.says('x.note')).toBe('base - (low top), low 10 (top), top 20 ()');
  });

  test('wait only for rows of the kinds they look at', () => {
    const job = sheet(
      stack +
        part('odd', { kind: 'filler', on: 'base', depth: '=1 mm + 1 lb' }) +
        part('x', { kind: 'extra', size: '=TEST.DEEPEST(base)' }) +
        part('y', { kind: 'extra', size: '=TEST.DEEPESTEXTRA(base)' }),
      { functions },
    );
    expect(job.says('x.size')).toContain('odd.depth');
    expect(job.base('y.size')).toBe(20);
    job.change("kind = 'filler'", "kind = 'extra'");
    expect(job.says('y.size')).toContain('odd.depth');
    job.change("'=1 mm + 1 lb'", "'30 mm'");
    expect(job.base('y.size')).toBe(30);
  });

  test('a loop through one is told like any other', () => {
    const job = sheet(
      stack.replace("depth = '20 mm'", "depth = '=x.size'") +
        part('x', { kind: 'extra', size: '=TEST.DEEPEST(base)' }),
      { functions },
    );
    expect(job.says('x.size')).toMatch(/needs .*A value cannot depend on itself/);
  });

  test('wait for a cell that has no answer', () => {
    const job = sheet(
      stack.replace("depth = '20 mm'", "depth = '=size * 2'") +
        part('x', { kind: 'extra', size: '=TEST.DEEPEST(base)' }),
      { functions },
    );
    expect(job.says('x.size')).toBe('Waits for top.depth: top.size is blank: fill it in.');
  });
});

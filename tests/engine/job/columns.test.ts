import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { length, plain } from '../../../extension/engine/units/dimension.ts';
import {
  columnOf,
  columnsOf,
  coreColumns,
  headColumns,
  tableOrder,
} from '../../../extension/engine/job/columns.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { isReservedId } from '../../../extension/engine/job/reserved-words.ts';
import { resultColumns } from '../../../extension/engine/job/result-columns.ts';

const page = readFileSync(new URL('../../../docs/job-file.md', import.meta.url), 'utf8');

const allColumns = [
  headColumns('job'),
  headColumns('book'),
  ...tableOrder.map((table) => coreColumns(table)),
];

describe('coreColumns', () => {
  test('[J7] no group has more than three keys, and groups follow each other', () => {
    for (const columns of allColumns) {
      const groups = columns.map((column) => column.group ?? -1);
      expect(groups).toEqual(groups.toSorted((a, b) => a - b));
      for (const group of new Set(groups)) {
        expect(groups.filter((one) => one === group).length).toBeLessThanOrEqual(3);
      }
    }
  });

  test('no table has a key twice, and none is a word of its own', () => {
    for (const columns of allColumns) {
      const keys = columns.map((column) => column.key);
      expect(new Set(keys).size).toBe(keys.length);
      expect(keys).not.toContain('id');
      expect(keys).not.toContain('order');
    }
  });

  test('each column has a label and a line of help', () => {
    for (const column of allColumns.flat()) {
      expect(column.label, column.key).not.toBe('');
      expect(column.help, column.key).toMatch(/[.…”]$/);
    }
  });

  test('a table that is not known has none', () => {
    expect(coreColumns('wall')).toEqual([]);
  });

  test('docs/job-file.md lists every column in its place', () => {
    let at = page.indexOf('## Reference of columns');
    for (const columns of allColumns) {
      for (const { key, table, help } of columns) {
        const line = page.slice(at).search(new RegExp(`\\| \`${key}\` +\\|`));
        expect(line, `${table}.${key}`).toBeGreaterThan(0);
        at += line;
        expect(page.slice(at, page.indexOf('\n', at)), `${table}.${key}`).toContain(help);
      }
    }
  });
});

describe('columnsOf', () => {
  test('[J21] the user’s columns come after the core columns, each a group of its own', () => {
    const reading = readFile(`format = 1
[[column]]
id = "reveal"
table = "part"
type = "length"
order = 2
[[column]]
id = "col_colour"
key = "colour"
table = "part"
label = "colour seen"
help = "By daylight."
type = "choice"
choices = ["black", "grey"]
order = 1
[[column]]
id = "depth"
table = "part"
`);
    const [colour, reveal, ...more] = columnsOf(reading, 'part').slice(coreColumns('part').length);
    expect(colour).toMatchObject({
      key: 'colour',
      label: 'colour seen',
      help: 'By daylight.',
      type: { kind: 'choice', choices: ['black', 'grey'] },
    });
    expect(reveal).toMatchObject({ key: 'reveal', type: { kind: 'quantity', dimension: length } });
    expect(reveal?.group).toBe((colour?.group ?? 0) + 1);
    expect(more).toEqual([]);
    expect(columnsOf(reading, 'driver')).toEqual(coreColumns('driver'));
  });

  test.each([
    ['number', { kind: 'quantity', dimension: plain }],
    ['yes_no', { kind: 'yes-no' }],
    ['any', { kind: 'quantity', dimension: 'any' }],
    ['part', { kind: 'link', tables: ['part'] }],
    ['nonsense', { kind: 'text' }],
  ])('[J21] type %s', (type, expected) => {
    const row = `[[column]]\nid = "mine"\ntable = "part"\ntype = "${type}"\n`;
    expect(columnsOf(readFile(`format = 1\n${row}`), 'part').at(-1)?.type).toEqual(expected);
  });
});

describe('columnOf', () => {
  test('[J22] a draw’s key has the type of its last word', () => {
    const type = (key: string): unknown => columnOf('part', key)?.type;
    expect(type('draw.catalyst.percent')).toEqual({ kind: 'quantity', dimension: plain });
    expect(type('draw.catalyst.use')).toEqual({ kind: 'quantity', dimension: 'any' });
    expect(type('draw.glue.material')).toEqual({ kind: 'link', tables: ['material'] });
    expect(type('draw.glue.per')).toEqual({ kind: 'choice', choices: ['panel', 'job'] });
    expect([type('draw.glue.odd'), type('draw.glue'), type('glue.use')]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(columnOf('driver', 'draw.glue.use')).toBeUndefined();
    expect(columnOf('kind', 'default.depth')?.type).toEqual({ kind: 'text' });
    expect(columnOf('kit_row', 'set.on')?.label).toBe('on');
  });

  test('results are columns, the bill’s are late', () => {
    expect(columnOf('part', 'area')?.computed).toBe('cell');
    expect(columnOf('part', 'need')?.computed).toBe('late');
    expect(resultColumns('measure')).toEqual([]);
    expect(columnOf('job', 'units')?.type.kind).toBe('choice');
  });
});

describe('isReservedId', () => {
  test('[J5] units, links and the roots of references are barred', () => {
    for (const word of ['in', 'floz', 'on', 'driver', 'job', 'book', 'all', 'draw', 'none']) {
      expect(isReservedId('part', word), word).toBe(true);
    }
    expect(isReservedId('constant', 'USD')).toBe(true);
    expect(isReservedId('kind', 'driver')).toBe(false);
    expect(isReservedId('part', 'mid_ring')).toBe(false);
  });
});

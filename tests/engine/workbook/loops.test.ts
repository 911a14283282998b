import { describe, expect, test } from 'vitest';
import { loopsFrom } from '../../../extension/engine/workbook/loops.ts';
import { newCell, newRow, type Cell } from '../../../extension/engine/workbook/row.ts';
import { kind, part } from '../../helpers/job-rows.ts';
import { sheet } from '../../helpers/workbook-of.ts';

function cells(reads: Readonly<Record<string, string>>): Readonly<Record<string, Cell>> {
  const source = { identity: {}, texts: new Map<string, string>(), broken: false };
  const row = newRow({ table: 'part', id: 'r', occurrence: 0, source });
  const made = Object.fromEntries(
    Object.keys(reads).map((name, number) => [name, newCell(row, name, number)]),
  );
  for (const [name, list] of Object.entries(reads)) {
    const cell = made[name];
    if (cell !== undefined) cell.reads = Array.from(list).flatMap((one) => made[one] ?? []);
  }
  return made;
}

const names = (loops: readonly (readonly Cell[])[]): readonly string[] =>
  loops
    .map((loop) =>
      loop
        .map((cell) => cell.column)
        .sort()
        .join(''),
    )
    .sort();

describe('loopsFrom', () => {
  test('a chain and a diamond have none', () => {
    expect(loopsFrom(Object.values(cells({ a: 'bc', b: 'd', c: 'd', d: '' })))).toEqual([]);
  });

  test('two loops that meet in a cell are one', () => {
    expect(names(loopsFrom(Object.values(cells({ a: 'b', b: 'ac', c: 'b' }))))).toEqual(['abc']);
  });

  test('loops apart are told apart, cells between them are in neither', () => {
    const graph = cells({ a: 'b', b: 'ac', c: 'd', d: 'e', e: 'd', f: 'f' });
    expect(names(loopsFrom(Object.values(graph)))).toEqual(['ab', 'de', 'f']);
  });

  test('a chain of twenty thousand cells is walked', () => {
    const count = 20_000;
    const chain = Object.values(
      cells(Object.fromEntries(Array.from({ length: count }, (_, i) => [`c${String(i)}`, '']))),
    );
    for (const [index, cell] of chain.entries()) cell.reads = chain.slice(index + 1, index + 2);
    expect(loopsFrom(chain)).toEqual([]);
  });
});

describe('loops', () => {
  test('a loop of defaults alone asks for one of them', () => {
    const book = kind('odd', { 'default.size': '=depth', 'default.depth': '=size' });
    const job = sheet(part('a', { kind: 'odd' }), { book });
    expect(job.says('a.size')).toBe(
      'a.depth needs a.size needs a.depth. Each is worked out from the next: fill in one of a.depth or a.size.',
    );
    expect(job.codes()).toEqual(['cell-loop-of-defaults']);
    job.change("kind = 'odd'", "kind = 'odd'\nsize = '3 in'");
    expect(job.says('a.depth')).toBe('3 in');
    expect(job.codes()).toEqual([]);
  });

  test('a cell that reads itself is a loop', () => {
    expect(sheet(part('a', { kind: 'extra', size: '=size + 1in' })).says('a.size')).toBe(
      'a.size needs a.size. A value cannot depend on itself; change one of these formulas.',
    );
  });

  test('a loop is told once among the problems, at a formula that somebody typed', () => {
    const job = sheet(
      part('a', { kind: 'extra', size: '=b.size' }) + part('b', { kind: 'extra', size: '=a.size' }),
    );
    expect(job.workbook.problems.map(({ code, place }) => [code, place?.row])).toEqual([
      ['cell-loop', 'a'],
    ]);
  });

  test('products in a loop do not grow dimensions without end', () => {
    const job = sheet(
      part('a', { kind: 'extra', use: '=b.use * 1in' }) +
        part('b', { kind: 'extra', use: '=a.use * 1in' }),
    );
    expect(job.says('a.use')).toMatch(/a\.use needs b\.use needs a\.use/);
  });

  test('rows that stand on each other are told, and answers go on', () => {
    const job = sheet(
      part('a', { kind: 'extra', on: 'b', size: '3 in' }) + part('b', { kind: 'extra', on: 'a' }),
    );
    expect(job.workbook.problems.map(({ code }) => code)).toEqual(['link-loop', 'link-loop']);
    expect(job.says('a.size')).toBe('3 in');
    const row = job.workbook.row('part', 'a');
    expect(row && job.workbook.under(row).map(({ id }) => id)).toEqual(['b']);
  });
});

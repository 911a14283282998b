import { describe, expect, test } from 'vitest';
import type { FunctionEntry } from '../../../extension/engine/formula/catalogue.ts';
import { ok } from '../../../extension/engine/result.ts';
import { plain } from '../../../extension/engine/units/dimension.ts';
import { kind, measure, part } from '../../helpers/job-rows.ts';
import { catalogueWith, sheet } from '../../helpers/workbook-of.ts';

describe('kinds', () => {
  const book = kind('plate', {
    'default.size': '=depth * 2',
    'default.seat': 'wrap',
    'result.area': '=size * size',
    'rule.thin': '=depth <= 1in',
    'say.thin': 'A plate of {depth} is too thick for {id}.',
    'draw.glue.material': 'wood_glue',
    'draw.glue.use': '=draw.glue.material.thickness * area',
    'draw.pins.material': 'screw_8',
    'draw.pins.use': '=qty * 4',
  });

  test('a row that breaks a rule of its kind says what the kind says, with its own figures', () => {
    const job = sheet(part('a', { kind: 'plate', depth: '2 in' }), { book });
    const found = job.workbook.problems.filter(({ code }) => code === 'row-not-possible');
    expect(found.map(({ message, place }) => [message, place?.row])).toEqual([
      ['A plate of 2 in is too thick for a.', 'a'],
    ]);
    job.change('2 in', '3 in');
    expect(job.workbook.problems.map(({ message }) => message)).toContain(
      'A plate of 3 in is too thick for a.',
    );
    job.change('3 in', '1 in');
    expect(job.codes()).not.toContain('row-not-possible');
  });

  test('a row whose name was deleted is called by its id there', () => {
    const named = kind('plate', {
      'rule.thin': '=depth <= 1in',
      'say.thin': '{name} is too thick.',
    });
    const job = sheet(part('a', { kind: 'plate', depth: '2 in', name: 'Front' }), { book: named });
    const told = (): readonly string[] => job.workbook.problems.map(({ message }) => message);
    expect(told()).toEqual(['Front is too thick.']);
    job.change("name = 'Front'\n", '');
    expect(told()).toEqual(['a is too thick.']);
  });

  test('none as material switches a draw off with all that it would be worked from', () => {
    const job = sheet(part('a', { kind: 'plate', depth: '1 in', 'draw.glue.material': 'none' }), {
      book,
    });
    expect(job.says('a.draw.glue.material')).toBe('none');
    expect(job.workbook.row('part', 'a')?.cell('draw.glue.use').text).toBeUndefined();
    expect(job.workbook.problems).toEqual([]);
    expect(job.says('a.draw.pins.use')).toBe('4');
  });

  test('a draw that the row does not have is told when a formula names it, until it is there', () => {
    const job = sheet(part('a', { kind: 'extra', use: '=draw.tape.qty * 2' }), { book });
    expect(job.says('a.use')).toMatch(/^a draws nothing called “tape”/);
    job.change("kind = 'extra'", "kind = 'extra'\ndraw.tape.qty = 3");
    expect(job.says('a.use')).toBe('6');
  });

  test('another kind brings its own defaults', () => {
    const job = sheet(part('a', { kind: 'plate', depth: '1 in' }), { book });
    expect(job.says('a.size')).toBe('2 in');
    const { structure } = job.change("kind = 'plate'", "kind = 'extra'");
    expect(structure).toBe(true);
    expect(job.says('a.size')).toBe('');
    expect(job.workbook.row('part', 'a')?.draws).toEqual([]);
  });

  test('a row without a kind is asked for one', () => {
    const job = sheet(part('a', { size: '3 in' }));
    expect(job.workbook.problems.map(({ code, severity }) => [code, severity])).toEqual([
      ['kind-missing', 'warning'],
    ]);
  });
});

describe('update', () => {
  test('a measure of another dimension is told where a formula cannot take it', () => {
    const job = sheet(
      measure('room', '2 in') + part('a', { kind: 'extra', size: '=job.room + 1in' }),
    );
    expect(job.says('a.size')).toBe('3 in');
    job.change('2 in', '2 sqft');
    expect(job.says('a.size')).toMatch(/area.*length|length.*area/);
    job.change('2 sqft', '4 in');
    expect(job.says('a.size')).toBe('5 in');
  });

  test('a kind or a constant of this job takes the place of the book’s', () => {
    const job = sheet(part('a', { kind: 'extra', use: '=book.ring_step * 2' }));
    const before = job.base('a.use');
    job.setText(`${job.text()}[[constant]]\nid = "ring_step"\n\nvalue = "1 in"\n`);
    expect(job.base('a.use')).toBeCloseTo(50.8, 9);
    expect(job.base('a.use')).not.toBe(before);
    const more = '[[kind]]\nid = "extra"\n\ndefault.size = "4 in"\n';
    job.setText(`${job.text()}\n${more}`);
    expect(job.says('a.size')).toBe('4 in');
  });

  test('another currency changes what a price may be', () => {
    const job = sheet(`[job]\ncurrency = "USD"\n\n${part('a', { kind: 'extra', price: '5 USD' })}`);
    expect(job.says('a.price')).toBe('5.00 USD');
    const changes = job.change('currency = "USD"', 'currency = "EUR"');
    expect(job.result('a.price').state).toBe('no-answer');
    expect([...changes.rows]).toContain('part/a#0');
  });

  test('moving a row changes no answer', () => {
    const ordered = (id: string, order: number, cells: Readonly<Record<string, string>>): string =>
      `${part(id, { kind: 'extra', ...cells }).trimEnd()}\n\norder = ${String(order)}\n\n`;
    const job = sheet(
      ordered('a', 1000, { size: '1 in' }) +
        ordered('b', 2000, { size: '2 in' }) +
        ordered('c', 3000, { size: '=SUM(all(extra).size)' }),
    );
    const { structure } = job.change('order = 1000', 'order = 9000');
    expect(job.workbook.rows('part').map(({ id }) => id)).toEqual(['b', 'c', 'a']);
    expect(structure).toBe(true);
    expect(job.says('c.size')).toBe('3 in');
  });

  test('a list takes hundreds of rows, in whatever order they came', () => {
    const rows = Array.from({ length: 300 }, (_, index) =>
      part(`r${String(index)}`, {
        kind: index % 3 === 0 ? 'ring' : 'extra',
        depth: '1 in',
        qty: String(1 + (index % 2)),
      }),
    );
    const sum = part('sum', {
      kind: 'extra',
      size: '=SUM(all(ring).depth)',
      use: '=COUNT(all(part).depth)',
    });
    const job = sheet(rows.join('') + sum);
    expect(job.says('sum.size')).toBe('150 in');
    expect(job.says('sum.use')).toBe('300');
    job.setText(`format = 1\n\n${rows.slice(30).join('')}${sum}${rows.slice(0, 3).join('')}`);
    expect(job.says('sum.size')).toBe('136 in');
    expect(job.says('sum.use')).toBe('273');
  });
});

describe('functions that fail', () => {
  const entry = (name: string, more: Partial<FunctionEntry>): FunctionEntry => ({
    name,
    group: 'standard',
    help: 'For a test.',
    parameters: [
      { name: 'count', help: 'A number.', type: { kind: 'quantity', dimensions: [plain] } },
    ],
    result: { kind: 'quantity', dimension: plain },
    example: { formula: '=1', shows: '1' },
    source: 'test',
    ...more,
  });
  const functions = catalogueWith(
    entry('TEST.THROW', {
      run: () => {
        throw new Error('out of glue');
      },
    }),
    entry('TEST.NAN', { run: () => ok({ kind: 'quantity', base: Number.NaN, dimension: plain }) }),
    entry('SEQUENCE', {}),
  );

  test('an exception is a sentence in its cell and nowhere else', () => {
    const job = sheet(
      part('a', { kind: 'extra', use: '=TEST.THROW(1)' }) +
        part('b', { kind: 'extra', size: '=1in + 1in' }),
      { functions },
    );
    expect(job.says('a.use')).toBe('This formula could not be calculated (out of glue).');
    expect(job.says('b.size')).toBe('2 in');
    job.change('TEST.THROW(1)', '1 + 1');
    expect(job.says('a.use')).toBe('2');
  });

  test('an answer that is no number says so', () => {
    const job = sheet(part('a', { kind: 'extra', use: '=TEST.NAN(1)' }), { functions });
    expect(job.says('a.use')).toBe('The answer is not a number that can be worked with.');
  });

  test('a function that would fill the cells beside it leaves them alone', () => {
    const job = sheet(
      part('a', { kind: 'extra', use: '=SEQUENCE(3)' }) +
        part('b', { kind: 'extra', use: '7', size: '=all(extra).use' }) +
        part('c', { kind: 'extra', use: '=b.use + 1' }),
      { functions },
    );
    expect(job.says('c.use')).toBe('8');
    job.change('SEQUENCE(3)', 'b.use * 2');
    expect(job.says('a.use')).toBe('14');
  });
});

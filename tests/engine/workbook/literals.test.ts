import { describe, expect, test } from 'vitest';
import { sheet } from '../../helpers/workbook-of.ts';
import { part } from '../../helpers/job-rows.ts';

const one = (cells: Readonly<Record<string, string>>, more = '') =>
  sheet(`${part('a', { kind: 'extra', ...cells })}${more}`);

describe('readLiteral', () => {
  test('a length is read with its unit, fractions and all', () => {
    expect(one({ length: '5 1/2 in' }).base('a.length')).toBeCloseTo(139.7, 9);
  });

  test('a bare number where a length is wanted is a problem with a fix that writes the unit', () => {
    const job = one({ length: '24' });
    const found = job.workbook.problems.find(({ place }) => place?.column === 'length');
    expect(found?.code).toBe('unit-missing');
    expect(found?.fixes?.[0]).toMatchObject({
      text: '24 in',
      place: { table: 'part', row: 'a', column: 'length' },
    });
  });

  test('an area in a column of lengths is refused', () => {
    const job = one({ length: '2 sqft' });
    expect(job.result('a.length').state).toBe('no-answer');
  });

  test('a count in the word of the material is a plain number', () => {
    const job = one({ material: 'screw_8', use: '25 each' });
    expect(job.says('a.use')).toBe('25');
  });

  test('the word of another material is not', () => {
    const job = one({ material: 'satin_black', use: '25 each' });
    expect(job.result('a.use').state).toBe('no-answer');
    job.change("material = 'satin_black'", "material = 'screw_8'");
    expect(job.says('a.use')).toBe('25');
  });

  test('a choice must be one of the words of its column', () => {
    const job = one({ hand: 'leftish' });
    expect(job.says('a.hand')).toBe('hand cannot be “leftish”. It may be: both, left, right.');
    job.change('leftish', 'left');
    expect(job.says('a.hand')).toBe('left');
  });

  test('yes and no are read as such', () => {
    expect(one({ taxed: 'yes' }).says('a.taxed')).toBe('yes');
    expect(one({ taxed: 'perhaps' }).says('a.taxed')).toBe('taxed is yes or no, not “perhaps”.');
  });

  test('a link names a row that is there, or a near one is suggested', () => {
    const job = one({ on: 'bse' }, part('base', { kind: 'base' }));
    expect(job.says('a.on')).toMatch(/there is no part of that name\. Did you mean base\?/);
    job.change("on = 'bse'", "on = 'base'");
    expect(job.says('a.on')).toBe('base');
  });

  test('a link cannot be a formula, and neither can a kind', () => {
    expect(one({ material: '=on.material' }).says('a.material')).toMatch(/cannot be a formula/);
    expect(one({ kind: '=1' }).says('a.kind')).toMatch(/cannot be a formula/);
  });

  test('a kind that is not known is told with one like it', () => {
    expect(one({ kind: 'rin' }).says('a.kind')).toBe(
      'There is no kind of part called “rin”. Did you mean ring?',
    );
  });

  test('a shape is one constructor of literals', () => {
    expect(one({ shape: 'oval(8 in, 6 in)' }).says('a.shape')).toBe('oval(8 in, 6 in)');
    expect(one({ shape: 'oval(8 in)' }).result('a.shape').state).toBe('no-answer');
  });

  test('a measure takes whatever dimension is written', () => {
    const job = sheet('[[measure]]\nid = "m"\n\nvalue = "70 degF"\n');
    expect(job.says('measure/m.value')).toBe('70 degF');
    job.change('70 degF', '3 kg');
    expect(job.says('measure/m.value')).toBe('3 kg');
  });

  test('a user column has the type that its row says', () => {
    const column = '[[column]]\nid = "trim"\n\ntable = "part"\ntype = "length"\n\n';
    const job = sheet(
      `${column}${part('a', { kind: 'extra', trim: '2 in', length: '=trim * 3' })}`,
    );
    expect(job.says('a.length')).toBe('6 in');
  });
});

import { describe, expect, test } from 'vitest';
import { part } from '../../helpers/job-rows.ts';
import { sheet } from '../../helpers/workbook-of.ts';

const says = (formula: string, cells: Readonly<Record<string, string>> = {}): string =>
  sheet(part('a', { kind: 'extra', use: formula, ...cells })).says('a.use');

describe('blank cells', () => {
  test('adding nothing changes nothing', () => {
    expect(says('=size + thickness', { size: '4 in' })).toBe('4 in');
    expect(says('=1 + percent')).toBe('1');
  });

  test('a product with a blank has no answer and names the cell', () => {
    expect(says('=size * 2')).toBe('a.size is blank: fill it in.');
    expect(says('=size * depth', { size: '4 in' })).toBe('a.depth is blank: fill it in.');
  });

  test('an argument that a function cannot do without is asked for by name', () => {
    expect(says('=RING.LEAST(size, tilt, 1/2in)', { size: '8 in' })).toBe(
      'a.tilt is blank: fill it in.',
    );
    expect(says('=SIN(tilt)')).toBe('a.tilt is blank: fill it in.');
  });

  test('an optional argument that is blank counts as left out', () => {
    const blank = says('=RING.DEPTH(3in, 1in, 1/4in, tilt)');
    expect(blank).toBe(says('=RING.DEPTH(3in, 1in, 1/4in)'));
    expect(blank).toBe('2 1/4 in');
  });

  test('a blank can be asked for', () => {
    expect(says('=IF(size = "", 1in, size)')).toBe('1 in');
    expect(says('=IF(ISBLANK(size), 1in, 2in)', { size: '8 in' })).toBe('2 in');
  });

  test('IF without else is blank, and so is what only repeats it', () => {
    const job = sheet(
      part('a', { kind: 'extra', size: '=IF(1 > 2, 3in)', depth: '=size' }) +
        part('b', { kind: 'extra', depth: '=a.size + 1in', use: '=COUNT(all(extra).size)' }),
    );
    expect([job.says('a.size'), job.says('a.depth')]).toEqual(['', '']);
    expect(job.says('b.depth')).toBe('1 in');
    expect(job.says('b.use')).toBe('0');
  });

  test('IFERROR answers for a cell that has none', () => {
    expect(says('=IFERROR(size * 2, 5in)')).toBe('5 in');
  });

  test('what a cell waits for is told from the cell at which it began', () => {
    const job = sheet(
      part('a', { kind: 'extra', size: '=depth * 2' }) +
        part('b', { kind: 'extra', size: '=a.size', depth: '=size + 1in' }),
    );
    expect(job.says('b.depth')).toBe('Waits for a.size: a.depth is blank: fill it in.');
    const codes = job.workbook.problems.map(({ place, code }) => [place?.row, code]);
    expect(codes).toEqual([['a', 'cell-blank']]);
    job.change("size = '=depth * 2'", "size = '=depth * 2'\ndepth = '2 in'");
    expect(job.says('b.depth')).toBe('5 in');
    expect(job.workbook.problems).toEqual([]);
  });

  test('what only is not filled in yet is a note on a default and a warning on a typed formula', () => {
    const job = sheet(
      `${part('r', { kind: 'ring' })}${part('a', { kind: 'extra', size: '=depth*2' })}`,
    );
    const severities = (row: string) =>
      new Set(
        job.workbook.problems.filter(({ place }) => place?.row === row).map((p) => p.severity),
      );
    expect(severities('r')).toEqual(new Set(['note']));
    expect(severities('a')).toEqual(new Set(['warning']));
  });
});

describe('operators', () => {
  test('equality is that of people', () => {
    expect(says('=0.1in + 0.2in = 0.3in')).toBe('yes');
    expect(says('=IF(0.1 + 0.2 > 0.3, 1, 2)')).toBe('2');
  });

  test('texts are compared without regard to capitals', () => {
    expect(says('="MDF" = "mdf"')).toBe('yes');
    expect(says('="a" < "B"')).toBe('yes');
  });

  test('a division by zero says so', () => {
    expect(says('=1in / (2 - 2)')).toBe('Divides by zero.');
  });

  test('texts with quotes, apostrophes and lines survive the evaluator', () => {
    expect(says('="6 ""inch"" ring" & " x"', {})).toBe('6 "inch" ring x');
  });

  test('very small and very large numbers survive the evaluator', () => {
    expect(says('=0.0000001 * 10000000')).toBe('1');
  });
});

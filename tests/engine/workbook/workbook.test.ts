import { describe, expect, test } from 'vitest';
import { sheet } from '../../helpers/workbook-of.ts';

const head = `[job]
title = "Test"

units = "in"
currency = "USD"

temperature = "70 degF"
`;

const base = `
[[part]]
id = "base"

kind = "base"

material = "hardboard_6"

shape = "rect(20 in, 10 in)"

order = 1000
`;

function part(id: string, cells: Readonly<Record<string, string>>, order = 2000): string {
  const lines = Object.entries(cells).map(([key, text]) => `${key} = '${text}'`);
  return `\n[[part]]\nid = "${id}"\n\n${lines.join('\n')}\n\norder = ${String(order)}\n`;
}

function measure(id: string, value: string): string {
  return `\n[[measure]]\nid = "${id}"\n\nvalue = "${value}"\n\norder = 1000\n`;
}

describe('openWorkbook: references', () => {
  test('a bare name is a column of the row itself', () => {
    const job = sheet(
      head + part('board', { kind: 'extra', length: '4 in', width: '=length / 2' }),
    );
    expect(job.says('board.width')).toBe('2 in');
  });

  test('a row id and a column reach another row, whatever stands between', () => {
    const job = sheet(head + base + part('board', { kind: 'extra', length: '=base.length + 1in' }));
    expect(job.says('board.length')).toBe('21 in');
  });

  test('links lead on to what they name, through up to three of them', () => {
    const job = sheet(
      head +
        base +
        part('cloth', { kind: 'skin', on: 'base' }) +
        part('note', { kind: 'extra', on: 'cloth', thickness: '=on.on.material.thickness' }, 3000),
    );
    expect(job.says('note.thickness')).toBe('1/4 in');
  });

  test('an empty link says which cell to fill', () => {
    const job = sheet(
      head + part('ring', { kind: 'ring', tilt: '10 deg', depth: '=driver.depth' }),
    );
    expect(job.says('ring.depth')).toMatch(/ring has no driver.*fill in/i);
  });

  test('job.NAME is a setting or a measure, book.NAME a constant of the shop', () => {
    const job = sheet(
      head +
        measure('cavity', '2 1/2 in') +
        part('a', { kind: 'extra', length: '=job.cavity + 1/2in', use: '=book.mat_ratio' }),
    );
    expect(job.says('a.length')).toBe('3 in');
    expect(job.says('a.use')).toBe('2.5');
  });

  test('a name that nobody has is a problem with a near suggestion', () => {
    const job = sheet(head + base + part('a', { kind: 'extra', length: '=bse.length' }));
    expect(job.says('a.length')).toMatch(/bse/);
    expect(job.says('a.length')).toMatch(/base/);
  });

  test('a length and an area are not added; the sentence names both', () => {
    const job = sheet(head + base + part('a', { kind: 'extra', use: '=base.length + base.area' }));
    expect(job.says('a.use')).toMatch(/length.*area/);
  });

  test('a cell that waits for one without answer names it', () => {
    const job = sheet(
      head +
        part('a', { kind: 'extra', length: '=nobody.length' }) +
        part('b', { kind: 'extra', length: '=a.length + 1in' }, 3000),
    );
    expect(job.says('b.length')).toMatch(/a\.length/);
  });
});

describe('openWorkbook: lists', () => {
  const rings =
    part('r1', { kind: 'ring', on: 'base', size: '8 in', depth: '2 in', qty: '2' }, 2000) +
    part('r2', { kind: 'ring', on: 'base', size: '4 in', depth: '1 in' }, 3000) +
    part('r3', { kind: 'ring', size: '4 in', depth: '9 in' }, 4000);

  test('SUM counts a value once for each piece of its row, MAX and COUNT once', () => {
    const job = sheet(
      head +
        base +
        rings +
        part('s', { kind: 'extra', length: '=SUM(all(ring).depth)' }, 5000) +
        part('m', { kind: 'extra', length: '=MAX(all(ring).depth)' }, 6000) +
        part('n', { kind: 'extra', use: '=COUNT(all(ring).depth)' }, 7000),
    );
    expect(job.says('s.length')).toBe('14 in');
    expect(job.says('m.length')).toBe('9 in');
    expect(job.says('n.use')).toBe('3');
  });

  test('on(row, kinds) takes what stands on the row, directly or through others', () => {
    const job = sheet(
      head +
        base +
        rings +
        part('s', { kind: 'extra', length: '=SUM(on(base, ring).depth)' }, 5000),
    );
    expect(job.says('s.length')).toBe('5 in');
  });

  test('a row is never in its own list', () => {
    const job = sheet(
      head +
        part('a', { kind: 'extra', length: '3 in' }) +
        part('b', { kind: 'extra', length: '=SUM(all(extra).length)' }, 3000),
    );
    expect(job.says('b.length')).toBe('3 in');
  });

  test('a new row of the kind joins the list, a deleted one leaves it', () => {
    const sum = part('s', { kind: 'extra', length: '=SUM(all(ring).depth)' }, 5000);
    const job = sheet(head + base + rings + sum);
    job.setText(`format = 1\n\n${head}${base}${sum}`);
    expect(job.says('s.length')).toBe('0');
    job.setText(`format = 1\n\n${head}${base}${rings}${sum}`);
    expect(job.says('s.length')).toBe('14 in');
  });
});

describe('openWorkbook: kinds', () => {
  test('a blank cell shows its kind’s default, typing overrides it, clearing brings it back', () => {
    const job = sheet(head + base);
    expect(job.says('base.length')).toBe('20 in');
    expect(job.workbook.row('part', 'base')?.cell('area').origin).toBe('computed');
    expect(job.says('base.qty')).toBe('1');
    job.change('kind = "base"', 'kind = "base"\n\nqty = 3');
    expect(job.says('base.qty')).toBe('3');
    job.change('\n\nqty = 3', '');
    expect(job.says('base.qty')).toBe('1');
  });

  test('draws are columns of the row, and the row may say its own', () => {
    const skin =
      part('cloth', { kind: 'skin', on: 'base' }) +
      part('coat', { kind: 'resin', on: 'cloth', 'draw.catalyst.percent': '2 %' }, 3000);
    const job = sheet(head + base + skin);
    const row = job.workbook.row('part', 'coat');
    expect(row?.draws).toContain('catalyst');
    expect(job.says('coat.draw.catalyst.material')).toBe('catalyst');
    expect(job.base('coat.draw.catalyst.use')).toBeGreaterThan(0);
  });

  test('BUILD.UP adds the thickness of what stands on a row', () => {
    const job = sheet(
      head +
        base +
        part('a', { kind: 'extra', on: 'base', thickness: '1/8 in' }, 2000) +
        part('b', { kind: 'extra', on: 'a', thickness: '1/16 in' }, 3000) +
        part('sum', { kind: 'extra', thickness: '=BUILD.UP(base)' }, 4000),
    );
    expect(job.says('sum.thickness')).toBe('3/16 in');
    job.change("thickness = '1/16 in'", "thickness = '1/4 in'");
    expect(job.says('sum.thickness')).toBe('3/8 in');
  });
});

describe('openWorkbook: loops', () => {
  test('a loop is told as a path of names', () => {
    const job = sheet(
      head +
        part('a', { kind: 'extra', length: '=b.length' }) +
        part('b', { kind: 'extra', length: '=c.length' }, 3000) +
        part('c', { kind: 'extra', length: '=a.length' }, 4000),
    );
    expect(job.says('a.length')).toMatch(/a\.length.*b\.length.*c\.length/);
    job.change("length = '=a.length'", "length = '2 in'");
    expect(job.says('a.length')).toBe('2 in');
  });

  test('a cell that reads a loop waits for it and is not part of it', () => {
    const job = sheet(
      head +
        part('a', { kind: 'extra', length: '=b.length' }) +
        part('b', { kind: 'extra', length: '=a.length' }, 3000) +
        part('c', { kind: 'extra', length: '=a.length + 1in' }, 4000),
    );
    expect(job.result('c.length').state).toBe('no-answer');
    job.change("length = '=a.length'", "length = '2 in'");
    expect(job.says('c.length')).toBe('3 in');
  });
});

describe('openWorkbook: rows of one id', () => {
  test('both stay, references to them have no answer until one is renamed', () => {
    const twin = part('a', { kind: 'extra', length: '1 in' });
    const job = sheet(head + twin + twin + part('b', { kind: 'extra', length: '=a.length' }, 3000));
    expect(job.workbook.rows('part').filter(({ id }) => id === 'a')).toHaveLength(2);
    expect(job.says('b.length')).toMatch(/two rows/i);
    job.change('id = "a"', 'id = "c"');
    expect(job.says('b.length')).toBe('1 in');
  });
});

describe('openWorkbook: entry', () => {
  const job = sheet(head + base + part('a', { kind: 'extra', length: '3 in' }));
  const place = { table: 'part', id: 'a', occurrence: 0, column: 'width' };

  test('tryText answers as if the text stood in the cell, and changes nothing', () => {
    const tried = job.workbook.tryText(place, '=length * 2');
    expect(tried).toMatchObject({ state: 'value', value: { base: 152.4 } });
    expect(job.says('a.width')).toBe('');
  });

  test('the scope names columns, rows and roots for completion', () => {
    const words = job.workbook
      .scopeAt(place)
      .names([])
      .map(({ word }) => word);
    expect(words).toEqual(expect.arrayContaining(['length', 'base', 'job', 'book']));
  });

  test('what a cell reads and what reads it are told', () => {
    const traced = sheet(head + base + part('a', { kind: 'extra', length: '=base.length' }));
    const cell = { table: 'part', id: 'a', occurrence: 0, column: 'length' };
    expect(traced.workbook.readsOf(cell)).toMatchObject([{ id: 'base', column: 'length' }]);
    const source = { ...cell, id: 'base' };
    expect(traced.workbook.readBy(source)).toEqual(
      expect.arrayContaining([expect.objectContaining({ id: 'a', column: 'length' })]),
    );
  });
});

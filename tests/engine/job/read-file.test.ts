import { describe, expect, test } from 'vitest';
import { fileSpanOf } from '../../../extension/engine/job/places.ts';
import { readChange, readFile } from '../../../extension/engine/job/read-file.ts';
import type { FileReading, SourceRow } from '../../../extension/engine/job/source.ts';
import { sample } from './arbitrary-files.ts';

const top = 'format = 1\n\n[job]\nunits = "in"\n\n';

function codes(reading: FileReading): readonly string[] {
  return reading.problems.map((problem) => problem.code);
}

function row(reading: FileReading, table: string, id: string): SourceRow {
  const found = reading.tables.get(table)?.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no ${table} ${id}`);
  return found;
}

function texts(of: SourceRow): Record<string, string> {
  return Object.fromEntries([...of.cells].map(([key, cell]) => [key, cell.text]));
}

/** A part whose block is `lines`, between two good rows. */
function between(lines: string): FileReading {
  const good = (id: string): string => `[[part]]\nid = "${id}"\nname = "Good"\n\n`;
  return readFile(`${top}${good('first')}[[part]]\n${lines}\n\n${good('last')}`);
}

describe('readFile', () => {
  test('a job as a person keeps it reads without a problem', () => {
    const reading = readFile(sample);
    expect(reading.problems).toEqual([]);
    expect([reading.state, reading.format]).toEqual(['readable', 1]);
    expect(reading.head.get('date')).toMatchObject({ text: '2026-11-25', form: 'date' });
    expect([...reading.tables.keys()]).toEqual(['panel', 'driver', 'measure', 'part', 'task']);
    expect(texts(row(reading, 'part', 'skin'))).toEqual({
      name: 'Cloth skin',
      kind: 'skin',
      on: 'base',
      'draw.staples.use': '=STAPLE.COUNT(base.perimeter, 1in)',
      note: 'Stretch over "mid_ring" first.\n# not a remark\n',
    });
    expect(row(reading, 'part', 'mid_ring').cells.get('qty')).toMatchObject({
      text: '2',
      form: 'integer',
    });
  });

  test('[J1] line ends of Windows and a file without a last line break read alike', () => {
    const unix = readFile(sample);
    for (const text of [sample.replaceAll('\n', '\r\n'), sample.trimEnd(), `\uFEFF${sample}`]) {
      const reading = readFile(text);
      expect(reading.problems).toEqual([]);
      expect(texts(row(reading, 'driver', 'mid'))).toEqual(texts(row(unix, 'driver', 'mid')));
    }
  });

  test('[J2] a file that does not say its format is read, with a warning', () => {
    expect(codes(readFile('[job]\ntitle = "x"\n'))).toEqual(['format-missing']);
    expect(codes(readFile('format = "one"\n[job]\n'))).toEqual(['format-not-whole']);
    expect(codes(readFile('format = 0\n[job]\n'))).toEqual(['format-not-whole']);
  });

  test('[J2] a file of a newer format is shown and says so', () => {
    const reading = readFile('format = 2\n[job]\n[[part]]\nid = "base"\n');
    expect([reading.state, reading.format]).toEqual(['newer', 2]);
    expect(codes(reading)).toEqual(['format-newer']);
    expect(reading.tables.get('part')).toHaveLength(1);
  });

  test('[J3] the first of several head tables counts, and a file without one says so', () => {
    const two = readFile('format = 1\n[job]\ntitle = "a"\n[book]\ntitle = "b"\n');
    expect(two.head.get('title')?.text).toBe('a');
    expect(two.problems).toMatchObject([
      { code: 'head-repeated', fileSpan: { start: 29, end: 35 } },
    ]);
    expect(codes(readFile('format = 1\n'))).toEqual(['head-missing']);
    expect(codes(readFile('format = 1\n[[job]]\ntitle = "a"\n'))).toEqual(['head-brackets']);
    expect(codes(readFile('format = 1\nunits = "in"\n[job]\n'))).toEqual(['key-outside']);
  });

  test('[J4] two rows may not share an id', () => {
    const same = readFile(`${top}[[part]]\nid = "base"\n[[part]]\nid = "base"\n`);
    expect(same.tables.get('part')?.map((one) => one.occurrence)).toEqual([0, 1]);
    expect(same.problems).toMatchObject([
      { code: 'row-id-repeated', place: { table: 'part', row: 'base', occurrence: 1 } },
    ]);
    expect(same.problems[0]?.message).toContain('base');
    const across = readFile(`${top}[[part]]\nid = "door"\n[[panel]]\nid = "door"\n`);
    expect(codes(across)).toEqual(['row-id-repeated']);
    const apart = readFile(`${top}[[part]]\nid = "vinyl"\n[[material]]\nid = "vinyl"\n`);
    expect(codes(apart)).toEqual([]);
  });

  test.each([
    ['id = "Mid Ring"', 'row-id-ill-formed'],
    ['id = 7', 'row-id-ill-formed'],
    ['id = "in"', 'row-id-reserved'],
    ['id = "driver"', 'row-id-reserved'],
    ['id = "job"', 'row-id-reserved'],
    ['name = "nameless"', 'row-id-missing'],
    ['id = ""', 'row-id-missing'],
  ])('[J5] a part with %s is told %s and stays', (lines, code) => {
    const reading = between(lines);
    expect(codes(reading)).toEqual([code]);
    expect(reading.tables.get('part')).toHaveLength(3);
  });

  test('[J5] a material may be called as a link column is, a part may not', () => {
    expect(codes(readFile(`${top}[[material]]\nid = "panel"\n`))).toEqual([]);
    expect(codes(readFile(`${top}[[part]]\nid = "panel"\n`))).toEqual(['row-id-reserved']);
  });

  test('[J8] rows are displayed by order, then id; one without follows the row above it', () => {
    const rows = ['d 30', 'b 20', 'x', 'a 20', 'y', 'c 10.5'].map((one) => {
      const [id = '', order] = one.split(' ');
      return `[[part]]\nid = "${id}"\n${order === undefined ? '' : `order = ${order}\n`}`;
    });
    const shown = (text: string): unknown =>
      readFile(text)
        .tables.get('part')
        ?.map((one) => one.id);
    expect(shown(top + rows.join('\n'))).toEqual(['c', 'a', 'y', 'b', 'x', 'd']);
    expect(
      shown(top + ['x', 'z'].map((id) => `[[part]]\nid = "${id}"\n`).join('') + rows.join('')),
    ).toEqual(['x', 'z', 'c', 'a', 'y', 'b', 'x', 'd']);
  });

  test('[J8] an order that is no number is told, and the row follows the one above', () => {
    for (const order of ['"1000"', 'nan', 'true']) {
      const reading = between(`id = "odd"\norder = ${order}`);
      expect(codes(reading)).toEqual(['order-not-number']);
      expect(row(reading, 'part', 'odd').order).toBeUndefined();
    }
  });

  test('[J13] a bare number where a length is wanted is a problem that can be mended', () => {
    const reading = between(
      'id = "odd"\ndepth = 3\nqty = 2\nthickness = "1/4"\nwidth = 0\nuse = 5',
    );
    expect(reading.problems).toMatchObject([
      {
        code: 'unit-missing',
        place: { table: 'part', row: 'odd', column: 'depth' },
        fixes: [{ text: '3 in' }],
      },
      { code: 'unit-missing', fixes: [{ text: '1/4 in' }] },
    ]);
    const inMm = readFile('format = 1\n[job]\nunits = "mm"\n[[part]]\nid = "odd"\ndepth = 3\n');
    expect(inMm.problems).toMatchObject([{ fixes: [{ text: '3 mm' }] }]);
    const head = readFile('format = 1\n[job]\ntemperature = 70\n');
    expect(head.problems).toMatchObject([
      { place: { table: 'job', column: 'temperature' }, fixes: [{ text: '70 degF' }] },
    ]);
  });

  test('[J15] unknown keys and tables are kept, with a note on what may be meant', () => {
    const reading = between('id = "odd"\nmaterail = "ply"\nzebra = 1');
    expect(reading.problems).toMatchObject([
      {
        code: 'key-unknown',
        severity: 'note',
        message: expect.stringContaining('material') as string,
      },
      {
        code: 'key-unknown',
        severity: 'note',
        message: expect.not.stringContaining('meant') as string,
      },
    ]);
    expect(row(reading, 'part', 'odd').cells.get('zebra')?.text).toBe('1');
    const table = readFile(`${top}[[parts]]\nid = "x"\n`);
    expect(table.problems).toMatchObject([
      {
        code: 'table-unknown',
        severity: 'note',
        message: expect.stringContaining('part') as string,
      },
    ]);
    expect(table.tables.size).toBe(0);
  });

  test('[J6] headers inside texts and lists are no headers', () => {
    const reading = between(
      'id = "odd"\nnote = """\n[[part]]\n"""\nchoices = [\n  "]", # ]\n  ["x"]\n]',
    );
    expect(reading.tables.get('part')).toHaveLength(3);
    expect(row(reading, 'part', 'odd').cells.get('note')?.text).toBe('[[part]]\n');
  });

  test('[J22] dotted and quoted keys are cells under their joined key', () => {
    const reading = between(
      `id = "odd"\ndraw.glue.material = "none"\n"dr\\u0061w".'pot'.per = "job"\n'note' = 'x' # why`,
    );
    expect(codes(reading)).toEqual([]);
    expect(texts(row(reading, 'part', 'odd'))).toEqual({
      'draw.glue.material': 'none',
      'draw.pot.per': 'job',
      note: 'x',
    });
  });

  test('[J21] a column of the user’s own is known, typed and checked', () => {
    const added = '[[column]]\nid = "reveal"\ntable = "part"\ntype = "length"\n\n';
    const part = '[[part]]\nid = "base"\nreveal = 3\n';
    expect(codes(readFile(top + part))).toEqual(['key-unknown']);
    expect(readFile(top + added + part).problems).toMatchObject([
      { code: 'unit-missing', place: { column: 'reveal' } },
    ]);
  });

  test.each([
    ['table = "part"\nkey = "depth"', 'column-taken'],
    ['table = "wall"', 'column-table-unknown'],
    ['table = "part"\ntype = "wattage"', 'column-type-unknown'],
  ])('[J21] a column row with %j is told %s', (lines, code) => {
    expect(codes(readFile(`${top}[[column]]\nid = "mine"\n${lines}\n`))).toEqual([code]);
  });
});

describe('readChange', () => {
  test('[J23] rows and tables that did not change are the same objects', () => {
    const before = readFile(sample);
    const after = readChange(before, sample.replace('tilt = "15 deg"', 'tilt = "18 deg"'));
    expect(row(after, 'part', 'mid_ring').cells.get('tilt')?.text).toBe('18 deg');
    expect(row(after, 'part', 'base')).toBe(row(before, 'part', 'base'));
    expect(after.tables.get('driver')).toBe(before.tables.get('driver'));
    expect(row(after, 'task', 'fit')).toBe(row(before, 'task', 'fit'));
    expect(readChange(after, after.text)).toBe(after);
  });

  test('[J23] a text left open swallows what follows only while it is closed below', () => {
    const first = readFile(`${top}[[part]]\nid = "a"\nnote = """x\n\n[[part]]\nid = "b"\n`);
    expect(first.tables.get('part')?.map((one) => one.id)).toEqual(['a', 'b']);
    const closed = readChange(first, `${first.text}"""\n`);
    expect(closed.tables.get('part')?.map((one) => [one.id, one.broken])).toEqual([['a', false]]);
  });

  test('[J23] in a job of 2,000 rows a change rereads its row and leaves the others alone', () => {
    const rows = Array.from({ length: 2000 }, (_, index) => {
      const id = `r${String(index).padStart(4, '0')}_ring`;
      return `[[part]]\nid = "${id}"\n\nname = "Ring"\n\nsize = "8 in"\n\norder = ${String(index)}\n`;
    });
    const text = top + rows.join('\n');
    const before = readFile(text);
    const at = text.indexOf('8 in', text.length / 2);
    const after = readChange(before, `${text.slice(0, at)}9 1/2 in${text.slice(at + 4)}`);
    const old = before.tables.get('part') ?? [];
    const changed = (after.tables.get('part') ?? []).filter((one, index) => one !== old[index]);
    expect(changed.map((one) => one.cells.get('size')?.text)).toEqual(['9 1/2 in']);
    expect(after).toEqual(readFile(after.text));
    expect(readChange(after, text)).toEqual(before);
  });

  test('[J23] a closing quote far below reaches back to the row that was left open', () => {
    const open = `${top}[[part]]\nid = "a"\nnote = """x\n\n`;
    const rows = ['b', 'c', 'd', 'e'].map((id) => `[[part]]\nid = "${id}"\n\n`).join('');
    const before = readFile(open + rows);
    expect(before.tables.get('part')?.map((one) => one.id)).toEqual(['a', 'b', 'c', 'd', 'e']);
    const after = readChange(before, `${open}${rows}"""\n`);
    expect(after.tables.get('part')?.map((one) => one.id)).toEqual(['a']);
    expect(after).toEqual(readFile(after.text));
  });

  test('[J23] a reading made by somebody else is read afresh', () => {
    const { text, blocks, head, tables, format, state, problems } = readFile(sample);
    const foreign = { text, blocks, head, tables, format, state, problems };
    expect(readChange(foreign, `${sample}\n`)).toEqual(readFile(`${sample}\n`));
  });
});

describe('fileSpanOf', () => {
  test('finds a value, the id, and the header where the row has no such key', () => {
    const reading = readFile(sample);
    const ring = row(reading, 'part', 'mid_ring');
    const shown = (column: string | undefined): string => {
      const span = fileSpanOf(reading, ring, column);
      return sample.slice(span?.start, span?.end);
    };
    expect(['tilt', 'id', 'order', undefined, 'seat'].map(shown)).toEqual([
      '"15 deg"',
      '"mid_ring"',
      '2000',
      '[[part]]',
      '[[part]]',
    ]);
    expect(fileSpanOf(reading, { ...ring, block: 99 }, 'tilt')).toBeUndefined();
  });
});

import { describe, expect, test } from 'vitest';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import type { FileReading, SourceRow } from '../../../extension/engine/job/source.ts';

const top = 'format = 1\n\n[job]\nunits = "in"\n\n';

function codes(reading: FileReading): readonly string[] {
  return reading.problems.map((problem) => problem.code);
}

function texts(of: SourceRow): Record<string, string> {
  return Object.fromEntries([...of.cells].map(([key, cell]) => [key, cell.text]));
}

/** A part whose block is `lines`, between two good rows. */
function between(lines: string): FileReading {
  const good = (id: string): string => `[[part]]\nid = "${id}"\nname = "Good"\n\n`;
  return readFile(`${top}${good('first')}[[part]]\n${lines}\n\n${good('last')}`);
}

describe('readFile, blocks that cannot be read', () => {
  test.each([
    ['id = "odd"\ndepth = 5 in', 'value-unquoted'],
    ['id = "odd"\ndepth = "5 in', 'text-not-closed'],
    ['id = "odd"\nnote = """never closed', 'text-not-closed'],
    ['id = "odd"\nchoices = ["a",', 'list-not-closed'],
    ['id = "odd"\ndepth =', 'value-missing'],
    ['id = "odd"\ndepth = "5 in" wide', 'value-followed'],
    ['id = "odd"\nthe depth is five', 'line-not-understood'],
    ['id = "odd"\ndepth = "5 in"\ndepth = "6 in"', 'key-repeated'],
    ['id = "odd"\ndepth = "5 \\q in"', 'toml-refused'],
    ['id = "odd"\ndraw = 1\ndraw.glue.use = 2', 'toml-refused'],
    ['id = "odd"\n<<<<<<< ours\nqty = 1\n=======\nqty = 2\n>>>>>>> theirs', 'conflict-markers'],
  ])('[J17] a row with %j is one problem and one locked row', (lines, code) => {
    const reading = between(lines);
    expect(codes(reading)).toEqual([code]);
    const rows = reading.tables.get('part') ?? [];
    expect(rows.map((one) => [one.id, one.broken])).toEqual([
      ['first', false],
      ['odd', true],
      ['last', false],
    ]);
    const [problem] = reading.problems;
    expect(problem?.place).toEqual({ table: 'part', row: 'odd', occurrence: 0 });
    const { start = 0 } = problem?.fileSpan ?? {};
    expect(reading.text.slice(0, start).split('\n').length).toBeGreaterThanOrEqual(10);
    expect(problem?.message).toContain('part odd');
  });

  test.each([
    ['[part]', 'table-brackets'],
    ['[[part]', 'header-unreadable'],
    ['[[part', 'header-unreadable'],
    ['[part]]', 'header-unreadable'],
  ])('[J17] a row under %s is locked', (header, code) => {
    const reading = readFile(`${top}${header}\nid = "base"\nname = "Base"\nsize = "8 in"\n`);
    expect(codes(reading)).toEqual([code]);
    const [locked] = reading.tables.get('part') ?? [];
    expect(locked).toMatchObject({ id: 'base', broken: true });
    expect(locked && texts(locked)).toEqual({ name: 'Base' });
  });

  test('[J17] a header that names no table is one problem', () => {
    expect(codes(readFile(`${top}[[\nid = "x"\n`))).toEqual(['header-unreadable']);
  });

  test('[J17] settings that can be read count where another line of the head cannot', () => {
    const reading = readFile('format = 1\n[job]\nunits = "mm"\ntitle = no quotes\n');
    expect(codes(reading)).toEqual(['value-unquoted']);
    expect(reading.head.get('units')?.text).toBe('mm');
  });

  test('[J17] a text of which nothing can be shown is told to be so', () => {
    expect(readFile('Dear client,\nthank you for calling.\n').state).toBe('unreadable');
    expect(readFile('').state).toBe('readable');
  });

  test('[J18] git’s markers anywhere stop the whole file', () => {
    const reading = readFile(`${top}<<<<<<< ours\n[[part]]\nid = "a"\n=======\n>>>>>>> theirs\n`);
    expect(reading.state).toBe('conflicted');
    expect(codes(reading)).toEqual(['conflict-markers', 'conflict-markers']);
  });

  test('[J18] a line of equal signs inside a text is no marker', () => {
    const reading = between('id = "odd"\nnote = """\n=======\n"""');
    expect([reading.state, codes(reading)]).toEqual(['readable', []]);
  });
});

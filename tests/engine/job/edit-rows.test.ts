import { describe, expect, test } from 'vitest';
import type { Edit } from '../../../extension/engine/job/source.ts';
import { sample } from './arbitrary-files.ts';
import { edited, refusal, difference, order, parts } from './editing.ts';

describe('applyEdits, insert-row', () => {
  const insert = (id: string, after?: string | null, cells: Record<string, string> = {}): Edit =>
    after === undefined
      ? { kind: 'insert-row', table: 'part', id, cells }
      : { kind: 'insert-row', table: 'part', id, cells, after };

  test('[J6] a row is written by its id among the rows of its table', () => {
    const cells = {
      tilt: '5 deg',
      kind: 'ring',
      on: 'base',
      odd: 'x',
      qty: '2',
      name: '',
      order: '7',
    };
    const text = edited(sample, insert('kfd_ring', undefined, cells));
    expect(text).toContain(
      'order = 1000\n\n[[part]]\nid = "kfd_ring"\n\nkind = "ring"\n\non = "base"\n\ntilt = "5 deg"\n\nqty = 2\n\nodd = "x"\n\norder = 4000\n\n# The left one needs the wider ring.\n[[part]]\nid = "mid_ring"',
    );
  });

  test('[J16] a new first row of a table goes below the heading over the table', () => {
    expect(edited(sample, insert('aaa_ring'))).toContain(
      '# ---- what stands on the door ----\n\n[[part]]\nid = "aaa_ring"\n\norder = 4000\n\n[[part]]\nid = "base"',
    );
  });

  test('[J6] the first row of a table stands where the table belongs', () => {
    const check: Edit = { kind: 'insert-row', table: 'check', id: 'seal', cells: {} };
    expect(edited(sample, check)).toBe(`${sample}\n[[check]]\nid = "seal"\n\norder = 1000\n`);
    const driver: Edit = { kind: 'insert-row', table: 'driver', id: 'twt', cells: {} };
    expect(edited(parts('base 1'), driver)).toContain(
      'units = "in"\n\n[[driver]]\nid = "twt"\n\norder = 1000\n\n[[part]]',
    );
    expect(edited('', driver)).toBe('[[driver]]\nid = "twt"\n\norder = 1000\n');
  });

  test('[J9] a row put between two takes a number between theirs, the same everywhere', () => {
    // crc32("kfd_ring") is 2272994663 (zlib's crc32); 1 + 2272994663 mod 999 is 933.
    const text = parts('base 1000', 'skin 2000');
    expect(order(edited(text, insert('kfd_ring', 'base')))).toEqual([
      'base 1000',
      'kfd_ring 1933',
      'skin 2000',
    ]);
    expect(order(edited(text, insert('kfd_ring', null)))[0]).toBe('kfd_ring 933');
    expect(order(edited(text, insert('kfd_ring', 'skin'))).at(-1)).toBe('kfd_ring 3000');
    expect(order(edited(parts('base 7', 'skin 8'), insert('kfd_ring', 'base')))[1]).toBe(
      'kfd_ring 7.5',
    );
  });

  test('[J9] rows of a kit stand together, evenly spread', () => {
    const text = edited(
      parts('base 1000', 'skin 2000'),
      insert('one_ring', 'base'),
      insert('two_ring', 'one_ring'),
      insert('six_ring', 'two_ring'),
    );
    const ids = order(text).map((row) => row.split(' ')[0]);
    expect(ids).toEqual(['base', 'one_ring', 'two_ring', 'six_ring', 'skin']);
    expect(order(text).slice(1, 3)).toEqual(['one_ring 1250', 'two_ring 1500']);
  });

  test('[J9] between two rows of one number the lower one gets a new one too', () => {
    expect(order(edited(parts('base 5', 'skin 5', 'trim 9'), insert('kfd_ring', 'base')))).toEqual([
      'base 5',
      'kfd_ring 6',
      'skin 7',
      'trim 9',
    ]);
  });

  test('[J9] rows without a number get one, so that none is drawn along', () => {
    const text = edited(parts('base', 'skin', 'trim'), insert('kfd_ring', 'base'));
    expect(order(text)).toEqual(['base 1000', 'kfd_ring 2000', 'skin 3000', 'trim 4000']);
  });

  test('a row that cannot be is refused', () => {
    expect(refusal(sample, insert('skin'))).toBe('edit-id-taken');
    expect(refusal(sample, insert('door'))).toBe('edit-id-taken');
    expect(refusal(sample, insert('Ring'))).toBe('edit-id-ill-formed');
    expect(refusal(sample, insert('floz'))).toBe('edit-id-reserved');
    expect(refusal(sample, insert('new_ring', 'gone'))).toBe('edit-row-missing');
    expect(refusal(sample, insert('new_ring', null, { a: '1', 'a.b': '2' }))).toBe(
      'edit-key-clash',
    );
    expect(refusal(sample, { kind: 'insert-row', table: 'wall', id: 'x', cells: {} })).toBe(
      'edit-table-unknown',
    );
  });
});

describe('applyEdits, delete-row', () => {
  const remove = (id: string, table = 'part'): Edit => ({ kind: 'delete-row', row: { table, id } });

  test('[J16] a row goes with the remark above it; a heading set off by blank lines stays', () => {
    const text = edited(sample, remove('mid_ring'));
    expect(text).not.toContain('wider ring');
    expect(text).toContain('order = 1000\n\n[[part]]\nid = "skin"');
    const noMeasure = edited(sample, remove('cavity', 'measure'));
    expect(noMeasure).toContain('order = 1000\n\n# ---- what stands on the door ----\n\n[[part]]');
  });

  test('[J1] the last row leaves the end of the file as it was', () => {
    const text = edited(sample, remove('fit', 'task'));
    expect(text.endsWith("'''\n\norder = 3000\n")).toBe(true);
    expect(edited(sample.trimEnd(), remove('fit', 'task')).endsWith("'''\n\norder = 3000")).toBe(
      true,
    );
  });

  test('rows written without blank lines close up', () => {
    const text = 'format = 1\n[[part]]\nid = "a"\n[[part]]\nid = "b"\n[[part]]\nid = "c"\n';
    expect(edited(text, remove('b'))).toBe(text.replace('[[part]]\nid = "b"\n', ''));
    expect(edited(text, remove('a'), remove('b'), remove('c'))).toBe('format = 1\n');
  });

  test('a row that is gone is told', () => {
    expect(refusal(sample, remove('gone'))).toBe('edit-row-missing');
  });
});

describe('applyEdits, move-row and sort-rows', () => {
  const text = parts('a 1000', 'b 2000', 'c 3000', 'd 4000');
  const move = (id: string, after: string | null): Edit => ({
    kind: 'move-row',
    row: { table: 'part', id },
    after,
  });
  const sort = (...ids: string[]): Edit => ({ kind: 'sort-rows', table: 'part', ids });
  const ids = (of: string): string =>
    order(of)
      .map((row) => row.split(' ')[0])
      .join('');

  test('[J9] a move writes one number and no other line', () => {
    const moved = edited(text, move('a', 'c'));
    expect(ids(moved)).toBe('bcad');
    expect(difference(text, moved)).toEqual([
      '-order = 1000',
      expect.stringMatching(/^\+order = 3\d{3}$/),
    ]);
    expect(ids(edited(text, move('d', null)))).toBe('dabc');
    expect(ids(edited(text, move('a', 'd')))).toBe('bcda');
  });

  test('a row moved to where it stands changes nothing', () => {
    for (const edit of [
      move('a', null),
      move('b', 'a'),
      move('b', 'b'),
      sort('a', 'b', 'c', 'd'),
    ]) {
      expect(edited(text, edit)).toBe(text);
    }
    expect(refusal(text, move('a', 'gone'))).toBe('edit-row-missing');
    expect(refusal(text, move('gone', null))).toBe('edit-row-missing');
  });

  test('[J10] a sort keeps the numbers of the longest run that rises', () => {
    expect(order(edited(text, sort('b', 'c', 'd', 'a')))).toEqual([
      'b 2000',
      'c 3000',
      'd 4000',
      'a 5000',
    ]);
    expect(order(edited(text, sort('d', 'a', 'b', 'c')))).toEqual([
      expect.stringMatching(/^d \d{1,3}$/),
      'a 1000',
      'b 2000',
      'c 3000',
    ]);
  });

  test('[J10] rows that a sort does not name come last, as they stood', () => {
    expect(ids(edited(text, sort('c', 'a')))).toBe('cabd');
  });

  test('[J8] a locked row without a number follows the row above it', () => {
    const locked = `${text}\n[[part]]\nid = "e"\nsize = 8 in\n`;
    expect(ids(edited(locked, move('a', 'd')))).toBe('bcdea');
  });
});

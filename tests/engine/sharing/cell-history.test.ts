import { describe, expect, test } from 'vitest';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { openCellHistory } from '../../../extension/engine/sharing/cell-history.ts';
import { sample } from '../job/arbitrary-files.ts';
import { edited, set } from '../job/editing.ts';

const size = { table: 'part', id: 'mid_ring', column: 'size' };

/** Versions from the newest back, told by a letter each. */
function past(cell: typeof size, ...versions: readonly string[]): readonly string[] {
  const history = openCellHistory<string>(cell);
  for (const [index, text] of versions.entries()) {
    const about = String.fromCharCode(97 + index);
    if (!history.take({ reading: readFile(text), about })) break;
  }
  return history
    .changes()
    .map(({ version, id, text }) => `${version.about} ${id} ${text ?? 'gone'}`);
}

const wider = edited(sample, set('size', '9 in'));
const noted = edited(wider, set('note', 'soft'));

describe('openCellHistory', () => {
  test('only versions that changed the cell are told, the newest first', () => {
    expect(past(size, noted, wider, sample)).toEqual(['b mid_ring 9 in', 'c mid_ring 8 in']);
  });

  test('a cell that was taken out, and one that is new', () => {
    const cleared = edited(wider, set('size', undefined));
    expect(past(size, cleared, wider)).toEqual(['a mid_ring gone', 'b mid_ring 9 in']);
    expect(past({ ...size, column: 'note' }, noted, wider, sample)).toEqual(['a mid_ring soft']);
  });

  test('it goes on under the name that the row had before', () => {
    const called = edited(wider, {
      kind: 'rename-row',
      row: { table: 'part', id: 'mid_ring' },
      id: 'woofer_ring',
    });
    const cell = { ...size, id: 'woofer_ring' };
    expect(past(cell, called, wider, sample)).toEqual(['b mid_ring 9 in', 'c mid_ring 8 in']);
  });

  test('it ends where the row was put in', () => {
    const without = edited(sample, { kind: 'delete-row', row: { table: 'part', id: 'skin' } });
    const cell = { table: 'part', id: 'skin', column: 'name' };
    expect(past(cell, sample, without, sample)).toEqual(['a skin Cloth skin']);
  });

  test('a version that cannot be read is passed over', () => {
    const torn = `${sample}<<<<<<< a\n=======\n>>>>>>> b\n`;
    expect(past(size, wider, torn, sample)).toEqual(['a mid_ring 9 in', 'c mid_ring 8 in']);
  });
});

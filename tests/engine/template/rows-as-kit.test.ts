import { describe, expect, test } from 'vitest';
import { kitRows } from '../../../extension/engine/book/kit-rows.ts';
import { readBook } from '../../../extension/engine/book/read-book.ts';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { kitEdits } from '../../../extension/engine/template/rows-as-kit.ts';
import { demoBook, doorPair } from '../../helpers/sample-session.ts';

const job = readFile(doorPair);
const rows = (job.tables.get('part') ?? []).filter(({ id }) =>
  ['mid_ring', 'mid_baffle'].includes(id),
);

describe('kitEdits', () => {
  const edits = kitEdits(rows, { name: 'Ring and baffle', help: 'Two rows.', taken: new Set() });
  const written = applyEdits(readFile(demoBook), edits);
  if (!written.ok) throw new Error(written.problem.message);
  const book = readBook({ file: written.value.reading, job: new Map() });
  const kit = book.kits.find(({ id }) => id === 'ring_and_baffle');

  test('rows of a sheet become a kit of the book, cell by cell', () => {
    expect(book.problems).toEqual([]);
    expect(kit).toMatchObject({ name: 'Ring and baffle', help: 'Two rows.', questions: [] });
    expect(kit?.rows.map(({ table, id }) => `${table} ${id}`).sort()).toEqual([
      'part mid_baffle',
      'part mid_ring',
    ]);
  });

  test('inserted again, ids are new and what the group says of itself follows', () => {
    if (kit === undefined) throw new Error('There is no kit ring_and_baffle');
    const taken = new Set(rows.map(({ id }) => id));
    const again = kitRows(kit, {}, { taken });
    if (!again.ok) throw new Error(again.problem.message);
    const baffle = again.value.find(({ id }) => id.startsWith('mid_baffle'));
    expect(again.value.map(({ id }) => id).sort()).toEqual(['mid_baffle_2', 'mid_ring_2']);
    expect(baffle?.cells['on']).toBe('mid_ring_2');
    expect(again.value.find(({ id }) => id === 'mid_ring_2')?.cells['on']).toBe('door_base');
  });

  test('a second kit of one name gets an id of its own', () => {
    const taken = new Set(['ring_and_baffle']);
    expect(kitEdits(rows, { name: 'Ring and baffle', help: '', taken })[0]).toMatchObject({
      id: 'ring_and_baffle_2',
    });
  });
});

import { describe, expect, test } from 'vitest';
import { openSession } from '../../../extension/engine/index.ts';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { bookOut } from '../../../extension/engine/shop/book-out.ts';
import { settleNow } from '../../../extension/engine/session/settle-now.ts';
import { row } from '../../helpers/priced-job.ts';

// Invented goods and prices.
const book = [
  'format = 1\n\n[book]\ntitle = "Small shop"\ncurrency = "USD"\n\n',
  row('material', 'test_board', {
    name: 'Test board',
    form: 'sheet',
    thickness: '3 mm',
    length: '48 in',
    width: '24 in',
    kerf: '1/8 in',
  }),
  row('material', 'test_glue', { name: 'Test glue', form: 'liquid', charge: 'used' }),
  row('pack', 'old_glue', { material: 'test_glue', holds: '1 pt', price: '6 USD', have: '2' }),
  row('pack', 'new_glue', { material: 'test_glue', holds: '1 qt', price: '10 USD' }),
  row('pack', 'rest', {
    material: 'test_board',
    holds: '480 sqin',
    length: '24 in',
    width: '20 in',
    have: '1',
  }),
  row('pack', 'whole', { material: 'test_board', holds: '1152 sqin', price: '30 USD' }),
].join('');

function job(shape: string, glue: string): string {
  return [
    'format = 1\n\n[job]\ntitle = "Lids"\nunits = "in"\ncurrency = "USD"\nbook = "shop.panelbook"\n\n',
    'use_stock = "yes"\n\n',
    row('part', 'lid', { kind: 'base', material: 'test_board', shape }),
    row('part', 'glue', { kind: 'consumable', material: 'test_glue', use: glue, waste: '0' }),
  ].join('');
}

function bookedOut(shape: string, glue: string) {
  const session = openSession(job(shape, glue), book);
  settleNow(session);
  const file = readFile(book);
  const lines = bookOut(session.snapshot(), file).filter(({ material }) =>
    material.startsWith('test_'),
  );
  const applied = applyEdits(
    file,
    lines.flatMap(({ edits }) => edits),
  );
  if (!applied.ok) throw new Error(applied.problem.message);
  const packs = applied.value.reading.tables.get('pack') ?? [];
  return {
    words: lines.map(({ words }) => words),
    packs: new Map(packs.map(({ id, cells }) => [id, cells])),
    text: applied.value.reading.text,
  };
}

describe('bookOut', () => {
  test('a whole sheet that is opened leaves its largest offcut, a saw cut away from the part', () => {
    const { words, packs } = bookedOut('rect(30 in, 24 in)', '1 pt');
    // 48 in less 30 in and the cut of 1/8 in.
    expect(words).toContain('Test board: offcut of 17 7/8 in × 24 in to the shelf');
    const offcut = packs.get('test_board_off');
    expect(offcut?.get('have')?.text).toBe('1');
    expect(packs.has('rest')).toBe(true);
  });

  test('an offcut that is used up goes from the book, and cans on the shelf are counted down', () => {
    const { words, packs } = bookedOut('rect(20 in, 16 in)', '1 pt');
    expect(packs.has('rest')).toBe(false);
    expect(packs.get('old_glue')?.get('have')?.text).toBe('1');
    expect(words).toContain('Test glue: 1 of old_glue used, 1 left on the shelf');
  });

  test('what is left in an opened can goes to the shelf at its worth', () => {
    const { words, packs } = bookedOut('rect(20 in, 16 in)', '3.4 pt');
    expect(words.some((line) => line.startsWith('Test glue: rest of'))).toBe(true);
    expect(packs.get('test_glue_rest')?.get('price')?.text).toMatch(/^\d+\.\d\d USD$/);
  });

  test('the book reads without a problem afterwards, and the next job finds what was put away', () => {
    const { text } = bookedOut('rect(30 in, 24 in)', '3 pt');
    expect(openSession(text).snapshot().problems).toEqual([]);
    const next = openSession(job('rect(20 in, 15 in)', '1 pt'), text);
    settleNow(next);
    const board = next.snapshot().bill.lines.find(({ id }) => id === 'test_board');
    expect(board?.packs.every(({ shelf }) => shelf === true)).toBe(true);
  });
});

import { describe, expect, test } from 'vitest';
import {
  columnsMoved,
  isWrittenTheSame,
  notedRow,
  readsTheSame,
} from '../../../extension/engine/estimate/cells-read.ts';
import { fakeRow } from '../../helpers/fake-answers.ts';

const ring = fakeRow('part', { id: 'ring', kind: 'ring', tilt: '15 deg', note: 'check twice' });

function tiltRead() {
  const { row, read } = notedRow(ring);
  expect(row.cell('tilt')).toBe(ring.cell('tilt'));
  return read();
}

describe('notedRow', () => {
  test('answers as the row does, and notes which cells were asked', () => {
    expect(tiltRead().map(({ column }) => column)).toEqual(['tilt']);
    expect(notedRow(ring).row).toMatchObject({ table: 'part', id: 'ring', kind: 'ring' });
  });
});

describe('readsTheSame', () => {
  const noted = { ...ring, cell: (column: string) => ring.cell(column) };

  test('a row with another note reads the same to whoever read its tilt', () => {
    const other = fakeRow('part', { id: 'ring', note: 'done' });
    const mixed = {
      ...noted,
      cell: (column: string) => (column === 'note' ? other : ring).cell(column),
    };
    expect(readsTheSame(tiltRead(), mixed)).toBe(true);
  });

  test('another tilt does not', () => {
    expect(readsTheSame(tiltRead(), fakeRow('part', { id: 'ring', tilt: '16 deg' }))).toBe(false);
    expect(readsTheSame(tiltRead(), fakeRow('part', { id: 'ring' }))).toBe(false);
  });

  test('a cell that says nothing reads the same each time it is made', () => {
    const result = ring.cell('nothing').result;
    const blank = (column: string) => ({
      ...{ column, text: undefined, formula: false, result },
      origin: 'typed' as const,
    });
    const { row, read } = notedRow({ ...ring, cell: blank });
    row.cell('qty');
    expect(readsTheSame(read(), { ...ring, cell: blank })).toBe(true);
    expect(readsTheSame(read(), fakeRow('part', { id: 'ring', qty: '2' }))).toBe(false);
  });
});

describe('isWrittenTheSame', () => {
  test('a formula that comes to something else is written the same, another text is not', () => {
    const cell = { ...ring.cell('tilt'), formula: true };
    const other = fakeRow('part', { id: 'ring', tilt: '16 deg' }).cell('tilt');
    expect(isWrittenTheSame(cell, { ...cell, result: other.result })).toBe(true);
    expect(isWrittenTheSame(cell, { ...cell, text: '16 deg' })).toBe(false);
    expect(isWrittenTheSame(cell, { ...cell, origin: 'default' })).toBe(false);
  });
});

describe('columnsMoved', () => {
  const base = fakeRow('part', { id: 'base' });
  const tilted = fakeRow('part', { id: 'ring', tilt: '20 deg' });

  test('only the columns asked for count', () => {
    expect(columnsMoved([base, ring], [base, tilted], ['tilt'])).toBe(true);
    expect(columnsMoved([base, ring], [base, ring], ['tilt'])).toBe(false);
    const again = { ...tilted, cell: (column: string) => tilted.cell(column) };
    expect(columnsMoved([base, tilted], [base, again], ['tilt', 'taxed'])).toBe(false);
  });

  test('rows that come, go, move or cannot be read any more do', () => {
    expect(columnsMoved([base], [base, ring], [])).toBe(true);
    expect(columnsMoved([base, ring], [ring, base], [])).toBe(true);
    expect(columnsMoved([base], [{ ...base, broken: true }], [])).toBe(true);
  });
});

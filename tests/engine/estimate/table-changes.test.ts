import { describe, expect, test } from 'vitest';
import { changedRows, tablesOf } from '../../../extension/engine/estimate/table-changes.ts';
import { answersOver, fakeRow } from '../../helpers/fake-answers.ts';

const base = fakeRow('part', { id: 'base' });
const ring = fakeRow('part', { id: 'ring' });
const tables = (...parts: readonly ReturnType<typeof fakeRow>[]) =>
  tablesOf(answersOver(new Map([['part', parts]])));

describe('tablesOf', () => {
  test('takes the tables that the bill depends on', () => {
    expect(tables(base).get('part')).toEqual([base]);
    expect(tables(base).has('task')).toBe(false);
  });
});

describe('changedRows', () => {
  test('the same rows are no change', () => {
    expect(changedRows(tables(base, ring), tables(base, ring)).moved).toBe(false);
  });

  test('a row that answers differently, one that came and one that went are named', () => {
    const other = fakeRow('part', { id: 'ring', qty: '2' });
    expect([...changedRows(tables(base, ring), tables(base, other)).keys]).toEqual(['part/ring']);
    expect([...changedRows(tables(base), tables(base, ring)).keys]).toEqual(['part/ring']);
    expect([...changedRows(tables(base, ring), tables(base)).keys]).toEqual(['part/ring']);
  });

  test('a move changes no row but is told', () => {
    const { keys, moved } = changedRows(tables(base, ring), tables(ring, base));
    expect([keys.size, moved]).toEqual([0, true]);
  });
});

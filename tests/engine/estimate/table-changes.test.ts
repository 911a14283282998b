import { describe, expect, test } from 'vitest';
import {
  changedRows,
  changedUnder,
  tablesOf,
} from '../../../extension/engine/estimate/table-changes.ts';
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

describe('changedUnder', () => {
  const under = (
    before: readonly ReturnType<typeof fakeRow>[],
    now: readonly ReturnType<typeof fakeRow>[],
  ): readonly string[] => {
    const [old, fresh] = [tables(...before), tables(...now)];
    return [...changedUnder(old, fresh, changedRows(old, fresh).keys)].sort();
  };

  test('a size of a part is nothing to what stands on it', () => {
    expect(under([base, ring], [base, fakeRow('part', { id: 'ring', size: '2' })])).toEqual([]);
  });

  test.each(['panel', 'on', 'hand', 'name'])('its %s is', (column) => {
    const other = fakeRow('part', { id: 'ring', [column]: 'other' });
    expect(under([base, ring], [base, other])).toEqual(['part/ring']);
  });

  test('so is one that came, went or took the place of another', () => {
    const hole = fakeRow('part', { id: 'hole' });
    expect(under([base], [base, ring])).toEqual(['part/ring']);
    expect(under([base, ring], [base])).toEqual(['part/ring']);
    expect(under([base, ring], [base, hole])).toEqual(['part/hole', 'part/ring']);
  });

  test('rows of other tables count whatever changed in them', () => {
    const job = (count: string) => new Map([['panel', [fakeRow('panel', { id: 'door', count })]]]);
    expect([...changedUnder(job('1'), job('2'), new Set(['panel/door']))]).toEqual(['panel/door']);
  });
});

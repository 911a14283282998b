import { describe, expect, test } from 'vitest';
import { rowKey } from '../../../extension/engine/session/row-key.ts';

describe('rowKey', () => {
  test('names table, id and which of several rows it is', () => {
    expect(rowKey({ table: 'part', id: 'mid_ring' })).toBe('part/mid_ring#0');
    expect(rowKey({ table: 'part', id: 'mid_ring', occurrence: 1 })).toBe('part/mid_ring#1');
  });
});

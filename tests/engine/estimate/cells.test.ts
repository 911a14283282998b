import { describe, expect, test } from 'vitest';
import { placeOf } from '../../../extension/engine/estimate/cells.ts';
import { fakeRow } from '../../helpers/fake-answers.ts';

const row = fakeRow('part', { id: 'ring', name: 'Ring', kind: 'ring', depth: '2 in', use: '?' }, 1);

describe('placeOf', () => {
  test('tells two rows of one id apart', () => {
    expect(placeOf(row, 'use')).toEqual({
      table: 'part',
      row: 'ring',
      occurrence: 1,
      column: 'use',
    });
    expect(placeOf(row)).not.toHaveProperty('column');
  });
});

import { describe, expect, test } from 'vitest';
import {
  baseIn,
  nameOf,
  quantityIn,
  wordIn,
} from '../../../extension/engine/workbook/row-cells.ts';
import { area, length } from '../../../extension/engine/units/dimension.ts';
import { fakeRow } from '../../helpers/fake-answers.ts';

const row = fakeRow('part', { id: 'ring', name: 'Ring', kind: 'ring', depth: '2 in', use: '?' }, 1);

describe('quantityIn', () => {
  test('a blank cell, one without an answer and a figure are three things', () => {
    expect(quantityIn(row, 'width').state).toBe('blank');
    expect(quantityIn(row, 'use').state).toBe('no-answer');
    expect(quantityIn(row, 'name').state).toBe('no-answer');
    expect(quantityIn(row, 'depth')).toMatchObject({ state: 'value', value: { base: 50.8 } });
  });
});

describe('baseIn', () => {
  test('a figure of another dimension is none', () => {
    expect(baseIn(row, 'depth', length)).toBe(50.8);
    expect(baseIn(row, 'depth', area)).toBeUndefined();
    expect(baseIn(row, 'use', length)).toBeUndefined();
  });
});

describe('wordIn', () => {
  test('is empty where the cell holds a figure or nothing', () => {
    expect(wordIn(row, 'kind')).toBe('ring');
    expect(wordIn(row, 'depth')).toBe('');
    expect(wordIn(row, 'panel')).toBe('');
  });
});

describe('nameOf', () => {
  test('a row without a name is called by its id', () => {
    expect(nameOf(row)).toBe('Ring');
    expect(nameOf(fakeRow('part', { id: 'ring' }))).toBe('ring');
  });
});

import { describe, expect, test } from 'vitest';
import {
  columnLetters,
  figure,
  headings,
  textCell,
} from '../../../../extension/engine/export/xlsx/sheet.ts';

describe('columnLetters', () => {
  test('after Z comes AA', () => {
    expect([0, 25, 26, 51, 52, 701, 702].map(columnLetters)).toEqual([
      ...['A', 'Z', 'AA', 'AZ', 'BA', 'ZZ', 'AAA'],
    ]);
  });
});

describe('figure', () => {
  test('a formula that would come to another cent is left out', () => {
    const formula = { text: 'A1*2', comesTo: 4 };
    expect(figure(4, 'money', formula)).toEqual({ number: 4, look: 'money', formula: 'A1*2' });
    expect(figure(4.01, 'money', formula)).toEqual({ number: 4.01, look: 'money' });
  });
});

describe('textCell', () => {
  test('nothing is no cell', () => {
    expect(textCell('')).toBeUndefined();
    expect(textCell('=1')).toEqual({ text: '=1' });
  });
});

describe('headings', () => {
  test('headings are bold texts', () => {
    expect(headings('Id')).toEqual([{ text: 'Id', look: 'head' }]);
  });
});

import * as xlsx from '@e965/xlsx';
import { describe, expect, test } from 'vitest';
import { writeSheets } from '../../../../extension/engine/export/xlsx/write-sheets.ts';

const sheets = [
  { name: 'Sums & more', rows: [[{ text: '<a>' }], [{ number: 3, look: 'sum', formula: '1+2' }]] },
] as const;

describe('writeSheets', () => {
  test('another program reads texts, figures and formulas', () => {
    const book = xlsx.read(writeSheets(sheets, 2), { type: 'array' });
    expect(book.SheetNames).toEqual(['Sums & more']);
    const sheet = book.Sheets['Sums & more'] ?? {};
    expect(sheet['A1']).toMatchObject({ t: 's', v: '<a>' });
    expect(sheet['A2']).toMatchObject({ t: 'n', v: 3, f: '1+2' });
  });

  test('the same sheets give the same bytes', () => {
    expect(writeSheets(sheets, 2)).toEqual(writeSheets(sheets, 2));
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  readOwnHtml,
  readTsv,
  writeHtmlTable,
  writeTsv,
} from '../../../webview/grid/clipboard-text.ts';

describe('readTsv', () => {
  test('tabs part columns and newlines part lines', () => {
    expect(readTsv('a\tb\nc\td')).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
  });

  test('the newline that closes the last line begins no further one', () => {
    expect(readTsv('a\tb\r\n')).toEqual([['a', 'b']]);
    expect(readTsv('a\n\n')).toEqual([['a'], ['']]);
  });

  test('a quoted field keeps tabs, newlines and quotation marks', () => {
    expect(readTsv('"8"" ring\tbent\n3 mm"\tx')).toEqual([['8" ring\tbent\n3 mm', 'x']]);
  });

  test('an inch mark is no closing quote: 24 1/2" and "A" pillar are read as they stand', () => {
    expect(readTsv('24 1/2"\t"A" pillar')).toEqual([['24 1/2"', '"A" pillar']]);
  });

  test('empty fields keep their places', () => {
    expect(readTsv('\t\tx')).toEqual([['', '', 'x']]);
    expect(readTsv('')).toEqual([['']]);
  });

  test('what is written is read back', () => {
    const field = fc.string({ unit: fc.constantFrom('a', '"', '\t', '\n', ' ', '1') });
    const block = fc
      .integer({ min: 1, max: 4 })
      .chain((width) =>
        fc.array(fc.array(field, { minLength: width, maxLength: width }), {
          minLength: 1,
          maxLength: 4,
        }),
      )
      // A last line of one empty field cannot be told from the newline that closes the text.
      .filter((rows) => rows.at(-1)?.join('') !== '');
    fc.assert(
      fc.property(block, (rows) => {
        expect(readTsv(writeTsv(rows))).toEqual(rows);
      }),
    );
  });
});

describe('writeHtmlTable', () => {
  test('other programs see what is shown, this grid takes back what was typed', () => {
    const html = writeHtmlTable([
      [
        { shown: '2 5/8 in', typed: '=ROUNDUPTO(depth, 1/8in)' },
        { shown: '<b>&', typed: '"x" <y>\nz' },
      ],
    ]);
    expect(html).toContain('2 5/8 in');
    expect(html).toContain('&lt;b>&amp;');
    expect(readOwnHtml(html)).toEqual([['=ROUNDUPTO(depth, 1/8in)', '"x" <y>\nz']]);
  });

  test('a table of another program is left to its plain text', () => {
    expect(readOwnHtml('<table><tr><td>1</td></tr></table>')).toBeUndefined();
  });
});

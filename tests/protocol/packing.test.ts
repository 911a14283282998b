import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { packRows, unpackRows } from '../../extension/protocol/packing.ts';
import type { CellView, RowView } from '../../extension/protocol/views.ts';

// TOML refuses these control characters in strings, so no cell can hold them.
const reserved = ['\u001d', '\u001e', '\u001f'];
const text = fc
  .string({ unit: 'binary' })
  .map((value) => reserved.reduce((left, letter) => left.replaceAll(letter, ''), value));

const cell: fc.Arbitrary<CellView> = fc.record({
  shown: text,
  typed: text,
  look: fc.constantFrom('typed', 'default', 'computed', 'blank', 'error', 'waiting'),
  formula: fc.boolean(),
  message: text,
  severity: fc.constantFrom('', 'error', 'warning', 'note'),
});

const row: fc.Arbitrary<RowView> = fc.record({
  table: text,
  id: text,
  occurrence: fc.nat(9),
  kind: text,
  group: text,
  locked: fc.boolean(),
  message: text,
  cells: fc.array(cell, { maxLength: 6 }),
});

describe('packRows', () => {
  test('rows come out of the string as they went in', () => {
    fc.assert(
      fc.property(fc.array(row, { maxLength: 8 }), (rows) => {
        expect(unpackRows(packRows(rows))).toEqual(rows);
      }),
    );
  });

  test('a cell shown as it was typed carries its text once', () => {
    const shown: CellView = {
      shown: 'Front door',
      typed: 'Front door',
      look: 'typed',
      formula: false,
      message: '',
      severity: '',
    };
    const packed = packRows([
      {
        table: 'panel',
        id: 'door',
        occurrence: 0,
        kind: '',
        group: '',
        locked: false,
        message: '',
        cells: [shown],
      },
    ]);
    expect(packed.split('Front door')).toHaveLength(2);
  });

  test('no rows are no text', () => {
    expect(packRows([])).toBe('');
    expect(unpackRows('')).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import { ruleSentence } from '../../../extension/engine/workbook/rule-sentence.ts';
import type { CellResult } from '../../../extension/engine/workbook/answers.ts';
import { length } from '../../../extension/engine/units/dimension.ts';

const settings = { units: 'in', currency: 'USD' } as const;

describe('ruleSentence', () => {
  const cells: Readonly<Record<string, CellResult | string>> = {
    name: 'Ring',
    low: { state: 'value', value: { kind: 'quantity', base: 12.7, dimension: length } },
    build: { state: 'value', value: { kind: 'choice', word: 'round_tube' } },
    mouth: { state: 'blank' },
  };
  const said = (say: string): string => ruleSentence(say, (column) => cells[column], settings);

  test('puts the row’s figures in their places, with units', () => {
    expect(said('{name} ({build}) is {low} high.')).toBe('Ring (round tube) is 1/2 in high.');
  });

  test('says ? where there is no answer, and keeps what is no column', () => {
    expect(said('{mouth} of {nothing}')).toBe('? of {nothing}');
  });
});

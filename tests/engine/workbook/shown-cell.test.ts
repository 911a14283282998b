import { describe, expect, test } from 'vitest';
import { shownCell, shownValue } from '../../../extension/engine/workbook/shown-cell.ts';
import { jobWith, row } from '../../helpers/priced-job.ts';

const { workbook, settings } = jobWith(
  {},
  row('part', 'ring', {
    kind: 'ring',
    size: '203.2 mm',
    qty: '2.50',
    waste: '12.5 %',
    depth: '=size + 1qt',
  }),
);

function shown(column: string): string | undefined {
  const found = workbook.row('part', 'ring');
  return found === undefined ? undefined : shownCell(found.cell(column), settings);
}

describe('shownCell', () => {
  test('a length is shown in the job’s unit, however it was typed', () => {
    expect(shown('size')).toBe('8 in');
  });

  test('a count and a share keep the spelling they were typed with', () => {
    expect(shown('qty')).toBe('2.50');
    expect(shown('waste')).toBe('12.5 %');
  });

  test('a formula that cannot be worked out has no answer, a blank cell shows nothing', () => {
    expect(shown('depth')).toBe('no answer');
    expect(shown('note')).toBe('');
  });
});

describe('shownValue', () => {
  test('words read as words, shares as percent', () => {
    expect(shownValue({ kind: 'choice', word: 'by_mass' }, 'kind', settings)).toBe('by mass');
    expect(shownValue({ kind: 'yes-no', yes: true }, 'taxed', settings)).toBe('yes');
    const plain = { length: 0, mass: 0, time: 0, temperature: 0, money: 0 };
    const tenth = { kind: 'quantity', base: 0.1, dimension: plain } as const;
    expect(shownValue(tenth, 'draw.catalyst.percent', settings)).toBe('10 %');
    expect(shownValue(tenth, 'qty', settings)).toBe('0.1');
  });
});

import { describe, expect, test } from 'vitest';
import { meets, readCriterion } from '../../../extension/engine/formula/criterion.ts';
import type { CellValue } from '../../../extension/engine/formula/value.ts';
import { length, plain, type Dimension } from '../../../extension/engine/units/dimension.ts';

const settings = { units: 'in', currency: 'USD' } as const;

function holds(criterion: string, value: CellValue, of: Dimension | undefined): boolean {
  const read = readCriterion(criterion, of, settings);
  if (!read.ok) throw new Error(read.problem.message);
  return meets(value, read.value);
}

const inches = (count: number): CellValue => ({
  kind: 'quantity',
  base: count * 25.4,
  dimension: length,
});
const text = (words: string): CellValue => ({ kind: 'text', text: words });

describe('readCriterion and meets', () => {
  test.each([
    ['>2in', 2.5, true],
    ['>2in', 2, false],
    ['>=2 in', 2, true],
    ['<50.8mm', 2, false],
    ['<>2in', 3, true],
    ['2in', 2, true],
    ['=2 1/2in', 2.5, true],
    ['>0', 1, true],
    ['<=0.3in', 0.1 + 0.2, true],
  ])('“%s” for %s in is %s', (criterion, count, expected) => {
    expect(holds(criterion, inches(count), length)).toBe(expected);
  });

  test('text is compared whole, capitals and small letters alike', () => {
    expect(holds('OAK', text('oak'), undefined)).toBe(true);
    expect(holds('oak', text('oak board'), undefined)).toBe(false);
    expect(holds('>ash', text('oak'), undefined)).toBe(true);
  });

  // Signs that mean something elsewhere are letters like all others here.
  test.each(['6*9', '~x', 'tee<nut', 'ply=6', '007', 'a?b'])('“%s” finds itself only', (word) => {
    expect(holds(word, text(word), undefined)).toBe(true);
    expect(holds(word, text(`${word}x`), undefined)).toBe(false);
  });

  test('a unit is asked for, and the right one', () => {
    for (const criterion of ['>2', '>2sqft', '>two']) {
      const read = readCriterion(criterion, length, settings);
      expect(read.ok ? '' : read.problem.message).toContain('such as ">5 1/2in"');
    }
  });

  test('values of another kind only meet “is not”', () => {
    expect(holds('>2', text('a'), plain)).toBe(false);
    expect(holds('<>2', text('a'), plain)).toBe(true);
    expect(holds('a', { kind: 'choice', word: 'a' }, undefined)).toBe(true);
    expect(holds('base', { kind: 'link', id: 'base' }, undefined)).toBe(true);
  });
});

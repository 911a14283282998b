import { describe, expect, test } from 'vitest';
import { shapeInWords, sidesInWords } from '../../../extension/engine/geometry/shape-in-words.ts';

const settings = { units: 'in', currency: 'USD' } as const;
const inch = 25.4;

describe('shapeInWords', () => {
  test('plain shapes as they are said at the bench', () => {
    expect(shapeInWords({ kind: 'circle', diameter: 8 * inch }, settings)).toBe('8 in across');
    const sides = { length: 26 * inch, width: 15 * inch };
    expect(shapeInWords({ kind: 'oval', ...sides }, settings)).toBe('26 in × 15 in oval');
    expect(shapeInWords({ kind: 'roundrect', ...sides, radius: 2 * inch }, settings)).toBe(
      '26 in × 15 in, corners 2 in',
    );
  });
});

describe('sidesInWords', () => {
  test('what is rounded says so once, in front', () => {
    expect(sidesInWords(inch / 3, inch / 3, settings)).toBe('≈ 5/16 in × 5/16 in');
  });
});

import { describe, expect, test } from 'vitest';
import { percentText } from '../../../extension/engine/units/percent-text.ts';

describe('percentText', () => {
  test('a share is a percentage with no more decimals than told', () => {
    expect(percentText(0.025)).toBe('2.5 %');
    expect(percentText(0.02)).toBe('2 %');
    expect(percentText(0.166667)).toBe('16.7 %');
    expect(percentText(0.166667, 4)).toBe('16.6667 %');
    expect(percentText(-0.071, 2)).toBe('-7.1 %');
  });
});

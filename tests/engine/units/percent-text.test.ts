import { describe, expect, test } from 'vitest';
import { percentChangeText, percentText } from '../../../extension/engine/units/percent-text.ts';

describe('percentText', () => {
  test('a share is a percentage with no more decimals than told', () => {
    expect(percentText(0.025)).toBe('2.5 %');
    expect(percentText(0.02)).toBe('2 %');
    expect(percentText(0.166667)).toBe('16.7 %');
    expect(percentText(0.166667, 4)).toBe('16.6667 %');
    expect(percentText(-0.071, 2)).toBe('-7.1 %');
  });
});

describe('percentChangeText', () => {
  test('a change has its sign, and none where it rounds to nothing', () => {
    expect(percentChangeText(0.125)).toBe('+12.5 %');
    expect(percentChangeText(-0.125, 0)).toBe('−13 %');
    expect(percentChangeText(-0.0001)).toBe('0 %');
  });
});

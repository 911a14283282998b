import { describe, expect, test } from 'vitest';
import { boxF3, boxQtc, boxResonance, boxVolume } from '../../../extension/engine/trade/box.ts';

describe('closed boxes', () => {
  test('a box as large as Vas raises Q and resonance by √2', () => {
    expect(boxQtc(45, 0.5, 45)).toBeCloseTo(0.5 * Math.SQRT2, 12);
    expect(boxResonance(35, 45, 45)).toBeCloseTo(35 * Math.SQRT2, 12);
  });

  test('the volume for a Q gives that Q', () => {
    expect(boxQtc(45, 0.4, boxVolume(45, 0.4, 0.9))).toBeCloseTo(0.9, 12);
  });

  test('at a Q of 0.7071 a box is 3 dB down at its resonance', () => {
    const volume = boxVolume(45, 0.4, Math.SQRT1_2);
    const f3 = boxF3(35, { vas: 45, qts: 0.4 }, volume);
    expect(f3 / boxResonance(35, 45, volume)).toBeCloseTo(1, 12);
  });

  test('a smaller box never has a lower resonance', () => {
    expect(boxResonance(35, 45, 20)).toBeGreaterThan(boxResonance(35, 45, 30));
  });
});

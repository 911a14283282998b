import { describe, expect, test } from 'vitest';
import { growing } from '../../extension/worker/growing.ts';

function toldOf(...shares: readonly number[]): readonly number[] {
  const told: number[] = [];
  const report = growing((share) => told.push(share));
  for (const share of shares) report(share);
  return told;
}

describe('growing', () => {
  test('a search that tells a thousand times is passed on about fifty times', () => {
    const told = toldOf(...Array.from({ length: 1000 }, (_, at) => at / 999));
    expect(told.length).toBeGreaterThan(40);
    expect(told.length).toBeLessThanOrEqual(50);
  });

  test('a share never goes back, and none is above the whole', () => {
    expect(toldOf(0.5, 0.2, 0.5, 0.7, 1.4, 1.5)).toEqual([0.5, 0.7, 1]);
  });
});

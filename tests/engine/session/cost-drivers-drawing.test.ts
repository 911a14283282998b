import { describe, expect, test } from 'vitest';
import type { CostDriver } from '../../../extension/engine/session/cost-drivers.ts';
import {
  costDriversDrawing,
  driverMark,
  driverWords,
  priceChangeText,
} from '../../../extension/engine/session/cost-drivers-drawing.ts';

const rate: CostDriver = {
  ...{ table: 'charge', id: 'hours', occurrence: 0, column: 'rate', name: 'Labour' },
  ...{ text: '50 USD/h', less: -1100, more: 1100 },
};
const percent: CostDriver = {
  ...rate,
  id: 'spare',
  column: 'percent',
  less: -550,
  more: undefined,
};

describe('costDriversDrawing', () => {
  test('bars are as long as the change is large, to the left for less money', () => {
    const { marks, words, box } = costDriversDrawing([rate, percent], 'USD');
    const bars = marks.flatMap((mark) => {
      if (mark.kind !== 'line' || mark.row === undefined) return [];
      const xs = mark.points.map(({ x }) => x);
      return [{ id: mark.row.id, from: Math.min(...xs), to: Math.max(...xs) }];
    });
    const widths = bars.map(({ id, from, to }) => [id, Math.round(to - from)]);
    expect(widths).toEqual([
      ['hours/rate', 48],
      ['hours/rate', 48],
      ['spare/percent', 24],
    ]);
    expect(bars[0]?.to).toBe(bars[1]?.from);
    expect(bars[0]?.from).toBeGreaterThan(box.left);
    expect(words).toHaveLength(2);
  });
});

describe('driverMark', () => {
  test('names row and column, and which of two rows of one id', () => {
    expect(driverMark(rate)).toEqual({ table: 'charge', id: 'hours/rate' });
    expect(driverMark({ ...rate, occurrence: 1 }).id).toBe('hours#1/rate');
  });
});

describe('driverWords', () => {
  test('says the cell and both changes', () => {
    expect(driverWords(percent, 'USD')).toBe(
      'Labour, percent 50 USD/h: 10 % less is −5.50 USD, 10 % more is no price.',
    );
  });
});

describe('priceChangeText', () => {
  test('has its sign', () => {
    expect(priceChangeText(1250, 'USD')).toBe('+12.50 USD');
  });
});

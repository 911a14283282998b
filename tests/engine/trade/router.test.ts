import { describe, expect, test } from 'vitest';
import {
  bearingOffset,
  bearingSize,
  bushingOffset,
  bushingTemplate,
  grilleSize,
  holeSawSize,
  jigRadius,
} from '../../../extension/engine/trade/router.ts';

describe('bearingOffset and bearingSize', () => {
  test('a 1 3/8 in cutter over a 1 1/8 in bearing leaves 1/8 in', () => {
    expect(bearingOffset(1.375, 1.125)).toBe(0.125);
    expect(bearingSize(1.375, 0.125)).toBe(1.125);
  });
});

describe('bushingOffset and bushingTemplate', () => {
  test('a template inside is larger by twice the offset, one outside smaller', () => {
    const tool = { bushing: 0.75, bit: 0.5 };
    const offset = bushingOffset(tool.bushing, tool.bit);
    expect(bushingTemplate(6, tool, 'inside')).toBe(6 + 2 * offset);
    expect(bushingTemplate(6, tool, 'outside')).toBe(6 - 2 * offset);
  });
});

describe('jigRadius', () => {
  test('hole and disc of one size are cut a bit’s width apart', () => {
    expect(jigRadius(11, 0.5, 'disc') - jigRadius(11, 0.5, 'hole')).toBe(0.5);
  });
});

describe('holeSawSize', () => {
  test('the stock series ends at 6 in', () => {
    expect(holeSawSize(6 * 25.4)).toBeCloseTo(6 * 25.4, 9);
    expect(holeSawSize(6.01 * 25.4)).toBeUndefined();
  });
});

describe('grilleSize', () => {
  test('covering and clearance are taken off both sides', () => {
    expect(grilleSize(200, { thickness: 1, layers: 2 }, 0.5)).toBe(195);
  });
});
